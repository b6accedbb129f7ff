import { backSubstitute, leastSquares, triangulate } from '../core/linalg';
import { ExitframeError } from '../core/reason';
import { covarianceFrom } from './covariance';
import type { Fit } from './types';

/**
 * Weighted linear least squares, observed = design * parameters, by Householder QR of the whitened design with
 * its columns scaled alike. `design` holds p columns of n numbers one after the other; `sigmas` are the standard
 * uncertainties of the observations. Where the data leave a parameter open, the solution of least norm is given
 * and the covariance says why there is none.
 */
export function fitLinear(design: Float64Array, observed: Float64Array, sigmas: Float64Array): Fit {
  const n = observed.length;
  const p = design.length / n;
  if (!Number.isInteger(p) || p < 1 || n < p || sigmas.length !== n) {
    throw new ExitframeError(
      'badArgument',
      `A linear fit of ${design.length} design values to ${n} observations with ${sigmas.length} uncertainties.`,
    );
  }
  const white = new Float64Array(n * p);
  const rhs = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const weight = 1 / (sigmas[i] as number);
    if (!(weight > 0 && Number.isFinite(weight))) {
      throw new ExitframeError('badArgument', `Observation ${i} has no positive uncertainty.`);
    }
    rhs[i] = (observed[i] as number) * weight;
    for (let j = 0; j < p; j++) white[j * n + i] = (design[j * n + i] as number) * weight;
  }
  const rows = Array.from({ length: n }, (_, i) =>
    Array.from({ length: p }, (_unused, j) => white[j * n + i] as number),
  );
  const whiteObserved = Array.from(rhs);
  triangulate(white, n, p, rhs);
  const covariance = covarianceFrom(white, n, p);
  let parameters = new Float64Array(p);
  if (!(covariance.ok && backSubstitute(white, n, p, rhs, parameters))) {
    parameters = Float64Array.from(leastSquares(rows, whiteObserved));
  }
  const residuals = new Float64Array(n);
  let chiSquare = 0;
  for (let i = 0; i < n; i++) {
    let fitted = 0;
    for (let j = 0; j < p; j++) fitted += (design[j * n + i] as number) * (parameters[j] as number);
    const residual = (observed[i] as number) - fitted;
    residuals[i] = residual;
    chiSquare += (residual / (sigmas[i] as number)) ** 2;
  }
  return {
    parameters,
    covariance,
    residuals,
    chiSquare,
    dof: n - p,
    stop: { reason: 'exact', converged: true, iterations: 1 },
  };
}
