import type { FilmTransform } from '../film/view';
import type { StreakGeometry, StreakPlace } from './props';

/** How frames lie in the area: frame f's line is `rowHeight` high around `(f - topFrame) * rowHeight`. */
export interface TimeScale {
  /** CSS pixels a frame. */
  readonly rowHeight: number;
  /** Frame coordinate at the area's top edge; frame 0's line begins at -0.5. */
  readonly topFrame: number;
}

/** Higher lines show nothing new, CSS px. */
export const LARGEST_ROW = 24;

/** A flight more upright than level cannot share the film's horizontal scale. */
export const isSteep = ({ axis }: StreakGeometry): boolean => Math.abs(axis[1]) > Math.abs(axis[0]);

/** CSS px from the area's left edge to a place along the axis: under the film's own pixel, or on its own scale. */
export function alongToLeft(
  geometry: StreakGeometry,
  view: FilmTransform,
  width: number,
  along: number,
): number {
  if (isSteep(geometry)) return ((along - geometry.from + 0.5) * width) / geometry.length;
  return (geometry.origin[0] + along * geometry.axis[0] - view.x0) * view.scale;
}

/** The inverse of `alongToLeft`. */
export function leftToAlong(
  geometry: StreakGeometry,
  view: FilmTransform,
  width: number,
  left: number,
): number {
  if (isSteep(geometry)) return (left * geometry.length) / width - 0.5 + geometry.from;
  return (view.x0 + left / view.scale - geometry.origin[0]) / geometry.axis[0];
}

export const frameToTop = (time: TimeScale, frame: number): number =>
  (frame - time.topFrame) * time.rowHeight;

export const topToFrame = (time: TimeScale, top: number): number =>
  time.topFrame + top / time.rowHeight;

/** The frame whose line lies at `top`. */
export const frameAt = (time: TimeScale, top: number, frameCount: number): number =>
  Math.min(Math.max(Math.round(topToFrame(time, top)), 0), frameCount - 1);

/** All frames in the area. */
export const fitTime = (frameCount: number, height: number): TimeScale => ({
  rowHeight: height / Math.max(frameCount, 1),
  topFrame: -0.5,
});

function withinFilm(time: TimeScale, frameCount: number, height: number): TimeScale {
  const last = frameCount - 0.5 - height / time.rowHeight;
  return { ...time, topFrame: Math.max(-0.5, Math.min(time.topFrame, last)) };
}

/** Makes lines `factor` times as high; the frame at `top` stays there. Never smaller than all frames shown. */
export function zoomTime(
  time: TimeScale,
  factor: number,
  top: number,
  frameCount: number,
  height: number,
): TimeScale {
  const smallest = fitTime(frameCount, height).rowHeight;
  const rowHeight = Math.min(
    Math.max(time.rowHeight * factor, smallest),
    Math.max(LARGEST_ROW, smallest),
  );
  const topFrame = topToFrame(time, top) - top / rowHeight;
  return withinFilm({ rowHeight, topFrame }, frameCount, height);
}

/** Moves the lines down by CSS pixels. */
export const scrollTime = (
  time: TimeScale,
  down: number,
  frameCount: number,
  height: number,
): TimeScale =>
  withinFilm({ ...time, topFrame: time.topFrame - down / time.rowHeight }, frameCount, height);

/** Scrolls as little as shows the whole line of a frame. */
export function revealFrame(
  time: TimeScale,
  frame: number,
  frameCount: number,
  height: number,
): TimeScale {
  const top = frame - 0.5;
  const bottom = frame + 0.5 - height / time.rowHeight;
  const topFrame = Math.min(Math.max(time.topFrame, bottom), top);
  return topFrame === time.topFrame ? time : withinFilm({ ...time, topFrame }, frameCount, height);
}

/** Pixels along the axis a frame, from one place to the other; null where both are in one frame. */
export function slopeOf(from: StreakPlace, to: StreakPlace): number | null {
  const frames = to.frame - from.frame;
  return frames === 0 ? null : (to.along - from.along) / frames;
}

/** Moves labels down just enough that none overlaps the one above; order and number stay. */
export function spreadLabels(tops: readonly number[], spacing: number, bottom: number): number[] {
  const order = tops.map((_, index) => index).sort((a, b) => (tops[a] ?? 0) - (tops[b] ?? 0));
  const placed = [...tops];
  let limit = -Infinity;
  for (const index of order) {
    limit = Math.max(tops[index] ?? 0, limit + spacing);
    placed[index] = limit;
  }
  // What ran out at the bottom is pushed up again, last first.
  let ceiling = bottom;
  for (const index of order.reverse()) {
    placed[index] = Math.min(placed[index] ?? 0, ceiling);
    ceiling = (placed[index] ?? 0) - spacing;
  }
  return placed;
}
