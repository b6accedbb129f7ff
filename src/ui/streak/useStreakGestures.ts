import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import {
  CLICK_REACH,
  listenToPointer,
  middleAndSpread,
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
  /** A second finger turned the drag into a pinch: what was drawn is taken back. */
  dropSeed(): void;
}

/**
 * Ctrl or Alt with the wheel, or two fingers, stretch time; a plain wheel or a drag scrolls lines where there are more,
 * else the page.
 */
export function useStreakGestures(
  area: RefObject<HTMLElement | null>,
  target: StreakGestureTarget,
): void {
  const latest = useRef(target);
  latest.current = target;

  useEffect(() => {
    const element = area.current;
    if (element === null) return;
    const fingers = new Map<number, Place>();
    let pressed: { readonly start: Place; last: Place; dragged: boolean } | null = null;

    const placeOf = (event: MouseEvent) => placeIn(element, event);
    const isSurface = (event: Event) =>
      event.target instanceof Element && event.target.closest('button, .handle') === null;
    const down = (event: PointerEvent) => {
      if (event.button !== 0 || !isSurface(event)) return;
      element.setPointerCapture(event.pointerId);
      const place = placeOf(event);
      fingers.set(event.pointerId, place);
      if (fingers.size === 1) pressed = { start: place, last: place, dragged: false };
      else {
        if (pressed?.dragged && latest.current.seeding) latest.current.dropSeed();
        pressed = null;
      }
    };
    const pinch = (event: PointerEvent, place: Place) => {
      const before = middleAndSpread(fingers.values());
      fingers.set(event.pointerId, place);
      const now = middleAndSpread(fingers.values());
      if (before === null || now === null || before.spread === 0) return;
      latest.current.zoom(now.spread / before.spread, before.top);
      latest.current.scroll(now.top - before.top);
    };
    const move = (event: PointerEvent) => {
      const place = placeOf(event);
      const { current } = latest;
      if (fingers.size > 1 && fingers.has(event.pointerId)) return pinch(event, place);
      current.hover(pressed !== null || isSurface(event) ? place : null);
      if (pressed === null) return;
      fingers.set(event.pointerId, place);
      const { start, last } = pressed;
      const reach = Math.hypot(place.left - start.left, place.top - start.top);
      pressed.dragged ||= reach >= CLICK_REACH;
      if (!pressed.dragged) return;
      pressed.last = place;
      if (current.seeding) current.drawSeed(start, place, false);
      else if (current.scrollable) current.scroll(place.top - last.top);
    };
    const up = (event: PointerEvent) => {
      fingers.delete(event.pointerId);
      const ended = pressed;
      pressed = null;
      if (ended === null) return;
      if (event.type !== 'pointerup') {
        if (ended.dragged && latest.current.seeding) latest.current.dropSeed();
      } else if (!ended.dragged) latest.current.click(ended.start.top);
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
