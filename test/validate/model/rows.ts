import type { ReportRow } from '../types';

/** A row of one number, without a unit of its own. */
export function figureRow(
  of: string,
  figure: string,
  value: number,
  limit: ReportRow['limit'],
  n: number,
  note?: string,
): ReportRow {
  const { low = value, high = value } = limit;
  return {
    ...{ of, figure, value, unit: '', limit, n },
    passed: Number.isFinite(value) && value >= low && value <= high,
    ...(note === undefined ? {} : { note }),
  };
}

/** Difference from a true value, per cent of it. */
export const offBy = (value: number, truth: number): number => 100 * Math.abs(value / truth - 1);

/** The largest; not-a-number where one is not a number, so that it fails its row. */
export const largest = (values: readonly number[]): number => Math.max(...values);
