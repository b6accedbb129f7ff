import { inverseGram, type Rows, singularValues } from '../core/linalg';
import { failure, type Outcome, success } from '../core/reason';

/** Beyond this ratio of singular values, columns scaled alike, double precision leaves no digit of a covariance. */
const WORST_CONDITION = 1e15;

/**
 * Covariance from the R that `triangulate` left in `columns` (column length n), p parameters;
 * or which combination of parameters the data leave open.
 */
export function covarianceFrom(columns: Float64Array, n: number, p: number): Outcome<Float64Array> {
  const scaled = scaledTriangle(columns, n, p);
  if (scaled === null) {
    return failure(
      'parameterWithoutEffect',
      'One of the parameters does not change the fitted curve, so it has no uncertainty to state.',
      'Use a model with fewer parameters or more frames.',
    );
  }
  const values = singularValues(scaled);
  const condition = (values[0] as number) / (values[p - 1] as number);
  if (!(condition < WORST_CONDITION)) {
    return failure(
      'parametersNotSeparable',
      'The data cannot tell two of the parameters apart, so they have no uncertainty to state.',
      'Use a model with fewer parameters or more frames.',
    );
  }
  return success(inverseGram(columns, n, p));
}

/** R with every column brought to length 1; null where one has no length. */
function scaledTriangle(columns: Float64Array, n: number, p: number): Rows | null {
  const rows = Array.from({ length: p }, () => new Array<number>(p).fill(0));
  for (let c = 0; c < p; c++) {
    let squares = 0;
    for (let r = 0; r <= c; r++) squares += (columns[c * n + r] as number) ** 2;
    const length = Math.sqrt(squares);
    if (!(length > 0)) return null;
    for (let r = 0; r <= c; r++) {
      (rows[r] as number[])[c] = (columns[c * n + r] as number) / length;
    }
  }
  return rows;
}
