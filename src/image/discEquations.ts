import type { DiscPixels } from './discPixels';
import { RAYS } from './outline';

/** Waves around the outline by which errors that neighbouring pixels share are looked for: the longest there are. */
const WAVES = 3;
/**
 * Waves of both axes that scatter as one independent value: both axes look at the same pixels, and so do
 * waves. Measured, on films without compression.
 */
export const WAVES_PER_DOF = 2.5;
const CELLS = 2 * WAVES;
const WAVE = Float64Array.from({ length: CELLS * RAYS }, (_, i) => {
  const cell = Math.floor(i / RAYS);
  const angle = ((1 + (cell >> 1)) * 2 * Math.PI * (i % RAYS)) / RAYS;
  return cell % 2 === 0 ? Math.cos(angle) : Math.sin(angle);
});

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
export interface WaveScatter {
  /**
   * What the residuals move the middle by when they count in waves around the outline, px: x with one
   * wave's cosine and sine, with two waves', ..., then y.
   */
  readonly pull: Float32Array;
  /** Mean square that independent noise of the stated variance would give each of them, px^2; together the variance of x, then that of y. */
  readonly expected: Float32Array;
  /** Mean square of what single pixels move the middle by, over that expected of independent noise: x and y together. */
  readonly white: number;
}

/**
 * What the residuals say of errors that neighbouring pixels share. The fit leaves no residual that would
 * move its middle; so the sums over the outline that come next to that are looked at, those in which the
 * residuals count by a wave or a few around the outline: an error shared over a transform block or more moves them
 * as it moves the middle, while it cancels in sums of single pixels or of short arcs. With the estimate's
 * own share taken out (residuals follow the fit), so that the ratio is one on average for independent
 * noise of the stated variance.
 */
export function waveScatter(
  pixels: DiscPixels,
  residuals: Float64Array,
  precision: Float64Array,
  gradients: Float64Array,
  inverse: Float64Array,
  count: number,
): WaveScatter {
  // Per axis and sector: sum of w r (g . h) and of w g (g . h), h the row of the inverse.
  const moved = new Float64Array(2 * RAYS);
  const leverage = new Float64Array(2 * RAYS * count);
  // What a pixel moves each parameter by: the inverse times its gradient.
  const moves = new Float64Array(count);
  let squares = 0;
  let independent = 0;
  for (let i = 0; i < pixels.count; i++) {
    const w = precision[i] as number;
    if (w === 0) continue;
    const at = i * count;
    // Share of the pixel's variance that its residual keeps: the fit follows the rest.
    let follows = 0;
    for (let r = 0; r < count; r++) {
      let sum = 0;
      for (let c = 0; c < count; c++) {
        sum += (inverse[r * count + c] as number) * (gradients[at + c] as number);
      }
      moves[r] = sum;
      follows += sum * (gradients[at + r] as number);
    }
    const left = Math.max(0, 1 - w * follows);
    for (let axis = 0; axis < 2; axis++) {
      const along = moves[axis] as number;
      squares += (w * (residuals[i] as number) * along) ** 2;
      independent += w * along * along * left;
      const cell = axis * RAYS + (pixels.sector[i] as number);
      moved[cell] = (moved[cell] as number) + w * (residuals[i] as number) * along;
      const base = cell * count;
      for (let j = 0; j < count; j++) {
        leverage[base + j] =
          (leverage[base + j] as number) + w * along * (gradients[at + j] as number);
      }
    }
  }
  const pull = new Float32Array(2 * CELLS);
  const expected = new Float32Array(2 * CELLS);
  const own = new Float64Array(count);
  for (let axis = 0; axis < 2; axis++) {
    let sum = 0;
    for (let cell = 0; cell < CELLS; cell++) {
      own.fill(0);
      let moves = 0;
      let variance = 0;
      for (let s = 0; s < RAYS; s++) {
        const c = WAVE[cell * RAYS + s] as number;
        const base = (axis * RAYS + s) * count;
        moves += c * (moved[axis * RAYS + s] as number);
        for (let j = 0; j < count; j++) {
          const y = leverage[base + j] as number;
          own[j] = (own[j] as number) + c * y;
          variance += c * c * y * (inverse[axis * count + j] as number);
        }
      }
      for (let r = 0; r < count; r++) {
        for (let c = 0; c < count; c++) {
          variance -= (own[r] as number) * (inverse[r * count + c] as number) * (own[c] as number);
        }
      }
      pull[axis * CELLS + cell] = moves;
      expected[axis * CELLS + cell] = Math.max(0, variance);
      sum += Math.max(0, variance);
    }
    if (!(sum > 0)) continue;
    const share = (inverse[axis * count + axis] as number) / sum;
    for (let k = axis * CELLS; k < (axis + 1) * CELLS; k++) {
      pull[k] = Math.sqrt(share) * (pull[k] as number);
      expected[k] = share * (expected[k] as number);
    }
  }
  return { pull, expected, white: independent > 0 ? squares / independent : 1 };
}

/** Covariance of x and y, px^2, row by row. */
export type Covariance = readonly [xx: number, xy: number, yx: number, yy: number];
