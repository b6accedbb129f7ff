import { ADVICE } from '../core/advice';
import type { Advice, BudgetEntry } from '../shot/result';

const REMEDIES: ReadonlyMap<string, string> = new Map(Object.entries(ADVICE.remedy));

const MOST_LINES = 3;
/** An input with a smaller share of the variance is not worth the work: without it u falls by less than 5 %. */
const SMALLEST_SHARE = 0.1;

/**
 * What would help a result most: the inputs with the largest shares of its variance, largest first. Entries of one
 * name are one input, their contributions added in quadrature.
 */
export function adviceOf(entries: readonly BudgetEntry[]): Advice[] {
  const variances = new Map<string, number>();
  let total = 0;
  for (const { source, contribution } of entries) {
    variances.set(source, (variances.get(source) ?? 0) + contribution ** 2);
    total += contribution ** 2;
  }
  return [...variances]
    .map(([source, variance]) => ({ source, share: Math.min(1, variance / total) }))
    .filter(({ share }) => share >= SMALLEST_SHARE)
    .sort((a, b) => b.share - a.share)
    .slice(0, MOST_LINES)
    .map(({ source, share }) => ({ source, share, message: sentence(source, share) }));
}

function sentence(source: string, share: number): string {
  const remedy = REMEDIES.get(source) ?? ADVICE.unknown.replace('{source}', source);
  const smaller = Math.round(100 * (1 - Math.sqrt(1 - share)));
  return ADVICE.line.replace('{remedy}', remedy).replace('{smaller}', `${smaller} %`);
}
