import { medianInPlace } from './median';
import type { Background } from './types';

/** A faulty pixel stands out from its neighbours by this many standard deviations of the noise and this many of their own spreads. */
const OFF_SIGMAS = 8;
const OFF_SPREADS = 4;
/** And by this share of the grey range: compression makes smaller ones. */
const OFF_SHARE = 0.04;
/** A pixel without this share of the noise expected is dead, with so many times as much it flickers, where its neighbours do neither. */
const DEAD_SHARE = 0.05;
const FLICKER_TIMES = 12;
const ALIVE_SHARE = 0.4;
const QUIET_TIMES = 2.5;
/** More pixels without noise than this share are a codec's doing, or a scene so still that none tells of a fault. */
const MOST_DEAD = 5e-4;
/** Where fewer of the frames agree, the scene has changed there. */
const AGREEING_SHARE = 0.75;
/** A variance known from fewer frames than this says little. */
const FEWEST_FRAMES = 12;

/**
 * Pixels of the camera that tell nothing of the scene: hot or stuck (alone off from all around), dead (no
 * noise where those around have some), flickering (far above the photon-transfer line). 1 for each;
 * null where there are none. `variance` is each pixel's over those of the `frames` that agree with its median.
 */
export function findFaulty(
  { width, height, level, white, noise }: Background,
  {
    variance,
    agreeing,
    frames,
  }: {
    readonly variance: Float32Array;
    readonly agreeing: Uint8Array;
    readonly frames: number;
  },
): Uint8Array | null {
  const faulty = new Uint8Array(width * height);
  const levels = new Float64Array(8);
  const variances = new Float64Array(8);
  let found = false;
  const expectedAt = (p: number) =>
    noise.readVariance + noise.gain * Math.max(0, level[p] as number);
  const still = variance.reduce((n, v, p) => n + (v < DEAD_SHARE * expectedAt(p) ? 1 : 0), 0);
  const deadTold = still <= Math.max(1, MOST_DEAD * variance.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const p = y * width + x;
      const own = level[p] as number;
      let n = 0;
      let fewest = agreeing[p] as number;
      for (let j = Math.max(0, y - 1); j <= Math.min(height - 1, y + 1); j++) {
        for (let i = Math.max(0, x - 1); i <= Math.min(width - 1, x + 1); i++) {
          const q = j * width + i;
          if (q === p) continue;
          levels[n] = level[q] as number;
          variances[n] = variance[q] as number;
          fewest = Math.min(fewest, agreeing[q] as number);
          n++;
        }
      }
      let low = Number.POSITIVE_INFINITY;
      let high = Number.NEGATIVE_INFINITY;
      for (let k = 0; k < n; k++) {
        low = Math.min(low, levels[k] as number);
        high = Math.max(high, levels[k] as number);
      }
      const expected = expectedAt(p);
      const off = own > high ? own - high : low - own;
      const enough = Math.max(
        OFF_SIGMAS * Math.sqrt(expected),
        OFF_SPREADS * (high - low),
        OFF_SHARE * white,
      );
      const v = variance[p] as number;
      const flickers = v > FLICKER_TIMES * expected;
      let loudest = 0;
      for (let k = 0; k < n; k++) loudest = Math.max(loudest, variances[k] as number);
      // Where the scene itself changes, so do the pixels around.
      const alone = loudest < QUIET_TIMES * expected && fewest >= AGREEING_SHARE * frames;
      let wrong = off > enough && alone;
      if (!wrong && frames >= FEWEST_FRAMES && own < 0.98 * white) {
        const dead = deadTold && v < DEAD_SHARE * expected;
        wrong =
          (flickers && alone) || (dead && medianInPlace(variances, n) > ALIVE_SHARE * expected);
      }
      if (wrong) {
        faulty[p] = 1;
        found = true;
      }
    }
  }
  return found ? faulty : null;
}
