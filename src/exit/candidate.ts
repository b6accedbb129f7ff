import type { Estimate } from '../core/estimate';
import { type Outcome, success } from '../core/reason';
import { type Curve, createSolver } from '../fit/nonlinear';
import { dragOf, muzzleLossOf } from './drag';
import { distanceOf, type Flight, type Setting, timeOf } from './flight';
import { DRAG, LOSS, type Motion, moveTo, nowhere, PARAMETERS, T0, V0 } from './motion';

/** A version of the equation of motion, with what is taken as known of it beforehand. */
export interface Candidate {
  readonly motion: Motion;
  /** Drag coefficient taken as known; null: left free (or, for uniform motion, none asked for). */
  readonly dragCoefficient: Estimate | null;
  /** Length of the muzzle zone in ball diameters, its loss then fitted; null: no loss there. */
  readonly zoneDiameters: number | null;
}

export interface CandidateFit {
  readonly candidate: Candidate;
  /** t0 (after the flight's reference), v0, k, z. */
  readonly theta: Float64Array;
  /** 4 x 4, zeros for what the candidate fixes. */
  readonly covariance: Float64Array;
  /** Residuals of the points, m. */
  readonly residuals: Float64Array;
  /** With what is known beforehand counted as observations. */
  readonly chiSquare: number;
  readonly dof: number;
  readonly parameters: number;
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
  /** Moves `theta` to the best fit of what is loaded; false where none is found. */
  refine(theta: Float64Array): boolean;
  fit(setting: Setting, start: Float64Array): Outcome<CandidateFit>;
}

const dragSpread = (setting: Setting, coefficient: Estimate): number =>
  dragOf(setting, coefficient.u);

export function createEstimator(
  candidate: Candidate,
  flight: Flight,
  nominal: Setting,
  sigmaScale: number,
): Estimator {
  const { motion, dragCoefficient, zoneDiameters } = candidate;
  const zone = zoneDiameters !== null;
  const { points, sigma } = flight;
  const n = points.length;
  const active = [T0, V0];
  if (motion !== 'uniform') active.push(DRAG);
  if (zone) active.push(LOSS);
  const p = active.length;
  // What is known beforehand counts as two more observations; where nothing is, its uncertainty has no end.
  const rows = n + 2;
  const priorLoss = muzzleLossOf(nominal);
  const sigmas = new Float64Array(rows);
  for (let i = 0; i < n; i++) sigmas[i] = (sigma[i] as number) * sigmaScale;
  sigmas[n] = dragCoefficient ? dragSpread(nominal, dragCoefficient) : Number.POSITIVE_INFINITY;
  sigmas[n + 1] = zone ? priorLoss.u : Number.POSITIVE_INFINITY;
  const known = (dragCoefficient ? 1 : 0) + (zone ? 1 : 0);

  const times = new Float64Array(n);
  const distances = new Float64Array(n);
  const expected = { drag: 0, loss: 0 };
  const observed = new Float64Array(rows);
  const full = new Float64Array(PARAMETERS);
  const reduced = new Float64Array(p);
  const moved = nowhere();
  let zoneLength = 1;

  const curve: Curve = (parameters, values, jacobian) => {
    for (let j = 0; j < p; j++) full[active[j] as number] = parameters[j] as number;
    for (let i = 0; i < n; i++) {
      moveTo(motion, full, zoneLength, times[i] as number, moved);
      values[i] = moved.s;
      if (jacobian === null) continue;
      jacobian[i] = moved.byT0;
      jacobian[rows + i] = moved.byV0;
      if (motion !== 'uniform') jacobian[2 * rows + i] = moved.byDrag;
      if (zone) jacobian[(p - 1) * rows + i] = moved.byLoss;
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
    expected.loss = zone ? muzzleLossOf(setting).value : 0;
    if (zone) zoneLength = zoneDiameters * setting.diameter;
  };

  const solve = (theta: Float64Array) => {
    observed.set(distances);
    observed[n] = expected.drag;
    observed[n + 1] = expected.loss;
    full.fill(0);
    for (let j = 0; j < p; j++) reduced[j] = theta[active[j] as number] as number;
    const stop = solver.solve(curve, observed, sigmas, reduced);
    theta.fill(0);
    for (let j = 0; j < p; j++) theta[active[j] as number] = reduced[j] as number;
    return stop;
  };

  const fit = (setting: Setting, start: Float64Array): Outcome<CandidateFit> => {
    load(setting);
    const theta = Float64Array.from(start);
    const stop = solve(theta);
    const report = solver.report(curve, observed, sigmas, reduced, stop);
    if (!report.covariance.ok) return report.covariance;
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
    });
  };

  return {
    candidate,
    times,
    distances,
    expected,
    expectedU: { drag: sigmas[n] as number, loss: sigmas[n + 1] as number },
    load,
    refine: (t) => solve(t).converged,
    fit,
  };
}
