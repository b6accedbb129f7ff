import type { DiscPixels } from './discPixels';
import { RAYS } from './outline';

/** Arcs the outline is cut into to see whether the errors of neighbouring pixels go together. */
const ARCS = 12;

/** Normal equations of one round of a fit, all parameters. */
export interface Equations {
  readonly normal: Float64Array;
  readonly rhs: Float64Array;
}

/** Normal equations of the used pixels, `count` parameters: `precision` is weight over variance, gradients run pixel by pixel. */
export function gatherEquations(
  pixels: DiscPixels,
  residuals: Float64Array,
  precision: Float64Array,
  gradients: Float64Array,
  count: number,
): Equations {
  const normal = new Float64Array(count * count);
  const rhs = new Float64Array(count);
  // Gradients times the root of their weight, four pixels side by side: most of a fit's time is spent
  // below, and four at a time touch the matrix a quarter as often.
  const four = new Float64Array(4 * count);
  let filled = 0;
  for (let i = 0; i < pixels.count; i++) {
    const w = precision[i] as number;
    if (w === 0) continue;
    const root = Math.sqrt(w);
    const wr = w * (residuals[i] as number);
    const at = i * count;
    for (let j = 0; j < count; j++) {
      const g = gradients[at + j] as number;
      rhs[j] = (rhs[j] as number) + wr * g;
      four[4 * j + filled] = root * g;
    }
    filled++;
    if (filled === 4) {
      addFour(normal, four, count);
      filled = 0;
    }
  }
  if (filled > 0) {
    for (let j = 0; j < count; j++) four.fill(0, 4 * j + filled, 4 * j + 4);
    addFour(normal, four, count);
  }
  for (let r = 0; r < count; r++) {
    for (let c = 0; c < r; c++) normal[c * count + r] = normal[r * count + c] as number;
  }
  return { normal, rhs };
}

/** Adds the lower triangle of the outer products of four gradients. */
function addFour(normal: Float64Array, four: Float64Array, count: number): void {
  for (let j = 0; j < count; j++) {
    const a = four[4 * j] as number;
    const b = four[4 * j + 1] as number;
    const c = four[4 * j + 2] as number;
    const d = four[4 * j + 3] as number;
    const row = j * count;
    for (let k = 0; k <= j; k++) {
      const at = 4 * k;
      normal[row + k] =
        (normal[row + k] as number) +
        a * (four[at] as number) +
        b * (four[at + 1] as number) +
        c * (four[at + 2] as number) +
        d * (four[at + 3] as number);
    }
  }
}

/** How the errors of a fit lie along the outline. */
export interface ArcScatter {
  /** What each arc's residuals move the middle by, px: x of all arcs, then y. They cancel over the outline. */
  readonly pull: Float32Array;
  /** Mean square that independent noise of the stated variance would give each of them, px^2. */
  readonly expected: Float32Array;
}

/**
 * Cluster-robust view of a fit: what the residuals of each arc pull the middle by, and the scatter to be
 * expected of that. With the estimate's own share taken out (each arc's residuals follow the fit), so
 * the ratio is one on average for independent noise of the stated variance.
 */
export function arcScatter(
  pixels: DiscPixels,
  residuals: Float64Array,
  precision: Float64Array,
  gradients: Float64Array,
  inverse: Float64Array,
  count: number,
): ArcScatter {
  const pull = new Float32Array(2 * ARCS);
  const expected = new Float32Array(2 * ARCS);
  // Per axis and arc: sum of w g (g . h), h the row of the inverse.
  const leverage = new Float64Array(2 * ARCS * count);
  for (let i = 0; i < pixels.count; i++) {
    const w = precision[i] as number;
    if (w === 0) continue;
    const at = i * count;
    const arc = Math.floor(((pixels.sector[i] as number) * ARCS) / RAYS);
    for (let axis = 0; axis < 2; axis++) {
      let along = 0;
      for (let j = 0; j < count; j++) {
        along += (inverse[axis * count + j] as number) * (gradients[at + j] as number);
      }
      const cell = axis * ARCS + arc;
      pull[cell] = (pull[cell] as number) + w * (residuals[i] as number) * along;
      const base = cell * count;
      for (let j = 0; j < count; j++) {
        leverage[base + j] =
          (leverage[base + j] as number) + w * along * (gradients[at + j] as number);
      }
    }
  }
  for (let cell = 0; cell < 2 * ARCS; cell++) {
    const row = Math.floor(cell / ARCS) * count;
    const base = cell * count;
    let variance = 0;
    for (let r = 0; r < count; r++) {
      const y = leverage[base + r] as number;
      variance += y * (inverse[row + r] as number);
      for (let c = 0; c < count; c++) {
        variance -= y * (inverse[r * count + c] as number) * (leverage[base + c] as number);
      }
    }
    expected[cell] = Math.max(0, variance);
  }
  return { pull, expected };
}

/** Covariance of x and y, px^2, row by row. */
export type Covariance = readonly [xx: number, xy: number, yx: number, yy: number];
