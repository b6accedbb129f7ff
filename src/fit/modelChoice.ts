/**
 * Akaike's criterion for a fit with known covariance, chi-square + 2p; `scale` divides chi-square where the
 * stated covariance is too small, and the small-sample term (Hurvich & Tsai 1989) is then added.
 * Infinite where the sample is too small for it.
 */
export function akaike(chiSquare: number, p: number, n: number, scale: number): number {
  if (scale <= 1) return chiSquare + 2 * p;
  const spare = n - p - 1;
  return spare > 0
    ? chiSquare / scale + 2 * p + (2 * p * (p + 1)) / spare
    : Number.POSITIVE_INFINITY;
}

/** Ratios beyond this say no more than that a model is ruled out. */
const MOST_RATIO = 1e6;

/** How many times better a model at the `least` criterion is supported than one at `criterion`; null: beyond 1e6. */
export function evidenceRatio(criterion: number, least: number): number | null {
  const ratio = Math.exp(Math.max(0, criterion - least) / 2);
  return ratio <= MOST_RATIO ? ratio : null;
}

/** Akaike weights of models with the given criteria: shares that add up to 1. */
export function akaikeWeights(criteria: readonly number[]): number[] {
  const best = Math.min(...criteria);
  const raw = criteria.map((value) => (value === best ? 1 : Math.exp((best - value) / 2)));
  const sum = raw.reduce((a, b) => a + b, 0);
  return raw.map((value) => value / sum);
}

/** One criterion for several variants of a model, their shares beforehand in theirs: that of the likelihood they have together. */
export function together(criteria: readonly number[]): number {
  const least = Math.min(...criteria);
  if (!Number.isFinite(least)) return least;
  return least - 2 * Math.log(criteria.reduce((sum, one) => sum + Math.exp((least - one) / 2), 0));
}
