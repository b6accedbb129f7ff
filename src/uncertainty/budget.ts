import type { BudgetEntry, Distribution } from '../shot/result';
import { usualSpread } from './draw';
import { effectiveDof } from './quantity';

/** An entry from an input's standard uncertainty and the sensitivity of the result to it. */
export const entry = (
  source: string,
  type: 'A' | 'B',
  u: number,
  unit: string,
  sensitivity: number,
  dof: number | null,
  distribution: Distribution = usualSpread(dof),
): BudgetEntry => ({
  source,
  type,
  distribution,
  u,
  unit,
  sensitivity,
  contribution: Math.abs(sensitivity) * u,
  dof,
});

/** Combined standard uncertainty of independent entries and its effective degrees of freedom (JCGM 100:2008, 5.1.2, G.4). */
export function combine(entries: readonly BudgetEntry[]): { u: number; dof: number | null } {
  const u = Math.hypot(...entries.map(({ contribution }) => contribution));
  return { u, dof: effectiveDof(u, entries) };
}
