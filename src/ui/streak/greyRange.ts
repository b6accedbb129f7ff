import type { Contrast } from '../film/picture';

/** Half the window about the ordinary grey, as a share of the greys' whole range. */
const WINDOW_SHARE = 0.3;

interface RowGreys extends Contrast {
  readonly ordinary: number;
}

/** Of each row once: rows are never changed. */
const known = new WeakMap<Float32Array, RowGreys | null>();

/** Null: the row lies outside the film (-1) altogether. */
function greysOf(row: Float32Array): RowGreys | null {
  const before = known.get(row);
  if (before !== undefined) return before;
  const inside = row.filter((grey) => grey >= 0).sort();
  const greys =
    inside.length === 0
      ? null
      : {
          low: inside[0] as number,
          ordinary: inside[inside.length >> 1] as number,
          high: inside[inside.length - 1] as number,
        };
  known.set(row, greys);
  return greys;
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
    const greys = greysOf(row);
    if (greys === null) continue;
    low = Math.min(low, greys.low);
    high = Math.max(high, greys.high);
    ordinary ??= greys.ordinary;
  }
  if (ordinary === null) return { low: 0, high: 255 };
  const half = WINDOW_SHARE * (high - low);
  return { low: Math.max(low, ordinary - half), high: Math.min(high, ordinary + half) };
}
