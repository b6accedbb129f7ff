import type { Contrast } from '../film/picture';

/** Half the window about the ordinary grey, as a share of the greys' whole range. */
const WINDOW_SHARE = 0.3;

/** Of each row once: rows are never changed. */
const known = new WeakMap<Float32Array, Contrast | null>();

/** Least and largest grey of a row; null: it lies outside the film (-1) altogether. */
function extremesOf(row: Float32Array): Contrast | null {
  const before = known.get(row);
  if (before !== undefined) return before;
  let low = Infinity;
  let high = -Infinity;
  for (const grey of row) {
    if (grey < 0) continue;
    if (grey < low) low = grey;
    if (grey > high) high = grey;
  }
  const extremes = low > high ? null : { low, high };
  known.set(row, extremes);
  return extremes;
}

/** The middle one of a row's greys within the film. */
function middleOf(row: Float32Array): number {
  const inside = row.filter((grey) => grey >= 0).sort();
  return inside[inside.length >> 1] as number;
}

/**
 * Greys to show as black and as white: a window about the background's ordinary grey (the middle one of the first
 * row), so that a bright muzzle or ball does not drown faint fragments. 0 to 255 where there are no rows.
 */
export function greyRange(rows: Iterable<Float32Array>): Contrast {
  let low = Infinity;
  let high = -Infinity;
  let ordinary: number | null = null;
  for (const row of rows) {
    const extremes = extremesOf(row);
    if (extremes === null) continue;
    low = Math.min(low, extremes.low);
    high = Math.max(high, extremes.high);
    ordinary ??= middleOf(row);
  }
  if (ordinary === null) return { low: 0, high: 255 };
  const half = WINDOW_SHARE * (high - low);
  return { low: Math.max(low, ordinary - half), high: Math.min(high, ordinary + half) };
}
