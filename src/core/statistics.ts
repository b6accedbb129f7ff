import chiSquareCdfOf from '@stdlib/stats-base-dists-chisquare-cdf';
import chiSquareQuantileOf from '@stdlib/stats-base-dists-chisquare-quantile';
import normalQuantileOf from '@stdlib/stats-base-dists-normal-quantile';
import studentCdfOf from '@stdlib/stats-base-dists-t-cdf';
import studentQuantileOf from '@stdlib/stats-base-dists-t-quantile';
import { ExitframeError } from './reason';

const sure = (value: number, what: string): number => {
  if (Number.isNaN(value)) {
    throw new ExitframeError('badArgument', `${what} has no value there.`);
  }
  return value;
};

export const normalQuantile = (probability: number): number =>
  sure(normalQuantileOf(probability, 0, 1), `Normal quantile of ${probability}`);

/** Quantile of Student's t; `dof` need not be whole, null means unlimited. */
export const studentQuantile = (probability: number, dof: number | null): number =>
  dof === null
    ? normalQuantile(probability)
    : sure(studentQuantileOf(probability, dof), `Student quantile of ${probability}, ${dof} dof`);

export const studentCdf = (t: number, dof: number): number =>
  sure(studentCdfOf(t, dof), `Student distribution at ${t}, ${dof} dof`);

export const chiSquareCdf = (x: number, dof: number): number =>
  sure(chiSquareCdfOf(x, dof), `Chi-square distribution at ${x}, ${dof} dof`);

/** Error function for x >= 0: a normal number's square follows chi-square with one degree of freedom. */
export const errorFunction = (x: number): number => chiSquareCdf(2 * x * x, 1);

export const chiSquareQuantile = (probability: number, dof: number): number =>
  sure(chiSquareQuantileOf(probability, dof), `Chi-square quantile of ${probability}, ${dof} dof`);

/** Factor k of an interval y +- k u that holds `coverage` of Student's t (JCGM 100:2008, G.3). */
export const coverageFactor = (coverage: number, dof: number | null): number =>
  studentQuantile((1 + coverage) / 2, dof);

export function mean(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] as number;
  return sure(sum / values.length, 'Mean of nothing');
}

/** Standard deviation of a sample (divisor n - 1). */
export function standardDeviation(values: ArrayLike<number>): number {
  const centre = mean(values);
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += ((values[i] as number) - centre) ** 2;
  return sure(Math.sqrt(sum / (values.length - 1)), 'Standard deviation of one value');
}

export function median(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  const middle = sorted.length >> 1;
  const upper = sorted[middle];
  if (upper === undefined) throw new ExitframeError('badArgument', 'Median of nothing.');
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] as number) + upper) / 2;
}

/** Standard deviation of a normal distribution over the median of its absolute deviations: 1 / quantile(0.75). */
export const DEVIATION_OVER_MEDIAN = 1.4826;

/** Robust standard deviation about a stated centre: the median absolute deviation, scaled for a normal distribution. */
export const robustDeviation = (values: readonly number[], centre: number): number =>
  DEVIATION_OVER_MEDIAN * median(values.map((value) => Math.abs(value - centre)));
