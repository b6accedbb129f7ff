import type { Reason } from '../core/reason';
import { fitRobustly } from '../fit/robust';
import { type Candidate, createEstimator, fittedBy } from './candidate';
import { WIDE_DRAG } from './drag';
import { distanceOf, prepareFlight, type Setting } from './flight';
import type { FlightPoint } from './types';

export interface Selection {
  readonly used: readonly FlightPoint[];
  /** What each of these counts for, 0..1. */
  readonly weights: Float64Array;
  readonly leftOut: readonly { readonly frame: number; readonly reason: Reason }[];
}

/** With fewer points a single gross error cannot be told from the path. */
const FEWEST_FOR_OUTLIERS = 6;
/** Tukey weight under which a point is left out: about 4.2 times the scatter. */
const OUTLIER_WEIGHT = 0.04;
/**
 * Tukey weight up to which a point counts in full: within 2.5 times the scatter. Clean centres are thus fitted by plain
 * least squares, whose covariance is the one stated; beyond, weights fall off to nothing.
 */
const FULL_WEIGHT = 0.5;

/** The version of the flight that can follow most: what it cannot follow is no feature of the path. */
export const MOST_SUPPLE = {
  motion: 'quadraticDrag',
  dragCoefficient: WIDE_DRAG,
  zone: { shape: 'straight', diameters: 2.5 },
} as const;

/** Points of free flight: those past the muzzle plane and, where asked for, without gross errors. */
export function selectPoints(
  points: readonly FlightPoint[],
  nominal: Setting,
  robust: boolean,
): Selection {
  const ordered = [...points].sort((a, b) => a.frameTime - b.frameTime);
  const past = ordered.filter((point) => distanceOf(point, nominal) >= 0);
  const leftOut = ordered
    .filter((point) => distanceOf(point, nominal) < 0)
    .map(({ frame }) => ({
      frame,
      reason: {
        code: 'beforeExit',
        message: 'The centre is still behind the muzzle plane, where the ball is being driven.',
      },
    }));
  const flying = robust ? withoutOutliers(past, nominal, MOST_SUPPLE) : allOf(past);
  return { ...flying, leftOut: [...leftOut, ...flying.leftOut] };
}

/** All points, each counting in full. */
export const allOf = (points: readonly FlightPoint[]): Selection => ({
  used: points,
  weights: new Float64Array(points.length).fill(1),
  leftOut: [],
});

/** The points without gross errors, weighed by their distance from the path of all as `candidate` has it. */
export function withoutOutliers(
  points: readonly FlightPoint[],
  nominal: Setting,
  candidate: Candidate,
): Selection {
  if (points.length < FEWEST_FOR_OUTLIERS) return allOf(points);
  const { wild, weights } = outliers(points, nominal, candidate);
  return {
    used: points.filter((_, i) => !wild.has(i)),
    weights: weights.filter((_, i) => !wild.has(i)),
    leftOut: [...wild].map(([i, distance]) => ({
      frame: (points[i] as FlightPoint).frame,
      reason: {
        code: 'outlier',
        message: `The centre lies ${distance.toFixed(0)} times its uncertainty away from the path of the others.`,
        values: { times: distance.toFixed(0) },
      },
    })),
  };
}

/** Indices of gross errors with their distance from the path, in stated uncertainties; and what each point counts for. */
function outliers(
  points: readonly FlightPoint[],
  nominal: Setting,
  candidate: Candidate,
): { wild: Map<number, number>; weights: Float64Array } {
  const flight = prepareFlight(points, nominal);
  const start = Float64Array.of(flight.start.t0, flight.start.v0, 0, 0, 0);
  const robust = fitRobustly(
    (sigma) => {
      const fit = createEstimator(candidate, { ...flight, sigma }, nominal, 1).fit(nominal, start);
      return fit.ok ? fit.value : null;
    },
    flight.sigma,
    fittedBy(candidate).length,
  );
  const wild = new Map<number, number>();
  robust?.weights.forEach((weight, i) => {
    if (weight >= OUTLIER_WEIGHT) return;
    wild.set(i, Math.abs((robust.fit.residuals[i] as number) / (flight.sigma[i] as number)));
  });
  const weights = new Float64Array(points.length).fill(1);
  robust?.weights.forEach((weight, i) => {
    weights[i] = Math.min(1, weight / FULL_WEIGHT);
  });
  return { wild, weights };
}
