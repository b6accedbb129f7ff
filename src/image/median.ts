/**
 * For hot paths: median of the first `count` values, which are reordered (Hoare's selection) and need no
 * copy; an even count averages the middle two.
 */
export function medianInPlace(values: Float64Array, count: number): number {
  const upper = count >> 1;
  const high = select(values, count, upper);
  if (count % 2 === 1) return high;
  // Everything left of `upper` is now no larger than it.
  let low = values[0] as number;
  for (let i = 1; i < upper; i++) low = Math.max(low, values[i] as number);
  return (low + high) / 2;
}

function select(values: Float64Array, count: number, rank: number): number {
  let left = 0;
  let right = count - 1;
  while (left < right) {
    const pivot = values[(left + right) >> 1] as number;
    let i = left;
    let j = right;
    while (i <= j) {
      while ((values[i] as number) < pivot) i++;
      while ((values[j] as number) > pivot) j--;
      if (i <= j) {
        const kept = values[i] as number;
        values[i] = values[j] as number;
        values[j] = kept;
        i++;
        j--;
      }
    }
    if (rank <= j) right = j;
    else if (rank >= i) left = i;
    else break;
  }
  return values[rank] as number;
}
