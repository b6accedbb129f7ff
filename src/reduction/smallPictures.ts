import type { GreyFrame } from '../core/frame';
import type { Pixels } from '../core/units';
import { shrink } from '../image/shrink';

/** As many as the widest window has room for; side enough for a sharp screen. */
const SMALL: { readonly count: number; readonly side: Pixels } = { count: 48, side: 256 };

/** The frames that `count` equal parts of a film show in their middles; all where there are no more. */
export const middleFrames = (frameCount: number, count: number): number[] =>
  Array.from({ length: Math.min(count, frameCount) }, (_, i) =>
    Math.floor(((i + 0.5) * frameCount) / Math.min(count, frameCount)),
  );

/** Gives the small picture of a frame that has one, spread evenly over the film; null for all others. */
export function smallPictures(
  frameCount: number,
  { count, side } = SMALL,
): (frame: GreyFrame) => GreyFrame | null {
  const chosen = new Set(middleFrames(frameCount, count));
  return (frame) => (chosen.has(frame.index) ? shrink(frame, side).frame : null);
}
