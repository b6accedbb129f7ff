import { backSubstitute, triangulate } from '../core/linalg';
import { PARAMETERS } from './discModel';
import type { DiscPixels } from './discPixels';
import { RAYS } from './outline';

/** Arc whose errors count as one, px: a block of the common codecs; but at least 12 arcs make the outline. */
const COMMON_ARC = 16;
const MOST_SECTORS_AN_ARC = RAYS / 12;

/** Normal equations of one round of a fit, all parameters. */
export interface Equations {
  readonly normal: Float64Array;
  readonly rhs: Float64Array;
  /** Each sector's part of the right-hand side. */
  readonly scores: Float64Array;
}

/** Normal equations of the used pixels: weights over variances, gradients `PARAMETERS` a pixel. */
export function gatherEquations(
  pixels: DiscPixels,
  residuals: Float64Array,
  weights: Float64Array,
  gradients: Float64Array,
): Equations {
  const normal = new Float64Array(PARAMETERS * PARAMETERS);
  const rhs = new Float64Array(PARAMETERS);
  const scores = new Float64Array(RAYS * PARAMETERS);
  // Gradients times the root of their weight, four pixels side by side: most of a fit's time is spent
  // below, and four at a time touch the matrix a quarter as often.
  const four = new Float64Array(4 * PARAMETERS);
  let filled = 0;
  for (let i = 0; i < pixels.count; i++) {
    const w = (weights[i] as number) / (pixels.variance[i] as number);
    if (w === 0 || pixels.used[i] === 0) continue;
    const root = Math.sqrt(w);
    const wr = w * (residuals[i] as number);
    const at = i * PARAMETERS;
    const base = (pixels.sector[i] as number) * PARAMETERS;
    for (let j = 0; j < PARAMETERS; j++) {
      const g = gradients[at + j] as number;
      scores[base + j] = (scores[base + j] as number) + wr * g;
      four[4 * j + filled] = root * g;
    }
    filled++;
    if (filled === 4) {
      addFour(normal, four);
      filled = 0;
    }
  }
  if (filled > 0) {
    for (let j = 0; j < PARAMETERS; j++) four.fill(0, 4 * j + filled, 4 * j + 4);
    addFour(normal, four);
  }
  for (let r = 0; r < PARAMETERS; r++) {
    for (let s = 0; s < RAYS; s++)
      rhs[r] = (rhs[r] as number) + (scores[s * PARAMETERS + r] as number);
    for (let c = 0; c < r; c++) normal[c * PARAMETERS + r] = normal[r * PARAMETERS + c] as number;
  }
  return { normal, rhs, scores };
}

/** Adds the lower triangle of the outer products of four gradients. */
function addFour(normal: Float64Array, four: Float64Array): void {
  for (let j = 0; j < PARAMETERS; j++) {
    const a = four[4 * j] as number;
    const b = four[4 * j + 1] as number;
    const c = four[4 * j + 2] as number;
    const d = four[4 * j + 3] as number;
    const row = j * PARAMETERS;
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

/** Covariance of x and y, px^2, row by row. */
export type Covariance = readonly [xx: number, xy: number, yx: number, yy: number];

/**
 * Covariance of middle and radius: of the noise model scaled to the residuals, times how much more the
 * sectors' scores scatter than independent pixels' would (cluster-robust, one factor for both axes).
 */
export function covarianceOf(
  inverse: Float64Array,
  scores: Float64Array,
  scale2: number,
  radius: number,
): { readonly covariance: Covariance; readonly radiusU: number } {
  // Sectors are taken together until an arc is as long as what compression changes as one.
  const perArc = Math.min(
    MOST_SECTORS_AN_ARC,
    Math.ceil((COMMON_ARC * RAYS) / (2 * Math.PI * radius)),
  );
  let inflation = 0;
  const spread = [0, 0];
  for (let first = 0; first < RAYS; first += perArc) {
    for (let axis = 0; axis < 2; axis++) {
      let influence = 0;
      for (let i = first * PARAMETERS; i < Math.min(RAYS, first + perArc) * PARAMETERS; i++) {
        influence +=
          (inverse[axis * PARAMETERS + (i % PARAMETERS)] as number) * (scores[i] as number);
      }
      spread[axis] = (spread[axis] as number) + influence * influence;
    }
  }
  for (let axis = 0; axis < 2; axis++) {
    const expected = (inverse[axis * PARAMETERS + axis] as number) * scale2;
    inflation += (spread[axis] as number) / expected / 2;
  }
  const factor = scale2 * Math.max(1, inflation);
  const at = (r: number, c: number) => factor * (inverse[r * PARAMETERS + c] as number);
  return {
    covariance: [at(0, 0), at(0, 1), at(1, 0), at(1, 1)],
    radiusU: Math.sqrt(at(2, 2)),
  };
}

/** Solves the equations into `out`; false where they have no solution. */
export function solve(normal: Float64Array, rhs: Float64Array, out: Float64Array): boolean {
  const columns = normal.slice();
  const y = rhs.slice();
  triangulate(columns, PARAMETERS, PARAMETERS, y);
  return backSubstitute(columns, PARAMETERS, PARAMETERS, y, out) && out.every(Number.isFinite);
}

/** Inverse of the normal matrix; null where it has none. */
export function inverseOf(normal: Float64Array): Float64Array | null {
  const inverse = new Float64Array(PARAMETERS * PARAMETERS);
  const unit = new Float64Array(PARAMETERS);
  const column = new Float64Array(PARAMETERS);
  for (let j = 0; j < PARAMETERS; j++) {
    unit.fill(0);
    unit[j] = 1;
    if (!solve(normal, unit, column)) return null;
    inverse.set(column, j * PARAMETERS);
  }
  return inverse;
}
