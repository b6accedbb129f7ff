import type { Posterior } from '../shot/result';

/** How probable each of evenly spaced moments is; not normalised. */
export interface Density {
  readonly times: readonly number[];
  readonly weights: readonly number[];
}

/** A normal source this many standard deviations out no longer counts. */
const TAIL = 5;
/** Steps a standard deviation of the normal source is resolved with, and the most points of a curve. */
const STEPS_A_SIGMA = 4;
const MOST_POINTS = 600;
/** Moments less probable than this share of the most probable one are not reported. */
const NEGLIGIBLE = 1e-6;

/** Mean and standard deviation. */
export function momentsOf({ times, weights }: Density): { mean: number; sd: number } {
  // Counted from the first moment: the spread is small against the times themselves.
  const zero = times[0] ?? 0;
  let sum = 0;
  let first = 0;
  let second = 0;
  times.forEach((time, i) => {
    const w = weights[i] as number;
    sum += w;
    first += w * (time - zero);
    second += w * (time - zero) ** 2;
  });
  const mean = first / sum;
  return { mean: zero + mean, sd: Math.sqrt(Math.max(0, second / sum - mean * mean)) };
}

/** The sum of a quantity with this density and a centred normal one. */
export function withNormal(density: Density, sigma: number): Density {
  const { times, weights } = density;
  const first = times[0] ?? 0;
  const last = times.at(-1) ?? first;
  const given = (last - first) / Math.max(1, times.length - 1);
  if (!(sigma > given / STEPS_A_SIGMA)) return density;
  const from = first - TAIL * sigma;
  const to = last + TAIL * sigma;
  const step = Math.max(Math.min(given, sigma / STEPS_A_SIGMA), (to - from) / MOST_POINTS);
  const count = Math.ceil((to - from) / step);
  const out = Array.from({ length: count + 1 }, (_, i) => from + i * step);
  return {
    times: out,
    weights: out.map((time) =>
      times.reduce((sum, t, i) => {
        const z = (time - t) / sigma;
        return Math.abs(z) > TAIL ? sum : sum + (weights[i] as number) * Math.exp(-0.5 * z * z);
      }, 0),
    ),
  };
}

/** The sum of a quantity with this density and a discrete one: `shifts` with how probable each is. */
export function shifted(
  { times, weights }: Density,
  shifts: readonly (readonly [by: number, probability: number])[],
): Density {
  const first = times[0] ?? 0;
  const step = (times[1] ?? first + 1) - first;
  return {
    times,
    weights: times.map((_, i) =>
      shifts.reduce((sum, [by, probability]) => {
        const at = i - by / step;
        const low = Math.floor(at);
        const a = weights[low] ?? 0;
        const b = weights[low + 1] ?? 0;
        return sum + probability * (a + (at - low) * (b - a));
      }, 0),
    ),
  };
}

/** The value below which a share of the probability lies, linear within a step. */
export function quantileOf({ times, weights }: Density, share: number): number {
  const step = (times[1] ?? 0) - (times[0] ?? 0);
  const total = weights.reduce((a, b) => a + b, 0);
  let sum = 0;
  for (let i = 0; i < times.length; i++) {
    const w = (weights[i] as number) / total;
    if (w > 0 && sum + w >= share) return (times[i] as number) + ((share - sum) / w - 0.5) * step;
    sum += w;
  }
  return times.at(-1) as number;
}

/** The interval that leaves as much probability below as above (JCGM 101:2008, 7.7). */
export const intervalOf = (
  density: Density,
  coverage: number,
): readonly [low: number, high: number] => [
  quantileOf(density, (1 - coverage) / 2),
  quantileOf(density, (1 + coverage) / 2),
];

/** As it is reported: area 1 by the trapezoidal rule, ends that do not matter left out. */
export function posteriorOf({ times, weights }: Density): Posterior {
  const least = NEGLIGIBLE * Math.max(...weights);
  const from = Math.max(0, weights.findIndex((w) => w > least) - 1);
  const to = Math.min(weights.length, weights.findLastIndex((w) => w > least) + 2);
  const t = times.slice(from, to);
  const w = weights.slice(from, to);
  let area = 0;
  for (let i = 1; i < t.length; i++) {
    area +=
      (((w[i] as number) + (w[i - 1] as number)) / 2) * ((t[i] as number) - (t[i - 1] as number));
  }
  return { times: t, density: w.map((value) => value / area) };
}
