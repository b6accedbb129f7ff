import { determinant, Matrix, SingularValueDecomposition } from 'ml-matrix';
import { ExitframeError } from './reason';

/** A dense matrix as rows. */
export type Rows = readonly (readonly number[])[];

const matrix = (rows: Rows): Matrix => new Matrix(rows.map((row) => [...row]));

/** Solution of least norm of A x = b in the least-squares sense (singular value decomposition). */
export function leastSquares(a: Rows, b: readonly number[]): number[] {
  const svd = new SingularValueDecomposition(matrix(a), { autoTranspose: true });
  return svd.solve(Matrix.columnVector([...b])).to1DArray();
}

/** Singular values, largest first. */
export function singularValues(a: Rows): number[] {
  const svd = new SingularValueDecomposition(matrix(a), {
    computeLeftSingularVectors: false,
    computeRightSingularVectors: false,
    autoTranspose: true,
  });
  return [...svd.diagonal];
}

/**
 * Householder triangulation in place. `columns` holds an n x p matrix column after column (n >= p), `rhs` n numbers.
 * Afterwards the upper triangle holds R, `rhs` holds Q'b, whose part beyond p is the residual seen in Q.
 * Here rather than in a library because the fits run it hundreds of thousands of times and it allocates nothing.
 */
export function triangulate(columns: Float64Array, n: number, p: number, rhs: Float64Array): void {
  for (let j = 0; j < p; j++) {
    const at = j * n;
    let squares = 0;
    for (let i = j; i < n; i++) squares += (columns[at + i] as number) ** 2;
    const norm = Math.sqrt(squares);
    if (norm === 0) continue;
    const head = columns[at + j] as number;
    const alpha = head > 0 ? -norm : norm;
    // v = x - alpha e1, kept in the column below the diagonal with its first entry apart.
    const first = head - alpha;
    const scale = alpha * first; // -v'v / 2
    for (let c = j + 1; c <= p; c++) {
      const target = c === p ? rhs : columns;
      const base = c === p ? 0 : c * n;
      let dot = first * (target[base + j] as number);
      for (let i = j + 1; i < n; i++) {
        dot += (columns[at + i] as number) * (target[base + i] as number);
      }
      const factor = dot / scale;
      target[base + j] = (target[base + j] as number) + factor * first;
      for (let i = j + 1; i < n; i++) {
        target[base + i] = (target[base + i] as number) + factor * (columns[at + i] as number);
      }
    }
    columns[at + j] = alpha;
  }
}

/**
 * Solves R x = y for the R left by `triangulate`; false where R has a zero on its diagonal.
 * `n` is the length of a column of `columns`.
 */
export function backSubstitute(
  columns: Float64Array,
  n: number,
  p: number,
  y: Float64Array,
  x: Float64Array,
): boolean {
  for (let j = p - 1; j >= 0; j--) {
    const pivot = columns[j * n + j] as number;
    if (pivot === 0) return false;
    let sum = y[j] as number;
    for (let c = j + 1; c < p; c++) sum -= (columns[c * n + j] as number) * (x[c] as number);
    x[j] = sum / pivot;
  }
  return true;
}

/** (R'R)^-1, p x p row after row, for the R left by `triangulate`: the covariance of a whitened fit. */
export function inverseGram(columns: Float64Array, n: number, p: number): Float64Array {
  const inverse = new Float64Array(p * p); // R^-1, upper, row after row
  for (let c = 0; c < p; c++) {
    for (let r = c; r >= 0; r--) {
      const pivot = columns[r * n + r] as number;
      if (pivot === 0) throw new ExitframeError('singular', 'The matrix has no inverse.');
      let sum = r === c ? 1 : 0;
      for (let k = r + 1; k <= c; k++) {
        sum -= (columns[k * n + r] as number) * (inverse[k * p + c] as number);
      }
      inverse[r * p + c] = sum / pivot;
    }
  }
  const gram = new Float64Array(p * p);
  for (let r = 0; r < p; r++) {
    for (let c = r; c < p; c++) {
      let sum = 0;
      for (let k = c; k < p; k++) {
        sum += (inverse[r * p + k] as number) * (inverse[c * p + k] as number);
      }
      gram[r * p + c] = sum;
      gram[c * p + r] = sum;
    }
  }
  return gram;
}

/** Logarithm of the determinant of a covariance, count x count row after row: scaled, as its entries differ by orders of magnitude. */
export function logDeterminant(covariance: Float64Array, count: number): number {
  const at = (r: number, c: number) => covariance[r * count + c] as number;
  const places = Array.from({ length: count }, (_, j) => j);
  const scaled = places.map((r) => places.map((c) => at(r, c) / Math.sqrt(at(r, r) * at(c, c))));
  return places.reduce((sum, j) => sum + Math.log(at(j, j)), Math.log(determinant(matrix(scaled))));
}

/** Inverse of a positive definite matrix, count x count row after row, by its Cholesky factor; null where it is none. */
export function definiteInverse(normal: Float64Array, count: number): Float64Array | null {
  // Scaled to a unit diagonal: parameters differ by orders of magnitude.
  const scale = new Float64Array(count);
  for (let j = 0; j < count; j++) {
    const diagonal = normal[j * count + j] as number;
    if (!(diagonal > 0)) return null;
    scale[j] = 1 / Math.sqrt(diagonal);
  }
  const factor = new Float64Array(count * count);
  for (let r = 0; r < count; r++) {
    for (let c = 0; c <= r; c++) {
      let sum = (normal[r * count + c] as number) * (scale[r] as number) * (scale[c] as number);
      for (let k = 0; k < c; k++) {
        sum -= (factor[r * count + k] as number) * (factor[c * count + k] as number);
      }
      if (r === c) {
        if (!(sum > 1e-13)) return null;
        factor[r * count + r] = Math.sqrt(sum);
      } else {
        factor[r * count + c] = sum / (factor[c * count + c] as number);
      }
    }
  }
  // Inverse of the factor, in place below the diagonal of `lower`.
  const lower = new Float64Array(count * count);
  for (let c = 0; c < count; c++) {
    lower[c * count + c] = 1 / (factor[c * count + c] as number);
    for (let r = c + 1; r < count; r++) {
      let sum = 0;
      for (let k = c; k < r; k++) {
        sum -= (factor[r * count + k] as number) * (lower[k * count + c] as number);
      }
      lower[r * count + c] = sum / (factor[r * count + r] as number);
    }
  }
  const inverse = new Float64Array(count * count);
  for (let r = 0; r < count; r++) {
    for (let c = 0; c <= r; c++) {
      let sum = 0;
      for (let k = r; k < count; k++) {
        sum += (lower[k * count + r] as number) * (lower[k * count + c] as number);
      }
      const value = sum * (scale[r] as number) * (scale[c] as number);
      inverse[r * count + c] = value;
      inverse[c * count + r] = value;
    }
  }
  return inverse;
}

/**
 * Solves a symmetric 3 x 3 system, given by its upper triangle row by row; null where the size of its
 * determinant is not above `least`.
 */
export function solveSymmetricThree(
  upper: readonly number[],
  rhs: readonly number[],
  least: number,
): [number, number, number] | null {
  const [a, b, c, d, e, f] = upper as [number, number, number, number, number, number];
  const [x, y, z] = rhs as [number, number, number];
  const A = d * f - e * e;
  const B = c * e - b * f;
  const C = b * e - c * d;
  const det = a * A + b * B + c * C;
  if (!(Math.abs(det) > least)) return null;
  const D = a * f - c * c;
  const E = b * c - a * e;
  const F = a * d - b * b;
  return [
    (A * x + B * y + C * z) / det,
    (B * x + D * y + E * z) / det,
    (C * x + E * y + F * z) / det,
  ];
}
