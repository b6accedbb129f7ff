import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import {
  CLICK_REACH,
  listenToPointer,
  type Place,
  placeIn,
  wheelFactor,
  wheelTravel,
} from '../film/pointer';

/** What pointer and wheel ask for; places in CSS px from the area's corner. */
export interface StreakGestureTarget {
  /** Whether a drag draws the slanted handle anew. */
  readonly seeding: boolean;
  /** Whether there are lines beyond the area: a drag or plain wheel then moves them. */
  readonly scrollable: boolean;
  zoom(factor: number, top: number): void;
  scroll(down: number): void;
  hover(place: Place | null): void;
  click(top: number): void;
  drawSeed(start: Place, end: Place, settled: boolean): void;
}

/** Ctrl or Alt with the wheel stretches time; a plain wheel scrolls lines where there are more, else the page. */
export function useStreakGestures(
  area: RefObject<HTMLElement | null>,
  target: StreakGestureTarget,
): void {
  const latest = useRef(target);
  latest.current = target;

  useEffect(() => {
    const element = area.current;
    if (element === null) return;
    let pressed: { readonly start: Place; last: Place; dragged: boolean } | null = null;

    const placeOf = (event: MouseEvent) => placeIn(element, event);
    const isSurface = (event: Event) =>
      event.target instanceof Element && event.target.closest('button, .handle') === null;
    const down = (event: PointerEvent) => {
      if (event.button !== 0 || !event.isPrimary || !isSurface(event)) return;
      element.setPointerCapture(event.pointerId);
      const place = placeOf(event);
      pressed = { start: place, last: place, dragged: false };
    };
    const move = (event: PointerEvent) => {
      const place = placeOf(event);
      const { current } = latest;
      current.hover(pressed !== null || isSurface(event) ? place : null);
      if (pressed === null) return;
      const { start, last } = pressed;
      const reach = Math.hypot(place.left - start.left, place.top - start.top);
      pressed.dragged ||= reach >= CLICK_REACH;
      if (!pressed.dragged) return;
      pressed.last = place;
      if (current.seeding) current.drawSeed(start, place, false);
      else if (current.scrollable) current.scroll(place.top - last.top);
    };
    const up = (event: PointerEvent) => {
      const ended = pressed;
      pressed = null;
      if (ended === null || event.type !== 'pointerup') return;
      if (!ended.dragged) latest.current.click(ended.start.top);
      else if (latest.current.seeding) latest.current.drawSeed(ended.start, ended.last, true);
    };
    const leave = () => latest.current.hover(null);
    const wheel = (event: WheelEvent) => {
      const { current } = latest;
      if (event.ctrlKey || event.altKey) current.zoom(wheelFactor(event), placeOf(event).top);
      else if (current.scrollable) current.scroll(-wheelTravel(event));
      else return;
      event.preventDefault();
    };

    return listenToPointer(element, { down, move, up, leave, wheel });
  }, [area]);
}
