import type { GreyFrame } from '../core/frame';
import { failure, type Outcome, success } from '../core/reason';
import { median } from '../core/statistics';
import { evenLight } from './evenLight';
import { findFaulty } from './faultyPixels';
import { findPassing } from './passing';
import { StillLevel } from './stillLevel';
import type { Background } from './types';

/** More frames than this only cost time: the median of 64 is already sharper than one grey step. */
const MOST_FRAMES = 64;
const FEWEST_FRAMES = 3;
/** Variance of rounding to whole grey values: the least noise a digital frame can have (EMVA 1288). */
const QUANTISATION = 1 / 12;
const LEVEL_BINS = 16;
/**
 * The scene without anything that moves, and the camera's noise.
 *
 * Per pixel: the median over frames spread evenly over those given, then the mean of the values that
 * agree with it, which is finer than one grey step. Whatever covers a pixel in fewer than half of the
 * frames leaves no trace: frames in which something passes are left out there (see `findPassing`).
 * The light may flicker: each frame is brought to the same light first (see `evenLight`).
 * Noise: the variance over time against the level (photon transfer), a straight line through the medians of level classes. Compression freezes the noise of static pixels,
 * so this noise is a lower limit; centre measurements judge their scatter from their own residuals.
 */
export function buildBackground(frames: readonly GreyFrame[]): Outcome<Background> {
  const first = frames[0];
  if (first === undefined || frames.length < FEWEST_FRAMES) {
    return failure(
      'tooFewFrames',
      `The scene behind the ball needs at least ${FEWEST_FRAMES} frames; there are ${frames.length}.`,
      'Use a clip with more frames.',
      { form: 'scene', frames: frames.length, fewest: FEWEST_FRAMES },
    );
  }
  const { width, height, white } = first;
  if (frames.some((frame) => frame.width !== width || frame.height !== height)) {
    return failure(
      'sizeChanges',
      `The frames do not all have the size of the first, ${width} x ${height} px.`,
      'Cut the clip where its size changes and use one part.',
      { width, height },
    );
  }
  const count = Math.min(MOST_FRAMES, frames.length);
  const chosen = Array.from({ length: count }, (_, i) => {
    const at = count === 1 ? 0 : Math.round((i * (frames.length - 1)) / (count - 1));
    return frames[at] as GreyFrame;
  });

  const size = width * height;
  const level = new Float32Array(size);
  const variance = new Float32Array(size);
  const agreeing = new Uint8Array(size);
  const still = new StillLevel(count);
  const { values } = still;
  const setLevel = (p: number, n: number, isWhole: boolean) => {
    still.estimate(n, isWhole);
    level[p] = still.level;
    variance[p] = still.variance;
    agreeing[p] = still.agreeing;
  };
  const asFilmed: readonly ArrayLike<number>[] = chosen.map(({ data }) => data);
  let lit = asFilmed;
  const setAll = () => {
    for (let p = 0; p < size; p++) {
      for (let k = 0; k < count; k++) values[k] = (lit[k] as ArrayLike<number>)[p] as number;
      setLevel(p, count, lit === asFilmed);
    }
    return { width, height, level, white, noise: photonTransfer(level, variance, count) };
  };
  let rough = setAll();
  const even = evenLight(chosen, rough);
  if (even !== null) {
    lit = even;
    rough = setAll();
  }
  const passing = findPassing(lit, rough);
  for (let p = 0; p < size; p++) {
    const block = passing.blockOf(p);
    if (!passing.any(block)) continue;
    let n = 0;
    for (let k = 0; k < count; k++) {
      if (!passing.at(k, block)) values[n++] = (lit[k] as ArrayLike<number>)[p] as number;
    }
    setLevel(p, n, lit === asFilmed);
  }
  const noise = photonTransfer(level, variance, count);
  const scene = { width, height, level, white, noise, averaged: count };
  const faulty = findFaulty(scene, { variance, agreeing, frames: count });
  return success(faulty === null ? scene : { ...scene, faulty });
}

/** Fits `readVariance + gain * level` to the variances over time, class by class of level. */
function photonTransfer(
  level: Float32Array,
  variance: Float32Array,
  frames: number,
): Background['noise'] {
  // A pixel's variance follows a chi-square law; its median lies below its mean by this factor
  // (Wilson and Hilferty, Proc. Natl. Acad. Sci. 17 (1931) 684).
  const medianShare = (1 - 2 / (9 * Math.max(1, frames - 1))) ** 3;
  // Every so many pixels is enough, and a prime stride does not lock to the rows.
  const stride = Math.max(1, Math.floor(level.length / 60_000) * 2 - 1);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let p = 0; p < level.length; p += stride) {
    low = Math.min(low, level[p] as number);
    high = Math.max(high, level[p] as number);
  }
  const step = Math.max((high - low) / LEVEL_BINS, 1e-9);
  const levels: number[][] = Array.from({ length: LEVEL_BINS }, () => []);
  const variances: number[][] = Array.from({ length: LEVEL_BINS }, () => []);
  for (let p = 0; p < level.length; p += stride) {
    const bin = Math.min(LEVEL_BINS - 1, Math.floor(((level[p] as number) - low) / step));
    levels[bin]?.push(level[p] as number);
    variances[bin]?.push(variance[p] as number);
  }
  let n = 0;
  let sx = 0;
  let sy = 0;
  let sxx = 0;
  let sxy = 0;
  levels.forEach((inBin, bin) => {
    // A class with few pixels is all edge pixels, where vibration and compression rule.
    if (inBin.length < 50) return;
    const x = median(inBin);
    const y = median(variances[bin] as number[]) / medianShare;
    // A variance's own scatter grows with its square; the weight keeps dark classes from drowning.
    const w = inBin.length / (y + QUANTISATION) ** 2;
    n += w;
    sx += w * x;
    sy += w * y;
    sxx += w * x * x;
    sxy += w * x * y;
  });
  if (n === 0) return { readVariance: QUANTISATION, gain: 0 };
  const spread = sxx - (sx * sx) / n;
  const slope = spread > 1e-9 * sxx ? (sxy - (sx * sy) / n) / spread : 0;
  const gain = Math.max(0, slope);
  return { readVariance: Math.max(QUANTISATION, (sy - gain * sx) / n), gain };
}
