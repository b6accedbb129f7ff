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
  const within = ranges
    .map((range) => ({ ...range, end: Math.min(range.end, frameCount) }))
    .filter(({ start, end }) => start < end);
  return { frameCount, sums: await source.sums(within, signal) };
}
