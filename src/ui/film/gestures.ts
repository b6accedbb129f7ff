import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import {
  CLICK_REACH,
  listenToPointer,
  middleAndSpread,
  type Place,
  placeIn,
  wheelFactor,
} from './pointer';

/** What the pointer and wheel ask for; places in CSS px from the viewport's corner. */
export interface GestureTarget {
  /** Whether a plain drag moves the film; else it is the tool's. */
  readonly dragPans: boolean;
  /** Returns whether the view changed; if not, the page may scroll. */
  zoom(factor: number, left: number, top: number): boolean;
  pan(right: number, down: number): void;
  toolStart(left: number, top: number): void;
  toolMove(left: number, top: number): void;
  /** `kept` is false where a second finger turned the drag into a pinch. */
  toolEnd(kept: boolean): void;
  click(left: number, top: number): void;
  hover(left: number, top: number): void;
  leave(): void;
}

/**
 * Wheel and pinch zoom; drags pan or go to the tool (middle button and Shift always pan); two fingers
 * pinch and pan at once. Controls inside the area keep their own events.
 */
export function useGestures(area: RefObject<HTMLElement | null>, target: GestureTarget): void {
  const latest = useRef(target);
  latest.current = target;

  useEffect(() => {
    const element = area.current;
    if (element === null) return;
    const fingers = new Map<number, Place>();
    let action: 'pan' | 'tool' | 'pinch' | null = null;
    let travelled = 0;

    const placeOf = (event: MouseEvent) => placeIn(element, event);
    const down = (event: PointerEvent) => {
      if (event.button > 1 || isControl(event.target)) return;
      if (event.button === 1) event.preventDefault();
      const place = placeOf(event);
      fingers.set(event.pointerId, place);
      element.setPointerCapture(event.pointerId);
      if (fingers.size === 2) {
        if (action === 'tool') latest.current.toolEnd(false);
        action = 'pinch';
      } else if (fingers.size === 1) {
        travelled = 0;
        action = latest.current.dragPans || event.button === 1 || event.shiftKey ? 'pan' : 'tool';
        if (action === 'tool') latest.current.toolStart(place.left, place.top);
      }
    };
    const move = (event: PointerEvent) => {
      const place = placeOf(event);
      const before = fingers.get(event.pointerId);
      if (before === undefined) {
        if (!isControl(event.target)) latest.current.hover(place.left, place.top);
        return;
      }
      if (action === 'pinch') {
        const old = middleAndSpread(fingers.values());
        fingers.set(event.pointerId, place);
        const now = middleAndSpread(fingers.values());
        if (old === null || now === null || old.spread === 0) return;
        latest.current.zoom(now.spread / old.spread, old.left, old.top);
        latest.current.pan(now.left - old.left, now.top - old.top);
        return;
      }
      fingers.set(event.pointerId, place);
      const right = place.left - before.left;
      const downward = place.top - before.top;
      const wasClick = travelled < CLICK_REACH;
      travelled += Math.hypot(right, downward);
      if (action === 'tool') latest.current.toolMove(place.left, place.top);
      else if (action === 'pan' && !(wasClick && travelled < CLICK_REACH)) {
        latest.current.pan(right, downward);
      }
      latest.current.hover(place.left, place.top);
    };
    const up = (event: PointerEvent) => {
      const place = fingers.get(event.pointerId);
      if (place === undefined) return;
      fingers.delete(event.pointerId);
      const kept = event.type === 'pointerup';
      if (action === 'tool') latest.current.toolEnd(kept);
      if (action === 'pan' && kept && travelled < CLICK_REACH) {
        latest.current.click(place.left, place.top);
      }
      // The finger that stays after a pinch does nothing until it is lifted too.
      action = fingers.size === 0 ? null : action === 'pinch' ? null : action;
    };
    const leave = () => latest.current.leave();
    const wheel = (event: WheelEvent) => {
      const { left, top } = placeOf(event);
      if (latest.current.zoom(wheelFactor(event), left, top)) event.preventDefault();
    };

    return listenToPointer(element, { down, move, up, leave, wheel });
  }, [area]);
}

const isControl = (target: EventTarget | null) =>
  target instanceof Element && target.closest('button, [role="slider"]') !== null;
