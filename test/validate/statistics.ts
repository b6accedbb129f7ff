/**
 * Exact two-sided binomial limits for `hits` of `n` (Clopper and Pearson, Biometrika 26 (1934) 404): the
 * shares at which so many hits or more, and so many or fewer, have half of 1 - `confidence`.
 */
export function binomialLimits(
  hits: number,
  n: number,
  confidence = 0.95,
): readonly [low: number, high: number] {
  const tail = (1 - confidence) / 2;
  const low = hits === 0 ? 0 : halve((p) => 1 - atMost(hits - 1, n, p) > tail);
  const high = hits === n ? 1 : halve((p) => atMost(hits, n, p) < tail);
  return [low, high];
}

/** Where a condition that holds from some share upwards begins to. */
function halve(holds: (share: number) => boolean): number {
  let low = 0;
  let high = 1;
  for (let k = 0; k < 50; k++) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Probability of at most `hits` of `n`, summed from the largest term outwards in logarithms. */
function atMost(hits: number, n: number, p: number): number {
  if (p <= 0) return 1;
  if (p >= 1) return hits >= n ? 1 : 0;
  const odds = Math.log(p) - Math.log1p(-p);
  let term = n * Math.log1p(-p);
  let sum = Math.exp(term);
  for (let k = 1; k <= hits; k++) {
    term += Math.log((n - k + 1) / k) + odds;
    sum += Math.exp(term);
  }
  return Math.min(1, sum);
}

export const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length));

export const average = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
