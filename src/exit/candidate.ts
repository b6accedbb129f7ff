import { logDeterminant } from '../core/linalg';
import { type Outcome, success } from '../core/reason';
import type { Design } from '../fit/influence';
import { type Curve, createSolver } from '../fit/nonlinear';
import { type CoefficientPrior, dragOf, muzzleLossOf, type ZoneProfile } from './drag';
import { distanceOf, type Flight, type Setting, timeOf } from './flight';
import {
  BORE,
  DRAG,
  LOSS,
  type Motion,
  moveTo,
  nowhere,
  PARAMETERS,
  placesAt,
  T0,
  V0,
} from './motion';

/** A version of the equation of motion, with what is taken as known of it beforehand. */
export interface Candidate {
  readonly motion: Motion;
  /** Drag coefficient taken as known; null: left free (or, for uniform motion, none asked for). */
  readonly dragCoefficient: CoefficientPrior | null;
  /** The muzzle zone, its loss then fitted; null: no loss there. */
  readonly zone: ZoneProfile | null;
}

export interface CandidateFit {
  readonly candidate: Candidate;
  /** t0 (after the flight's reference), v0, k, z, a. */
  readonly theta: Float64Array;
  /** 5 x 5, zeros for what the candidate fixes. */
  readonly covariance: Float64Array;
  /** Residuals of the points, m. */
  readonly residuals: Float64Array;
  /** With what is known beforehand counted as observations. */
  readonly chiSquare: number;
  readonly dof: number;
  readonly parameters: number;
  /** How the observations, the points first, determine the parameters that are fitted (T0, V0, ...). */
  readonly design: Design;
  /** Residuals of its rows over their standard uncertainties: the points', then what is known beforehand. */
  readonly white: Float64Array;
  /** Logarithm of the determinant of the fitted parameters' covariance. */
  readonly logVolume: number;
}

/** One candidate bound to one flight: fits it at any setting, over and over, in the same memory. */
export interface Estimator {
  readonly candidate: Candidate;
  /** Points as the measurement equation takes them; a trial overwrites them. */
  readonly times: Float64Array;
  readonly distances: Float64Array;
  /** Drag and muzzle loss expected beforehand. */
  readonly expected: { drag: number; loss: number };
  /** How well those are known beforehand: infinite where nothing is taken as known. */
  readonly expectedU: { readonly drag: number; readonly loss: number };
  /** Sets zone, points and expectations to a setting's. */
  load(setting: Setting): void;
  /**
   * Moves `theta`, at or near the last `fit`, to the best fit of what is loaded; false where none is found. Steps are
   * taken with that fit's gain, not the derivatives at each step: the answer differs from a full fit's in second order
   * (tested to be within 3 % of the fit's own u), and costs a tenth.
   */
  refine(theta: Float64Array): boolean;
  fit(setting: Setting, start: Float64Array): Outcome<CandidateFit>;
}

/** Places of the parameters that a candidate fits. */
export function fittedBy({ motion, zone }: Candidate): readonly number[] {
  const active = [T0, V0];
  if (motion !== 'uniform') active.push(DRAG);
  if (zone) active.push(LOSS);
  if (motion === 'boreAndFlight') active.push(BORE);
  return active;
}

/** Parameters have settled where the next step would move none by this share of its standard uncertainty. */
const SETTLED = 1e-4;
/** Steps with the same gain before derivatives are taken anew. */
const MOST_ROUNDS = 12;

export function createEstimator(
  candidate: Candidate,
  flight: Flight,
  nominal: Setting,
  sigmaScale: number,
): Estimator {
  const { motion, dragCoefficient } = candidate;
  const profile = candidate.zone;
  const { points, sigma } = flight;
  const n = points.length;
  const active = fittedBy(candidate);
  const p = active.length;
  const lossColumn = active.indexOf(LOSS);
  // What is known beforehand counts as two more observations; where nothing is, its uncertainty has no end.
  const rows = n + 2;
  const priorLoss = muzzleLossOf(nominal);
  const sigmas = new Float64Array(rows);
  for (let i = 0; i < n; i++) sigmas[i] = (sigma[i] as number) * sigmaScale;
  sigmas[n] = dragCoefficient ? dragOf(nominal, dragCoefficient.u) : Number.POSITIVE_INFINITY;
  sigmas[n + 1] = profile ? priorLoss.u : Number.POSITIVE_INFINITY;
  const known = (dragCoefficient ? 1 : 0) + (profile ? 1 : 0);

  const times = new Float64Array(n);
  const distances = new Float64Array(n);
  const expected = { drag: 0, loss: 0 };
  const observed = new Float64Array(rows);
  const values = new Float64Array(rows);
  const full = new Float64Array(PARAMETERS);
  const reduced = new Float64Array(p);
  const moved = nowhere();
  const zone = { shape: profile?.shape ?? ('straight' as const), length: 1 };

  const curve: Curve = (parameters, values, jacobian) => {
    for (let j = 0; j < p; j++) full[active[j] as number] = parameters[j] as number;
    if (jacobian === null) placesAt(motion, full, zone, times, values);
    else {
      for (let i = 0; i < n; i++) {
        moveTo(motion, full, zone, times[i] as number, moved);
        values[i] = moved.s;
        jacobian[i] = moved.byT0;
        jacobian[rows + i] = moved.byV0;
        if (motion !== 'uniform') jacobian[2 * rows + i] = moved.byDrag;
        if (profile) jacobian[lossColumn * rows + i] = moved.byLoss;
        if (motion === 'boreAndFlight') jacobian[(p - 1) * rows + i] = moved.byBore;
      }
    }
    values[n] = full[DRAG] as number;
    values[n + 1] = full[LOSS] as number;
    if (jacobian === null) return;
    for (let j = 0; j < p; j++) {
      jacobian[j * rows + n] = active[j] === DRAG ? 1 : 0;
      jacobian[j * rows + n + 1] = active[j] === LOSS ? 1 : 0;
    }
  };

  const solver = createSolver(rows, p, {
    gainTolerance: 1e-9,
    stepTolerance: 1e-12,
    maxIterations: 50,
    initialDamping: 1e-9,
  });

  const load = (setting: Setting): void => {
    for (let i = 0; i < n; i++) {
      const point = points[i] as (typeof points)[number];
      times[i] = timeOf(point.frameTime, point.line, setting) - flight.reference;
      distances[i] = distanceOf(point, setting);
    }
    expected.drag = dragCoefficient ? dragOf(setting, dragCoefficient.value) : 0;
    expected.loss = profile ? muzzleLossOf(setting).value : 0;
    if (profile) zone.length = profile.diameters * setting.diameter;
  };

  const begin = (theta: Float64Array): void => {
    observed.set(distances);
    observed[n] = expected.drag;
    observed[n + 1] = expected.loss;
    full.fill(0);
    for (let j = 0; j < p; j++) reduced[j] = theta[active[j] as number] as number;
  };
  const end = (theta: Float64Array): void => {
    theta.fill(0);
    for (let j = 0; j < p; j++) theta[active[j] as number] = reduced[j] as number;
  };
  const solve = (theta: Float64Array) => {
    begin(theta);
    const stop = solver.solve(curve, observed, sigmas, reduced);
    end(theta);
    return stop;
  };

  const design = new Float64Array(rows * p);
  /** Parameters per observation at the last fit, p rows of `rows`; and their standard uncertainties. */
  const gain = new Float64Array(p * rows);
  const spread = new Float64Array(p);
  const keepGain = (covariance: Float64Array): void => {
    curve(reduced, values, design);
    for (let i = 0; i < rows; i++) {
      const weight = 1 / (sigmas[i] as number) ** 2;
      for (let j = 0; j < p; j++) {
        let sum = 0;
        for (let k = 0; k < p; k++) {
          sum += (covariance[j * p + k] as number) * (design[k * rows + i] as number);
        }
        gain[j * rows + i] = sum * weight;
      }
    }
    for (let j = 0; j < p; j++) spread[j] = Math.sqrt(covariance[j * p + j] as number);
  };
  const refine = (theta: Float64Array): boolean => {
    begin(theta);
    let last = 0;
    for (let round = 0; round < MOST_ROUNDS; round++) {
      curve(reduced, values, null);
      for (let i = 0; i < rows; i++) values[i] = (observed[i] as number) - (values[i] as number);
      let largest = 0;
      for (let j = 0; j < p; j++) {
        let step = 0;
        for (let i = 0; i < rows; i++) {
          step += (gain[j * rows + i] as number) * (values[i] as number);
        }
        reduced[j] = (reduced[j] as number) + step;
        largest = Math.max(largest, Math.abs(step) / (spread[j] as number));
      }
      // Steps shrink in proportion, so the next one is about this much.
      const next = last > 0 ? largest * Math.min(1, largest / last) : largest;
      last = largest;
      if (next < SETTLED) {
        end(theta);
        return true;
      }
    }
    return solve(theta).converged;
  };

  const fit = (setting: Setting, start: Float64Array): Outcome<CandidateFit> => {
    load(setting);
    const theta = Float64Array.from(start);
    const stop = solve(theta);
    const report = solver.report(curve, observed, sigmas, reduced, stop);
    if (!report.covariance.ok) return report.covariance;
    keepGain(report.covariance.value);
    const covariance = new Float64Array(PARAMETERS * PARAMETERS);
    for (let a = 0; a < p; a++) {
      for (let b = 0; b < p; b++) {
        covariance[(active[a] as number) * PARAMETERS + (active[b] as number)] = report.covariance
          .value[a * p + b] as number;
      }
    }
    return success({
      candidate,
      theta,
      covariance,
      residuals: report.residuals.slice(0, n),
      chiSquare: report.chiSquare,
      dof: n + known - p,
      parameters: p,
      design: {
        rows,
        columns: p,
        whitened: design.map((value, at) => value / (sigmas[at % rows] as number)),
        covariance: report.covariance.value,
      },
      white: report.residuals.map((r, i) => r / (sigmas[i] as number)),
      logVolume: logDeterminant(report.covariance.value, p),
    });
  };

  return {
    candidate,
    times,
    distances,
    expected,
    expectedU: { drag: sigmas[n] as number, loss: sigmas[n + 1] as number },
    load,
    refine,
    fit,
  };
}
