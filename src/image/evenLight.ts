import type { GreyFrame } from '../core/frame';
import { standardDeviation } from '../core/statistics';
import { frameGain } from './gain';
import type { Background } from './types';

/** Gains that scatter less than this are as good as steady: the frames keep their whole grey values. */
const STEADY = 0.005;

/**
 * Grey values of frames as the light of the rough scene would have made them. Under a lamp that flickers every pixel
 * follows the light, and its variance over time would be taken for the camera's noise. Clipped values stay as they are. Null: the
 * light is steady.
 */
export function evenLight(
  frames: readonly GreyFrame[],
  rough: Background,
): readonly Float32Array[] | null {
  const gains = frames.map((frame) => frameGain(frame, rough));
  if (frames.length < 2 || standardDeviation(gains) < STEADY) return null;
  return frames.map(({ data, white }, k) =>
    Float32Array.from(data, (value) => (value >= white ? value : value / (gains[k] as number))),
  );
}
