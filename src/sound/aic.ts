/** Of few samples the variance may by chance be next to nothing. */
const FEWEST = 10;

/**
 * Akaike's criterion of a change of variance after sample k of n, up to a constant:
 * k ln var(x[0..k)) + (n - k - 1) ln var(x[k..n)) (Maeda, Zisin 38 (1985) 365). Smallest at the likeliest change. Infinite
 * where a side has too few samples to have a variance of its own; `floor` is the least variance believed.
 */
function changeCriterion(samples: ArrayLike<number>, floor: number): Float64Array {
  const n = samples.length;
  const out = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
  const sums = new Float64Array(n + 1);
  const squares = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    const x = samples[i] as number;
    sums[i + 1] = (sums[i] as number) + x;
    squares[i + 1] = (squares[i] as number) + x * x;
  }
  const variance = (from: number, to: number): number => {
    const count = to - from;
    const mean = ((sums[to] as number) - (sums[from] as number)) / count;
    const square = ((squares[to] as number) - (squares[from] as number)) / count;
    return Math.max(floor, square - mean * mean);
  };
  for (let k = FEWEST; k <= n - FEWEST; k++) {
    out[k] = k * Math.log(variance(0, k)) + (n - k - 1) * Math.log(variance(k, n));
  }
  return out;
}

/** Number of samples before the likeliest change of variance; null where there are too few samples. */
export function likeliestChange(samples: ArrayLike<number>, floor: number): number | null {
  const criterion = changeCriterion(samples, floor);
  let best: number | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const [k, value] of criterion.entries()) {
    if (value < least) {
      least = value;
      best = k;
    }
  }
  return best;
}
