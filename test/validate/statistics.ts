import { chiSquareQuantile } from '../../src/core/statistics';

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
  const ways = logBinomials(n);
  const low = hits === 0 ? 0 : halve((p) => 1 - atMost(hits - 1, ways, p) > tail);
  const high = hits === n ? 1 : halve((p) => atMost(hits, ways, p) < tail);
  return [low, high];
}

/** Exact limits for the median of what `values` are drawn from: the order statistics that hold it so often (David and Nagaraja, Order Statistics, 3rd ed. 2003, 7.1). */
export function medianLimits(
  values: readonly number[],
  confidence = 0.95,
): readonly [low: number, high: number] {
  const n = values.length;
  const sorted = Float64Array.from(values).sort();
  const ways = logBinomials(n);
  let rank = 0;
  while (rank < n / 2 - 1 && atMost(rank, ways, 0.5) <= (1 - confidence) / 2) rank++;
  return [
    sorted[rank - 1] ?? Number.NEGATIVE_INFINITY,
    sorted[n - rank] ?? Number.POSITIVE_INFINITY,
  ];
}

/** Limits for the root mean square of what `n` normal values of mean 0 are drawn from, by chi-square. */
export function rmsLimits(
  value: number,
  n: number,
  confidence = 0.95,
): readonly [low: number, high: number] {
  const tail = (1 - confidence) / 2;
  const at = (probability: number) => value * Math.sqrt(n / chiSquareQuantile(probability, n));
  return [at(1 - tail), at(tail)];
}

/** Logarithms of the binomial coefficients n over 0, 1, ..., n. */
function logBinomials(n: number): Float64Array {
  const ways = new Float64Array(n + 1);
  for (let k = 1; k <= n; k++) ways[k] = (ways[k - 1] as number) + Math.log((n - k + 1) / k);
  return ways;
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

/** Terms smaller than this, as logarithms, do not count. */
const NEGLIGIBLE = -45;

/** Probability of at most `hits` of n at a share p within (0, 1). */
function atMost(hits: number, ways: Float64Array, p: number): number {
  const none = (ways.length - 1) * Math.log1p(-p);
  const odds = Math.log(p) - Math.log1p(-p);
  let sum = 0;
  for (let k = 0; k <= hits; k++) {
    const term = (ways[k] as number) + none + k * odds;
    if (term > NEGLIGIBLE) sum += Math.exp(term);
  }
  return sum;
}

export const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length));

export const average = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
