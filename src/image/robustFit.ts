import { backSubstitute, triangulate } from '../core/linalg';
import { DEVIATION_OVER_MEDIAN } from '../core/statistics';
import { medianInPlace } from './median';

/** Residuals of this many deviations and more do not count (Tukey's biweight, 95 % efficient on normal noise). */
const CUT = 4.685;

/** Gauss-Newton on n residuals and p parameters that shrugs off outliers; keeps its own memory. */
export interface RobustFit {
  /** Observed minus model, and the model's derivatives, p numbers a residual: to be filled before each call. */
  readonly residual: Float64Array;
  readonly derivatives: Float64Array;
  /** Change of the parameters; null where they are not determined. */
  step(): Float64Array | null;
  /** Robust standard deviation of the residuals. */
  deviation(): number;
  /** Covariance, p x p, and the residuals' robust standard deviation; null where it is not determined. */
  covariance(): { readonly matrix: Float64Array; readonly deviation: number } | null;
}

/**
 * `leastDeviation`: what the residuals' scatter is never below. `group`: residuals of the same number (below
 * `groups`) may hang together and count as one piece of evidence.
 */
export function createRobustFit(
  p: number,
  leastDeviation: number,
  group: ArrayLike<number>,
  groups: number,
): RobustFit {
  const n = group.length;
  const residual = new Float64Array(n);
  const derivatives = new Float64Array(n * p);
  const scratch = new Float64Array(n);
  const normal = new Float64Array(p * p);
  const gradient = new Float64Array(p);
  const change = new Float64Array(p);

  const deviationNow = (): number => {
    for (let i = 0; i < n; i++) scratch[i] = Math.abs(residual[i] as number);
    return Math.max(leastDeviation, DEVIATION_OVER_MEDIAN * medianInPlace(scratch, n));
  };
  /** Sums d w d' and d w r, w from the squared residual in cuts. */
  const gather = (cut: number, weigh: (u2: number) => number): void => {
    normal.fill(0);
    gradient.fill(0);
    for (let i = 0; i < n; i++) {
      const r = residual[i] as number;
      const u2 = (r / cut) ** 2;
      if (u2 >= 1) continue;
      const w = weigh(u2);
      const at = i * p;
      for (let j = 0; j < p; j++) {
        const wj = w * (derivatives[at + j] as number);
        gradient[j] = (gradient[j] as number) + wj * r;
        for (let k = 0; k <= j; k++) {
          const q = j * p + k;
          normal[q] = (normal[q] as number) + wj * (derivatives[at + k] as number);
        }
      }
    }
    for (let j = 0; j < p; j++) {
      for (let k = j + 1; k < p; k++) normal[j * p + k] = normal[k * p + j] as number;
    }
  };

  return {
    residual,
    derivatives,
    deviation: deviationNow,
    step() {
      gather(CUT * deviationNow(), (u2) => (1 - u2) ** 2);
      triangulate(normal, p, p, gradient);
      return backSubstitute(normal, p, p, gradient, change) ? change : null;
    },
    /** Huber, Robust Statistics (1981), 7.6, from memory; with the scores summed over each group. */
    covariance() {
      const deviation = deviationNow();
      const cut = CUT * deviation;
      const scores = new Float64Array(groups * p);
      const alone = new Float64Array(p * p);
      for (let i = 0; i < n; i++) {
        const r = residual[i] as number;
        const u2 = (r / cut) ** 2;
        if (u2 >= 1) continue;
        const psi = r * (1 - u2) ** 2;
        const at = (group[i] as number) * p;
        for (let j = 0; j < p; j++) {
          const share = psi * (derivatives[i * p + j] as number);
          scores[at + j] = (scores[at + j] as number) + share;
          for (let k = 0; k < p; k++) {
            const q = j * p + k;
            alone[q] = (alone[q] as number) + share * psi * (derivatives[i * p + k] as number);
          }
        }
      }
      gather(cut, (u2) => (1 - u2) * (1 - 5 * u2));
      const inverse = inverseOf(normal, p);
      if (inverse === null || groups <= p) return null;
      const together = new Float64Array(p * p);
      const factor = groups / (groups - p);
      for (let at = 0; at < scores.length; at += p) {
        for (let j = 0; j < p; j++) {
          for (let k = 0; k < p; k++) {
            const q = j * p + k;
            const product = (scores[at + j] as number) * (scores[at + k] as number);
            together[q] = (together[q] as number) + factor * product;
          }
        }
      }
      const single = sandwich(inverse, alone, p);
      const matrix = sandwich(inverse, together, p);
      // Few groups tell their own scatter badly: never less than what single residuals say.
      const grow = Array.from({ length: p }, (_, j) => {
        const ratio = (single[j * p + j] as number) / (matrix[j * p + j] as number);
        return Math.sqrt(Math.max(1, ratio));
      });
      for (let j = 0; j < p; j++) {
        for (let k = 0; k < p; k++) {
          const q = j * p + k;
          matrix[q] = (matrix[q] as number) * (grow[j] as number) * (grow[k] as number);
        }
      }
      return { matrix, deviation };
    },
  };
}

/** Inverse of a symmetric matrix; null where it has none. */
function inverseOf(matrix: Float64Array, n: number): Float64Array | null {
  const inverse = new Float64Array(n * n);
  const column = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    const copy = Float64Array.from(matrix);
    const unit = new Float64Array(n);
    unit[j] = 1;
    triangulate(copy, n, n, unit);
    if (!backSubstitute(copy, n, n, unit, column)) return null;
    inverse.set(column, j * n);
  }
  return inverse;
}

/** A M A for symmetric A. */
function sandwich(a: Float64Array, m: Float64Array, n: number): Float64Array {
  const product = (left: Float64Array, right: Float64Array): Float64Array => {
    const out = new Float64Array(n * n);
    for (let r = 0; r < n; r++) {
      for (let c = 0; c < n; c++) {
        let sum = 0;
        for (let k = 0; k < n; k++) {
          sum += (left[r * n + k] as number) * (right[k * n + c] as number);
        }
        out[r * n + c] = sum;
      }
    }
    return out;
  };
  return product(product(a, m), a);
}
