import type { Seconds } from '../core/units';
import type { Patterns } from './faces';
import { type Strengths, splitAt } from './turning';

/** Which rates explain the frames. */
export interface Spectrum {
  /** The smallest of the rates that explain the frames best, rad/s, and the chi-square it explains. */
  readonly rate: number;
  readonly gain: number;
  /** The rest of those. */
  readonly others: readonly number[];
  /** Distance of the rates tried. */
  readonly step: number;
}

/** Rates whose gain is this near the best are told apart by nothing but their size. */
const NEAR_BEST = 0.1;

/** The rates up to half a turn in `interval`, and the best among them. */
export function spectrumOf(patterns: Patterns, interval: Seconds, strengths: Strengths): Spectrum {
  const { times, orders, n } = patterns;
  const span = (times[n - 1] as number) - (times[0] as number);
  const most = Math.PI / interval;
  // A third of what the highest order needs for a full turn over the film.
  const half = Math.ceil((most * span * orders * 3) / (2 * Math.PI));
  const step = most / half;
  const gains = Float64Array.from({ length: 2 * half + 1 }, (_, k) =>
    splitAt(patterns, (k - half) * step, strengths),
  );
  const best = gains.reduce((a, b) => Math.max(a, b));
  const peaks: { rate: number; gain: number }[] = [];
  for (let k = 0; k <= 2 * half; k++) {
    const gain = gains[k] as number;
    const isPeak = gain >= (gains[k - 1] ?? -1) && gain > (gains[k + 1] ?? -1);
    if (isPeak && gain > (1 - 2 * NEAR_BEST) * best) {
      peaks.push(climb(patterns, (k - half) * step, step, strengths));
    }
  }
  const highest = peaks.reduce((a, b) => (b.gain > a.gain ? b : a), { rate: 0, gain: 0 });
  const near = peaks
    .filter(({ gain }) => gain >= (1 - NEAR_BEST) * highest.gain)
    .sort((a, b) => Math.abs(a.rate) - Math.abs(b.rate));
  const [first = highest, ...rest] = near;
  return { ...first, others: rest.map(({ rate }) => rate), step };
}

/** The top of a peak, by halving steps. */
function climb(
  patterns: Patterns,
  start: number,
  step: number,
  strengths: Strengths,
): { rate: number; gain: number } {
  let rate = start;
  let gain = splitAt(patterns, rate, strengths);
  for (let h = step / 2; h > step / 4000; h /= 2) {
    for (const next of [rate - h, rate + h]) {
      const there = splitAt(patterns, next, strengths);
      if (there <= gain) continue;
      gain = there;
      rate = next;
      break;
    }
  }
  return { rate, gain };
}

/** How far from the best rate chi-square has grown by one, the patterns fitted anew; the shallower side counts. */
export function halfWidth(
  patterns: Patterns,
  { rate, gain, step }: Spectrum,
  strengths: Strengths,
): number {
  const lost = (h: number) =>
    gain - Math.max(splitAt(patterns, rate - h, strengths), splitAt(patterns, rate + h, strengths));
  let high = step / 8;
  while (lost(high) < 1 && high < 64 * step) high *= 2;
  let low = 0;
  for (let round = 0; round < 20; round++) {
    const middle = (low + high) / 2;
    if (lost(middle) < 1) low = middle;
    else high = middle;
  }
  return high;
}
