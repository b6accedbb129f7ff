/** A place in an area, CSS px from its top-left corner. */
export interface Place {
  readonly left: number;
  readonly top: number;
}

/** A press that travels less than this is a click, CSS px. */
export const CLICK_REACH = 4;

/** Zoom per CSS pixel of wheel travel (a usual notch is 100). */
const WHEEL_ZOOM = 0.002;
/** A wheel may count lines instead, CSS px a line. */
const LINE_HEIGHT = 16;

export function placeIn(area: HTMLElement, event: MouseEvent): Place {
  const box = area.getBoundingClientRect();
  return { left: event.clientX - box.left, top: event.clientY - box.top };
}

/** Way of the wheel downwards, CSS px. */
export const wheelTravel = (event: WheelEvent): number =>
  event.deltaY * (event.deltaMode === WheelEvent.DOM_DELTA_LINE ? LINE_HEIGHT : 1);

/** How much to enlarge for a turn of the wheel; up enlarges. */
export const wheelFactor = (event: WheelEvent): number =>
  Math.exp(-wheelTravel(event) * WHEEL_ZOOM);

/** The middle between the first two fingers and how far they are apart; null: there are not two. */
export function middleAndSpread(
  fingers: Iterable<Place>,
): (Place & { readonly spread: number }) | null {
  const [a, b] = [...fingers];
  if (a === undefined || b === undefined) return null;
  return {
    left: (a.left + b.left) / 2,
    top: (a.top + b.top) / 2,
    spread: Math.hypot(a.left - b.left, a.top - b.top),
  };
}

/** What an area does with pointer and wheel; `up` hears of a cancelled press as well. */
interface PointerHandlers {
  down(event: PointerEvent): void;
  move(event: PointerEvent): void;
  up(event: PointerEvent): void;
  leave(event: PointerEvent): void;
  /** May keep the page from scrolling. */
  wheel(event: WheelEvent): void;
}

/** Listens until the function it returns is called. */
export function listenToPointer(area: HTMLElement, on: PointerHandlers): () => void {
  const listening = new AbortController();
  const { signal } = listening;
  area.addEventListener('pointerdown', on.down, { signal });
  area.addEventListener('pointermove', on.move, { signal });
  area.addEventListener('pointerup', on.up, { signal });
  area.addEventListener('pointercancel', on.up, { signal });
  area.addEventListener('pointerleave', on.leave, { signal });
  area.addEventListener('wheel', on.wheel, { signal, passive: false });
  return () => listening.abort();
}
