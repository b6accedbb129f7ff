import { type Outcome, type Reason, success } from '../core/reason';
import { SOFTWARE_VERSION } from '../core/version';
import { seriesShot } from '../series/seriesShot';
import { summariseSeries } from '../series/summarise';
import type { SeriesReport, SeriesShot } from '../series/types';
import type { Result } from '../shot/result';
import type { Shot } from '../shot/schema';

/** What several shots say together, as written to a file: the exit velocities' series, m/s. */
export interface SeriesFile extends SeriesReport {
  readonly format: 'exitframe-series';
  readonly version: 1;
  readonly software: string;
  readonly coverage: number;
  /** In the order of `deviations`. */
  readonly shots: readonly string[];
  readonly leftOut: readonly { readonly shot: string; readonly reason: Reason }[];
}

/** Shots without an exit velocity are left out; the first shot's coverage counts. Failures: `tooFewShots`, `shotWithoutUncertainty`. */
export function seriesOf(
  reduced: readonly { readonly shot: Shot; readonly result: Result }[],
): Outcome<SeriesFile> {
  const parts: SeriesShot[] = [];
  const leftOut: { shot: string; reason: Reason }[] = [];
  for (const { shot, result } of reduced) {
    const part = seriesShot(shot, result);
    if (part.ok) parts.push(part.value);
    else leftOut.push({ shot: result.shot, reason: part.reason });
  }
  const coverage = reduced[0]?.shot.coverage ?? 0.95;
  const report = summariseSeries(parts, coverage);
  if (!report.ok) return report;
  return success({
    format: 'exitframe-series',
    version: 1,
    software: SOFTWARE_VERSION,
    coverage,
    shots: parts.map(({ name }) => name),
    leftOut,
    ...report.value,
  });
}
