import type { FitCheck, FitReport, MonteCarloReport } from '../shot/result';
import { reasonWords } from '../text/reasonWords';
import { showCount, showInterval, showNumber, showNumberAt, showQuantity } from '../text/show';
import { t } from '../text/text';

/** What a check says of the fit. Centres that scatter less than stated only mean that the stated uncertainty is generous. */
export type Verdict = 'passed' | 'cautious' | 'failed';

export function verdictOn({ code, passed }: FitCheck, fit: FitReport): Verdict {
  if (passed) return 'passed';
  return code === 'chiSquare' && fit.chiSquare < fit.dof ? 'cautious' : 'failed';
}

/** A check in words. `remedy`: null where it passed, or where there is nothing to do. */
export function checkWords(check: FitCheck): {
  readonly message: string;
  readonly remedy: string | null;
} {
  const { code, message, remedy, passed, values } = check;
  const words = reasonWords({
    ...{ code, message },
    ...(values === undefined ? {} : { values }),
    ...(remedy === null ? {} : { remedy }),
  });
  const silent = passed || remedy === null;
  return { message: words.message, remedy: silent ? null : (words.remedy ?? null) };
}

export const chiSquareWords = ({ chiSquare, dof }: FitReport): string =>
  t('report.fit.chiSquare', { chiSquare: showNumber(chiSquare, 4), dof: showNumberAt(dof, 3) });

/** Empty where every centre counts in full. */
export const downWeightedWords = ({ downWeighted }: FitReport): string =>
  downWeighted === 0 ? '' : t('report.fit.downWeighted', { count: downWeighted });

/** The Monte Carlo check of the exit velocity, in a sentence. */
export const monteCarloWords = (check: MonteCarloReport, speedUnit: string): string =>
  t('report.fit.monteCarlo', {
    trials: showCount(check.trials),
    value: showQuantity(check, 'speed', speedUnit),
    interval: showInterval(check.interval, check.u, 'speed', speedUnit),
    agrees: check.agrees ? 'yes' : 'no',
  });
