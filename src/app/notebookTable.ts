import { isAvailable } from '../core/estimate';
import type { NotebookEntry } from '../shot/notebook';

/** How the notebook's rows are chosen and ordered: pure functions over its entries. */

export const SORT_KEYS = [
  'name',
  'exitVelocity',
  'lead',
  'barrelLength',
  'residualPressure',
  'ballDiameter',
  'ballMass',
] as const;
export type SortKey = (typeof SORT_KEYS)[number];

export interface Sorting {
  readonly key: SortKey;
  readonly upwards: boolean;
}

export const GROUPINGS = ['none', 'residualPressure', 'ball', 'barrelLength'] as const;
export type Grouping = (typeof GROUPINGS)[number];

/** What the entries of a group have in common. */
export interface GroupMark {
  readonly grouping: Grouping;
  /** hPa; mm and g; m. Null: not stated. */
  readonly stated: readonly number[] | null;
}

export interface EntryGroup {
  readonly mark: GroupMark;
  readonly entries: readonly NotebookEntry[];
}

const inNumberOrder = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** Entries whose name or notes hold every word of the filter, in order; what lacks the number comes last. */
export function rowsOf(
  entries: readonly NotebookEntry[],
  filter: string,
  { key, upwards }: Sorting,
): readonly NotebookEntry[] {
  const words = filter.toLowerCase().split(/\s+/).filter(Boolean);
  const kept = entries.filter(({ name, notes }) => {
    const text = `${name} ${notes}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
  const sign = upwards ? 1 : -1;
  return kept.sort((a, b) => {
    if (key === 'name') return sign * inNumberOrder.compare(a.name, b.name);
    const [x, y] = [numberOf(a, key), numberOf(b, key)];
    if (x === null || y === null) return (x === null ? 1 : 0) - (y === null ? 1 : 0);
    return sign * (x - y);
  });
}

function numberOf(entry: NotebookEntry, key: Exclude<SortKey, 'name'>): number | null {
  if (key === 'exitVelocity' || key === 'lead') {
    const reported = entry[key];
    return isAvailable(reported) ? reported.value : null;
  }
  return entry.conditions[key]?.value ?? null;
}

/** The entries by what they have in common, in the order in which the first of each comes. */
export function groupsOf(
  entries: readonly NotebookEntry[],
  grouping: Grouping,
): readonly EntryGroup[] {
  const groups = new Map<string, { mark: GroupMark; entries: NotebookEntry[] }>();
  for (const entry of entries) {
    const stated = statedOf(entry, grouping);
    const key = JSON.stringify(stated);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { mark: { grouping, stated }, entries: [entry] });
    else group.entries.push(entry);
  }
  return [...groups.values()];
}

/** What shots of one group differ by: their mean says nothing about one setting of the launcher. */
export const mixedBy = (groups: readonly EntryGroup[]): readonly Exclude<Grouping, 'none'>[] =>
  GROUPINGS.filter((grouping) => grouping !== 'none').filter((grouping) =>
    groups.some(({ entries }) => groupsOf(entries, grouping).length > 1),
  );

/** Numbers are rounded, so that shots meant alike stand together: pressures to two figures, balls to 0.1 mm and 0.01 g. */
function statedOf({ conditions }: NotebookEntry, grouping: Grouping): readonly number[] | null {
  const { residualPressure, ballDiameter, ballMass, barrelLength } = conditions;
  switch (grouping) {
    case 'none':
      return [];
    case 'residualPressure':
      return residualPressure && [Number((residualPressure.value / 100).toPrecision(2))];
    case 'ball':
      return (
        ballDiameter &&
        ballMass && [inSteps(ballDiameter.value * 1e3, 10), inSteps(ballMass.value * 1e3, 100)]
      );
    case 'barrelLength':
      return barrelLength && [inSteps(barrelLength.value, 1000)];
  }
}

const inSteps = (value: number, perUnit: number) => Math.round(value * perUnit) / perUnit;
