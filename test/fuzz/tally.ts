import type {} from 'vitest';
import type { Outcome, Verdict } from './judge';

/** One mutant read: its number, what was done and what came of it. */
export interface Trial extends Verdict {
  readonly number: number;
  readonly how: string;
}

export interface Row {
  readonly sample: string;
  readonly where: 'Node' | 'Chromium';
  readonly trials: readonly Trial[];
}

/** What the browser's test is told, and what it hands back. */
declare module 'vitest' {
  interface ProvidedContext {
    readonly fuzz: { readonly seed: number; readonly count: number; readonly only: string };
  }
  interface TaskMeta {
    row?: Row;
  }
}

const OUTCOMES: readonly Outcome[] = ['same', 'refused', 'warned', 'untold', 'failed'];
const HEADS = [
  'read the same',
  'refused',
  'read, with a warning',
  'changed, not detectable',
  'failed',
];

const count = ({ trials }: Row, outcome: Outcome) =>
  trials.filter((trial) => trial.outcome === outcome).length;

export function table(rows: readonly Row[]): string {
  const cells = rows.map((row) => [
    row.sample,
    row.where,
    `${row.trials.length}`,
    ...OUTCOMES.map((outcome) => `${count(row, outcome)}`),
  ]);
  const sums = OUTCOMES.map((outcome) => rows.reduce((sum, row) => sum + count(row, outcome), 0));
  const tried = rows.reduce((sum, { trials }) => sum + trials.length, 0);
  return [
    ['sample', 'read in', 'tried', ...HEADS],
    ['---', '---', ...new Array(6).fill('---:')],
    ...cells,
    ['**all**', '', `**${tried}**`, ...sums.map((sum) => `**${sum}**`)],
  ]
    .map((line) => `| ${line.join(' | ')} |`)
    .join('\n');
}

/** How often each reason was given, the commonest first. */
export function reasons(rows: readonly Row[], outcome: Outcome): string {
  const counts = new Map<string, number>();
  for (const { outcome: one, why } of rows.flatMap(({ trials }) => trials)) {
    if (one === outcome) counts.set(why, (counts.get(why) ?? 0) + 1);
  }
  return [...counts]
    .sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1))
    .map(([why, times]) => `\`${why}\` ${times}`)
    .join(', ');
}

export const failures = (rows: readonly Row[]): string[] =>
  rows.flatMap(({ sample, where, trials }) =>
    trials
      .filter(({ outcome }) => outcome === 'failed')
      .map(({ number, why, how }) => `${sample}, ${where}, mutant ${number}: ${why} (${how})`),
  );

/**
 * What the browser's decoder shows without a word, though ffmpeg found the same file damaged: its
 * own verdict stands corrected.
 */
export function crossChecked(inBrowser: Row, inNode: Row | undefined): Row {
  const trials = inBrowser.trials.map((trial) => {
    const other = inNode?.trials.find(({ number }) => number === trial.number);
    const isMissed =
      trial.outcome === 'untold' &&
      trial.why.includes('frames') &&
      other?.outcome === 'refused' &&
      DAMAGE.includes(other.why);
    return isMissed
      ? { ...trial, outcome: 'failed' as const, why: `frames changed; Node says ${other.why}` }
      : trial;
  });
  return { ...inBrowser, trials };
}

/** Reasons by which a decoder says that the pictures themselves are damaged. */
const DAMAGE = ['decoderFailed', 'truncated', 'brokenParts', 'brokenIndex', 'badArchive'];
