import { english } from '../text/en';
import { isIn } from '../text/names';
import { showNumberAt } from '../text/show';
import { t } from '../text/text';

/** How well a model is supported beside the best one: 'best', '4 times less supported', 'ruled out'. */
export function supportWords(evidenceRatio: number | null): string {
  if (evidenceRatio === null) return t('report.tables.models.ruledOut');
  if (evidenceRatio <= 1) return t('report.tables.models.best');
  const times = showNumberAt(evidenceRatio, evidenceRatio < 10 ? 2 : 3);
  return times === '1'
    ? t('report.tables.models.asGood')
    : t('report.tables.models.lessSupported', { times });
}

/** A fitted parameter by its name in a result. */
export const parameterWords = (name: string): string =>
  isIn(english.report.tables.parameters.name, name)
    ? t(`report.tables.parameters.name.${name}`)
    : name;
