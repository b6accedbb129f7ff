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

/** Akaike weights of models with the given criteria: shares that add up to 1. */
export function akaikeWeights(criteria: readonly number[]): number[] {
  const best = Math.min(...criteria);
  const raw = criteria.map((value) => (value === best ? 1 : Math.exp((best - value) / 2)));
  const sum = raw.reduce((a, b) => a + b, 0);
  return raw.map((value) => value / sum);
}
