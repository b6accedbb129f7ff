import type { FrameRange } from '../core/film';
import { REST_FRAMES } from '../seal/reference';

/**
 * Frames before the first in which anything moves that are looked at too: a seal begins to bulge, and a ball to show,
 * unnoticed; and it is told from them how the scene stands when nothing happens.
 */
export const BEFORE = 64;
export const AFTER = 16;
/**
 * What has moved counts as come to rest after so many frames: a second decoder begins at a key frame, and common
 * encoders set those up to 250 frames apart (from memory), so that what moves again sooner would have it decode the same
 * frames anew.
 */
const AT_REST = 256;
/** Beyond this share of the film all of it is as quick. */
const MOST_SHARE = 0.75;

/**
 * The frames worth a closer look, in order and apart from each other: those in which something moves and some around
 * them, `named` ones likewise, and the first, in which the seals are at rest. All where nothing seems to move: what does
 * may be too slow to be noticed.
 */
export function framesToSurvey(
  isActive: Uint8Array,
  named: readonly number[],
): readonly FrameRange[] {
  const count = isActive.length;
  const whole = [{ start: 0, end: count }];
  if (!isActive.includes(1)) return whole;
  const ranges = rangesAround(isActive, named);
  return frameCountOf(ranges) > MOST_SHARE * count ? whole : ranges;
}

/**
 * Of a film gone through up to its frame `last`: the frames around what has moved, once it has come to rest; null where
 * nothing comes to rest with this frame.
 */
export function settledBy(last: number, isActive: Uint8Array): readonly FrameRange[] | null {
  const settles = last - AT_REST;
  const seen = isActive.subarray(0, last + 1);
  if (seen[settles] !== 1 || seen.lastIndexOf(1) !== settles) return null;
  return rangesAround(seen, []);
}

function rangesAround(isActive: Uint8Array, named: readonly number[]): readonly FrameRange[] {
  const count = isActive.length;
  const chosen = new Uint8Array(count);
  chosen.fill(1, 0, REST_FRAMES);
  const around = (frame: number) =>
    chosen.fill(1, Math.max(0, frame - BEFORE), Math.min(count, frame + AFTER + 1));
  isActive.forEach((active, frame) => {
    if (active === 1) around(frame);
  });
  for (const frame of named) around(frame);
  const ranges: FrameRange[] = [];
  for (let start = chosen.indexOf(1); start >= 0; ) {
    const gap = chosen.indexOf(0, start);
    const end = gap < 0 ? count : gap;
    ranges.push({ start, end });
    start = gap < 0 ? -1 : chosen.indexOf(1, gap);
  }
  return ranges;
}

/** Of ranges apart from each other. */
export const frameCountOf = (ranges: readonly FrameRange[]): number =>
  ranges.reduce((sum, { start, end }) => sum + end - start, 0);

/** What `ranges` hold that `others` do not; both in order. */
export function without(
  ranges: readonly FrameRange[],
  others: readonly FrameRange[],
): readonly FrameRange[] {
  return others.reduce<readonly FrameRange[]>(
    (left, { start, end }) =>
      left.flatMap((range) =>
        [
          { start: range.start, end: Math.min(range.end, start) },
          { start: Math.max(range.start, end), end: range.end },
        ].filter((part) => part.start < part.end),
      ),
    ranges,
  );
}
