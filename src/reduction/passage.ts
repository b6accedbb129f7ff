import type { FrameRange } from '../core/film';
import { REST_FRAMES } from '../seal/reference';

/**
 * Frames before the first in which anything moves that are looked at too: a seal begins to bulge, and a ball to show,
 * unnoticed; and it is told from them how the scene stands when nothing happens.
 */
export const BEFORE = 64;
export const AFTER = 16;
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
  const chosen = new Uint8Array(count);
  chosen.fill(1, 0, REST_FRAMES);
  const around = (frame: number) =>
    chosen.fill(1, Math.max(0, frame - BEFORE), Math.min(count, frame + AFTER + 1));
  isActive.forEach((active, frame) => {
    if (active === 1) around(frame);
  });
  for (const frame of named) around(frame);
  if (chosen.reduce((sum, one) => sum + one, 0) > MOST_SHARE * count) return whole;
  const ranges: FrameRange[] = [];
  for (let start = chosen.indexOf(1); start >= 0; ) {
    const gap = chosen.indexOf(0, start);
    const end = gap < 0 ? count : gap;
    ranges.push({ start, end });
    start = gap < 0 ? -1 : chosen.indexOf(1, gap);
  }
  return ranges;
}
