import { failure, type Outcome, type Reason, success } from '../core/reason';
import { SOFTWARE_VERSION } from '../core/version';
import { seriesShot } from '../series/seriesShot';
import { summariseSeries } from '../series/summarise';
import type { SeriesReport, SeriesShot } from '../series/types';
import type { Result, ResultInputs } from '../shot/result';

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

/** What the series takes of a result. */
export interface SeriesPart extends Pick<Result, 'shot' | 'software' | 'exitVelocity' | 'budget'> {
  readonly inputs: ResultInputs;
}

/** Failures: `resultWithoutInputs`. */
export function seriesPart({
  shot,
  software,
  exitVelocity,
  budget,
  inputs,
}: Result): Outcome<SeriesPart> {
  return inputs === null
    ? failure(
        'resultWithoutInputs',
        'The result does not hold the shot it was made from, so what it shares with others is not known.',
        'Reduce the shot anew with npm run reduce.',
      )
    : success({ shot, software, exitVelocity, budget, inputs });
}

/** Shots without an exit velocity are left out; the first shot's coverage counts. Failures: `tooFewShots`, `shotWithoutUncertainty`. */
export function seriesOf(results: readonly SeriesPart[]): Outcome<SeriesFile> {
  const parts: SeriesShot[] = [];
  const leftOut: { shot: string; reason: Reason }[] = [];
  for (const result of results) {
    const part = seriesShot(result.inputs.shot, result);
    if (part.ok) parts.push(part.value);
    else leftOut.push({ shot: result.shot, reason: part.reason });
  }
  const coverage = results[0]?.inputs.shot.coverage ?? 0.95;
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

/** As it stands in a file. */
export const seriesText = (series: SeriesFile): string => `${JSON.stringify(series, null, 2)}\n`;
