import type { BudgetEntry } from '../shot/result';
import type { Term, TermName } from './types';

/** What the lines of an exit velocity's budget come from; anything else is what the motion is taken to be. */
const ORIGINS: ReadonlyMap<string, TermName> = new Map([
  ['ball centres', 'fit'],
  ['frame times', 'fit'],
  ['air drag as filmed', 'fit'],
  ['loss in the muzzle zone as filmed', 'fit'],
  ['known length', 'scale'],
  ['ends of the known length', 'scale'],
  ['depth of the known length', 'scale'],
  ['camera distance', 'scale'],
  ['direction of the flight', 'scale'],
  ['recording rate', 'clock'],
  ['time per line', 'clock'],
  ['place of the muzzle plane', 'muzzle'],
  ['ball diameter', 'ballAndAir'],
  ['ball mass', 'ballAndAir'],
  ['air temperature', 'ballAndAir'],
  ['air pressure', 'ballAndAir'],
  ['air humidity', 'ballAndAir'],
]);

/** A budget of a planned shot, or of one reduced, summed up by origin, the largest part first. */
export function termsOf(budget: readonly BudgetEntry[]): Term[] {
  const variances = new Map<TermName, number>();
  for (const { source, contribution } of budget) {
    const name = ORIGINS.get(source) ?? 'motion';
    variances.set(name, (variances.get(name) ?? 0) + contribution ** 2);
  }
  const total = [...variances.values()].reduce((a, b) => a + b, 0);
  return [...variances]
    .map(([name, variance]) => ({ name, u: Math.sqrt(variance), share: variance / total }))
    .sort((a, b) => b.share - a.share);
}
