import type { Advice } from '../shot/result';
import { english } from '../text/en';
import { sourceWords } from '../text/names';
import { showPercent } from '../text/show';
import { t } from '../text/text';

const KNOWN: Readonly<Record<string, string>> = english.report.advice.remedy;

/** What would make an input better known, and how much smaller the uncertainty could become. */
export function adviceWords({ source, share }: Pick<Advice, 'source' | 'share'>): string {
  const remedy = Object.hasOwn(KNOWN, source)
    ? t(`report.advice.remedy.${source as keyof typeof english.report.advice.remedy}`)
    : t('report.advice.unknown', { source: sourceWords(source) });
  return t('report.advice.line', { remedy, smaller: wholePercent(1 - Math.sqrt(1 - share)) });
}

/** '12 %' */
export const wholePercent = (share: number): string => showPercent(Math.round(100 * share) / 100);
