import { mean, standardDeviation, studentQuantile } from '../core/statistics';
import type { GrubbsTest } from './types';

/** Chance of calling a value an outlier where there is none. */
const SIGNIFICANCE = 0.05;
const FEWEST = 3;

/** Critical value of Grubbs's statistic for `tail` of chance in one direction (Grubbs, Technometrics 11 (1969) 1). */
export function grubbsCritical(count: number, tail: number): number {
  const t = studentQuantile(1 - tail / count, count - 2);
  return ((count - 1) / Math.sqrt(count)) * Math.sqrt(t ** 2 / (count - 2 + t ** 2));
}

/** The value farthest from the mean, tested on both sides; null: fewer than three, or all alike. */
export function grubbsTest(values: readonly number[]): GrubbsTest | null {
  if (values.length < FEWEST) return null;
  const deviation = standardDeviation(values);
  if (deviation === 0) return null;
  const centre = mean(values);
  const distances = values.map((x) => Math.abs(x - centre) / deviation);
  const statistic = Math.max(...distances);
  const critical = grubbsCritical(values.length, SIGNIFICANCE / 2);
  return {
    index: distances.indexOf(statistic),
    statistic,
    critical,
    outlier: statistic > critical,
  };
}
