import {
  formatCount,
  formatInterval,
  formatNumber,
  formatQuantity,
  numberAt,
} from '../core/format';
import type { FitCheck, FitReport, MonteCarloReport } from '../shot/result';

/** What a check says of the fit. Centres that scatter less than stated only mean that the stated uncertainty is generous. */
export type Verdict = 'passed' | 'cautious' | 'failed';

export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  passed: 'passed',
  cautious: 'on the safe side',
  failed: 'look at this',
};

export function verdictOn({ code, passed }: FitCheck, fit: FitReport): Verdict {
  if (passed) return 'passed';
  return code === 'chiSquare' && fit.chiSquare < fit.dof ? 'cautious' : 'failed';
}

export const chiSquareWords = ({ chiSquare, dof }: FitReport): string =>
  `Chi-square ${formatNumber(chiSquare, 4)} for ${numberAt(dof, 3)} degrees of freedom.`;

/** Empty where every centre counts in full. */
export function downWeightedWords({ downWeighted }: FitReport): string {
  if (downWeighted === 0) return '';
  return `${formatCount(downWeighted)} ${
    downWeighted === 1
      ? 'centre lies so far off that it counts'
      : 'centres lie so far off that they count'
  } for less than half.`;
}

/** The Monte Carlo check of the exit velocity, in a sentence. */
export const monteCarloWords = (check: MonteCarloReport, speedUnit: string): string =>
  `Monte Carlo, ${formatCount(check.trials)} trials: ${formatQuantity(check, 'speed', speedUnit)}, interval ${formatInterval(check.interval, check.u, 'speed', speedUnit)}; ${
    check.agrees
      ? 'agrees with the budget.'
      : 'does not agree with the budget, so its interval is the one stated.'
  }`;
