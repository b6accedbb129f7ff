import { backSubstitute, triangulate } from '../core/linalg';
import { covarianceFrom } from './covariance';
import type { Fit, Stop } from './types';

/**
 * A curve of p parameters at n places. Fills `values` (n) and, where one is asked for, the Jacobian
 * (p columns of n numbers one after the other, d value / d parameter).
 */
export type Curve = (
  parameters: Float64Array,
  values: Float64Array,
  jacobian: Float64Array | null,
) => void;

export interface SolverOptions {
  /** Stops when chi-square and its predicted fall change by less than this share. */
  readonly gainTolerance?: number;
  /** Stops when no parameter moves by more than this share of itself. */
  readonly stepTolerance?: number;
  readonly maxIterations?: number;
  /** Relative damping of the first step: about 1 from a guess, 1e-6 from a start known to be close. */
  readonly initialDamping?: number;
}

/** Gives a curve without derivatives a Jacobian by central differences. */
export function withDifferences(
  values: (parameters: Float64Array, values: Float64Array) => void,
): Curve {
  let above = new Float64Array(0);
  let below = new Float64Array(0);
  return (parameters, out, jacobian) => {
    values(parameters, out);
    if (jacobian === null) return;
    const n = out.length;
    if (above.length !== n) {
      above = new Float64Array(n);
      below = new Float64Array(n);
    }
    for (let j = 0; j < parameters.length; j++) {
      const centre = parameters[j] as number;
      // Cube root of the rounding unit balances truncation against rounding of a central difference.
      const step = Math.cbrt(Number.EPSILON) * (Math.abs(centre) || 1e-3);
      parameters[j] = centre + step;
      values(parameters, above);
      parameters[j] = centre - step;
      values(parameters, below);
      parameters[j] = centre;
      for (let i = 0; i < n; i++) {
        jacobian[j * n + i] = ((above[i] as number) - (below[i] as number)) / (2 * step);
      }
    }
  };
}

/** A solver for one size of problem. It keeps its own memory, so that solving again allocates nothing. */
export interface Solver {
  /** Moves `parameters` to the least chi-square in place. */
  solve(curve: Curve, observed: Float64Array, sigmas: Float64Array, parameters: Float64Array): Stop;
  /** The whole report for parameters already at the least chi-square. */
  report(
    curve: Curve,
    observed: Float64Array,
    sigmas: Float64Array,
    parameters: Float64Array,
    stop: Stop,
  ): Fit;
}

/**
 * Levenberg-Marquardt with steps scaled by the Jacobian's column lengths, let fall slowly, and the damping
 * rule of Nielsen (1999); every step by Householder QR.
 */
export function createSolver(n: number, p: number, options: SolverOptions = {}): Solver {
  const gainTolerance = options.gainTolerance ?? 1e-14;
  const stepTolerance = options.stepTolerance ?? 1e-12;
  const maxIterations = options.maxIterations ?? 200;
  const initialDamping = options.initialDamping ?? 1;
  const values = new Float64Array(n);
  const trialValues = new Float64Array(n);
  const jacobian = new Float64Array(n * p);
  const rhs = new Float64Array(n);
  const damped = new Float64Array(2 * p * p);
  const dampedRhs = new Float64Array(2 * p);
  const scale = new Float64Array(p);
  const step = new Float64Array(p);
  const trial = new Float64Array(p);

  const chiSquareOf = (at: Float64Array, observed: Float64Array, sigmas: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const r = ((observed[i] as number) - (at[i] as number)) / (sigmas[i] as number);
      sum += r * r;
    }
    return sum;
  };

  /** Whitened Jacobian and residuals at `parameters`, triangulated: R in `jacobian`, Q'r in `rhs`. */
  const linearise = (
    curve: Curve,
    observed: Float64Array,
    sigmas: Float64Array,
    parameters: Float64Array,
  ): void => {
    curve(parameters, values, jacobian);
    for (let i = 0; i < n; i++) {
      const weight = 1 / (sigmas[i] as number);
      rhs[i] = ((observed[i] as number) - (values[i] as number)) * weight;
      for (let j = 0; j < p; j++) jacobian[j * n + i] = (jacobian[j * n + i] as number) * weight;
    }
    triangulate(jacobian, n, p, rhs);
  };

  /** Column lengths of the whitened Jacobian: those of R. */
  const growScale = (): void => {
    for (let j = 0; j < p; j++) {
      let squares = 0;
      for (let i = 0; i <= j; i++) squares += (jacobian[j * n + i] as number) ** 2;
      const length = Math.sqrt(squares);
      scale[j] = Math.max(length, 0.1 * (scale[j] as number));
    }
  };

  /** Solves (R'R + damping D^2) step = R' Q'r. Returns false where it has no solution. */
  const dampedStep = (damping: number): boolean => {
    const rows = 2 * p;
    damped.fill(0);
    dampedRhs.fill(0);
    const root = Math.sqrt(damping);
    for (let j = 0; j < p; j++) {
      for (let i = 0; i <= j; i++) damped[j * rows + i] = jacobian[j * n + i] as number;
      damped[j * rows + p + j] = root * ((scale[j] as number) || 1);
      dampedRhs[j] = rhs[j] as number;
    }
    triangulate(damped, rows, p, dampedRhs);
    return backSubstitute(damped, rows, p, dampedRhs, step);
  };

  /** Fall of chi-square the linear model promises for `step`: |Q'r|^2 - |Q'r - R step|^2. */
  const promisedFall = (): number => {
    let fall = 0;
    for (let i = 0; i < p; i++) {
      let moved = 0;
      for (let j = i; j < p; j++) moved += (jacobian[j * n + i] as number) * (step[j] as number);
      fall += moved * (2 * (rhs[i] as number) - moved);
    }
    return fall;
  };

  const solve: Solver['solve'] = (curve, observed, sigmas, parameters) => {
    scale.fill(0);
    linearise(curve, observed, sigmas, parameters);
    let chiSquare = chiSquareOf(values, observed, sigmas);
    if (!Number.isFinite(chiSquare))
      return { reason: 'notFinite', converged: false, iterations: 0 };
    growScale();
    let damping = initialDamping;
    let growth = 2;
    for (let iteration = 1; iteration <= maxIterations; iteration++) {
      if (chiSquare === 0) return { reason: 'smallGain', converged: true, iterations: iteration };
      const solvable = dampedStep(damping);
      const fall = solvable ? promisedFall() : 0;
      let moves = false;
      for (let j = 0; j < p; j++) {
        const next = (parameters[j] as number) + (step[j] as number);
        trial[j] = next;
        if (Math.abs(step[j] as number) > stepTolerance * Math.abs(next)) moves = true;
      }
      if (solvable && !moves)
        return { reason: 'smallStep', converged: true, iterations: iteration };
      curve(trial, trialValues, null);
      const trialChiSquare = chiSquareOf(trialValues, observed, sigmas);
      const gained = chiSquare - trialChiSquare;
      if (solvable && gained > 0) {
        parameters.set(trial);
        const small = fall <= gainTolerance * chiSquare && gained <= gainTolerance * chiSquare;
        chiSquare = trialChiSquare;
        if (small) return { reason: 'smallGain', converged: true, iterations: iteration };
        linearise(curve, observed, sigmas, parameters);
        growScale();
        damping *= Math.max(1 / 3, 1 - (2 * (gained / fall) - 1) ** 3);
        growth = 2;
      } else {
        if (solvable && fall <= gainTolerance * chiSquare) {
          return { reason: 'smallGain', converged: true, iterations: iteration };
        }
        damping = Math.max(damping, 1e-12) * growth;
        growth *= 2;
        if (!Number.isFinite(damping)) {
          return { reason: 'stuck', converged: false, iterations: iteration };
        }
      }
    }
    return { reason: 'iterationLimit', converged: false, iterations: maxIterations };
  };

  const report: Solver['report'] = (curve, observed, sigmas, parameters, stop) => {
    linearise(curve, observed, sigmas, parameters);
    const residuals = new Float64Array(n);
    for (let i = 0; i < n; i++) residuals[i] = (observed[i] as number) - (values[i] as number);
    return {
      parameters: Float64Array.from(parameters),
      covariance: covarianceFrom(jacobian, n, p),
      residuals,
      chiSquare: chiSquareOf(values, observed, sigmas),
      dof: n - p,
      stop,
    };
  };

  return { solve, report };
}

/** Weighted nonlinear least squares from `start`; see `createSolver`. */
export function fitNonlinear(
  curve: Curve,
  observed: Float64Array,
  sigmas: Float64Array,
  start: Float64Array,
  options?: SolverOptions,
): Fit {
  const solver = createSolver(observed.length, start.length, options);
  const parameters = Float64Array.from(start);
  const stop = solver.solve(curve, observed, sigmas, parameters);
  return solver.report(curve, observed, sigmas, parameters, stop);
}
