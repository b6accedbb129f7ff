import type { Outcome, Reason } from '../core/reason';
import type { NotebookEntry } from '../shot/notebook';
import { seriesShotOf } from './entry';
import { summariseSeries } from './summarise';
import type { SeriesReport, SeriesShot } from './types';

/** What of an entry goes into statistics. */
export type CountedEntry = Pick<NotebookEntry, 'name' | 'exitVelocity' | 'own' | 'shared'>;

export interface GroupSummary {
  readonly report: Outcome<SeriesReport>;
  /** In the order of the report's deviations. */
  readonly shots: readonly string[];
  readonly leftOut: readonly { readonly name: string; readonly reason: Reason }[];
}

/** What the shots of each group say together; those without an exit velocity are left out and named. */
export const summariseGroups = (
  groups: readonly (readonly CountedEntry[])[],
  coverage: number,
): GroupSummary[] =>
  groups.map((entries) => {
    const shots: SeriesShot[] = [];
    const leftOut: { name: string; reason: Reason }[] = [];
    for (const entry of entries) {
      const part = seriesShotOf(entry);
      if (part.ok) shots.push(part.value);
      else leftOut.push({ name: entry.name, reason: part.reason });
    }
    const names = shots.map(({ name }) => name);
    return { report: summariseSeries(shots, coverage), shots: names, leftOut };
  });
