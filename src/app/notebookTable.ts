import { isAvailable } from '../core/estimate';
import { formatNumber, numberAt } from '../core/format';
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

/** A group of entries and what they have in common. */
export interface EntryGroup {
  readonly label: string;
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
  const groups = new Map<string, NotebookEntry[]>();
  for (const entry of entries) {
    const label = labelOf(entry, grouping);
    const group = groups.get(label);
    if (group === undefined) groups.set(label, [entry]);
    else group.push(entry);
  }
  return [...groups].map(([label, some]) => ({ label, entries: some }));
}

/** Numbers are rounded, so that shots meant alike stand together: pressures to two figures, balls to 0.1 mm and 0.01 g. */
function labelOf({ conditions }: NotebookEntry, grouping: Grouping): string {
  const { residualPressure, ballDiameter, ballMass, barrelLength } = conditions;
  switch (grouping) {
    case 'none':
      return 'all shots';
    case 'residualPressure':
      return residualPressure === null
        ? 'residual pressure not stated'
        : `${formatNumber(residualPressure.value / 100, 2)} hPa residual`;
    case 'ball':
      return ballDiameter === null || ballMass === null
        ? 'ball not stated'
        : `ball ${(ballDiameter.value * 1e3).toFixed(1)} mm, ${(ballMass.value * 1e3).toFixed(2)} g`;
    case 'barrelLength':
      return barrelLength === null
        ? 'barrel length not stated'
        : `barrel ${numberAt(Math.round(barrelLength.value * 1e3) / 1e3, 6)} m`;
  }
}
