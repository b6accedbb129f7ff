import type { Pixels } from '../core/units';
import type { Density } from './density';

/** How far the film stood out in one frame, with its standard uncertainty. */
export interface HeightSeen {
  /** Middle of the exposure, frame intervals. */
  readonly time: number;
  readonly height: Pixels;
  readonly u: Pixels;
  /** Whether the film is in view; where it is not, its height is `height` at the most. */
  readonly seen: boolean;
}

/** Powers of the time since the onset that the height may grow with, each as probable. */
const POWERS = [1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3] as const;
/** Frames fitted: of rest before, and of growth; a film that yields or stiffens leaves its law later on. */
const RESTING = 12;
const GROWING = 5;
/** What the law leaves out, as a share of the height. */
const LAW_U = 0.06;
/** Onsets are looked for from so many frame intervals before that, so many apart. */
const EARLIEST = 16;
const STEP = 0.05;

/**
 * How probable each moment is to be that at which the film left its rest position: a growth with a power of the time
 * since, its scale and power summed over, fitted to the first heights seen, and no higher before than what was not
 * seen. Times in frame intervals, weights of sum 1. Null: the film is seen out in no frame, or already in the first.
 */
export function onsetDensity(heights: readonly HeightSeen[]): Density | null {
  const out = heights.findLastIndex(({ seen }) => !seen) + 1;
  const first = heights[out];
  if (out === 0 || first === undefined) return null;
  const resting = heights.slice(Math.max(0, out - RESTING), out);
  const growing = heights.slice(out, out + GROWING);
  const count = Math.round(EARLIEST / STEP);
  const times = Array.from({ length: count }, (_, i) => first.time - (count - i) * STEP);
  const weights = times.map((onset) =>
    POWERS.reduce((sum, power) => sum + likelihood(resting, growing, onset, power), 0),
  );
  const sum = weights.reduce((a, b) => a + b, 0);
  return sum > 0 ? { times, weights: weights.map((w) => w / sum) } : null;
}

/** For one onset and power; the scale of the growth summed over, each as probable in its logarithm. */
function likelihood(
  resting: readonly HeightSeen[],
  growing: readonly HeightSeen[],
  onset: number,
  power: number,
): number {
  const grown = (time: number): number => Math.max(0, time - onset) ** power;
  let information = 0;
  let product = 0;
  let chiSquare = 0;
  for (const { time, height, u } of growing) {
    const weight = 1 / (u * u + (LAW_U * height) ** 2);
    information += weight * grown(time) ** 2;
    product += weight * grown(time) * height;
    chiSquare += weight * height * height;
  }
  const scale = product / information;
  if (!(scale > 0)) return 0;
  chiSquare -= scale * product;
  for (const { time, height, u } of resting) {
    const over = (scale * grown(time) - height) / u;
    if (over > 0) chiSquare += over * over;
  }
  return Math.exp(-chiSquare / 2) / (scale * Math.sqrt(information));
}
