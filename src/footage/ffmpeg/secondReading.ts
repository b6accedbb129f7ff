import type { FrameRange } from '../../core/film';
import type { SecondReading } from '../givenFrames';
import type { DecodePlatform } from '../platform';
import type { Clip } from './clip';
import { openFilm } from './film';

/** Sums of a film's frames under ffmpeg, which refuses what it finds damaged. Throws what `openFilm` and its frames do. */
export async function readAgain(
  clip: Clip,
  platform: DecodePlatform,
  ranges: readonly FrameRange[],
  signal?: AbortSignal,
): Promise<SecondReading> {
  const source = await openFilm(clip, platform, signal);
  const { frameCount } = source.info;
  const sums = new Map<number, number>();
  for (const range of ranges) {
    const within = { ...range, end: Math.min(range.end, frameCount) };
    if (within.start >= within.end) continue;
    for (const [index, sum] of await source.sums(within, signal)) sums.set(index, sum);
  }
  return { frameCount, sums };
}
