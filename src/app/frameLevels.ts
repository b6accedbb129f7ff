import { rateFromLamp } from '../clock/rateCheck';
import type { GreyFrame } from '../core/frame';
import { failure } from '../core/reason';
import type { Crew } from './crew';

type Frames = Pick<Crew['film'], 'startRun' | 'next' | 'endRun'>;

/** Pixels looked at in each frame: a lamp's flicker shows in any few thousand. */
const SAMPLED_PIXELS = 4096;

/**
 * Mean grey value of every frame in turn, from an even sample of its pixels: what a flickering lamp does to
 * the film. `onShare` gets 0..1.
 */
export async function frameLevels(
  film: Frames,
  frameCount: number,
  onShare: (share: number) => void,
): Promise<Float64Array> {
  const levels = new Float64Array(frameCount);
  const run = await film.startRun({ start: 0, end: frameCount });
  let done = 0;
  try {
    for (;;) {
      const frames = await film.next(run);
      if (frames.length === 0) return levels.subarray(0, done);
      for (const frame of frames) levels[done++] = meanLevel(frame);
      onShare(done / frameCount);
    }
  } finally {
    await film.endRun(run);
  }
}

function meanLevel({ data }: GreyFrame): number {
  const stride = Math.max(1, Math.floor(data.length / SAMPLED_PIXELS));
  let sum = 0;
  let count = 0;
  for (let i = 0; i < data.length; i += stride) {
    sum += data[i] as number;
    count += 1;
  }
  return count === 0 ? 0 : sum / count;
}

/** The recording rate, about `expected`, from a lamp in the film that flickers `flicker` times a second. */
export async function rateOfLamp(
  film: Frames,
  frameCount: number,
  flicker: number,
  expected: number | null,
  onShare: (share: number) => void,
) {
  if (expected === null) {
    return failure(
      'noRate',
      'An expected rate is needed first.',
      'Type the rate set on the camera.',
    );
  }
  return rateFromLamp(await frameLevels(film, frameCount, onShare), flicker, expected);
}
