import type { Contrast } from '../film/picture';

/** Of each row once: rows are never changed. */
const ranges = new WeakMap<Float32Array, Contrast>();

function rangeOf(row: Float32Array): Contrast {
  const known = ranges.get(row);
  if (known !== undefined) return known;
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < row.length; i++) {
    const grey = row[i] as number;
    if (grey < 0) continue;
    if (grey < low) low = grey;
    if (grey > high) high = grey;
  }
  const range = { low, high };
  ranges.set(row, range);
  return range;
}

/** Darkest and brightest grey of all rows; places outside the film (-1) left out. 0 to 255 where there are none. */
export function greyRange(rows: Iterable<Float32Array>): Contrast {
  let low = Infinity;
  let high = -Infinity;
  for (const row of rows) {
    const range = rangeOf(row);
    low = Math.min(low, range.low);
    high = Math.max(high, range.high);
  }
  return low > high ? { low: 0, high: 255 } : { low, high };
}
