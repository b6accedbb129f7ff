import { fitLinear } from '../fit/linear';
import { STANDARD_GRAVITY } from './force';

/** A centre beside the flight axis; all in one unit of length. */
export interface PlaceBeside {
  /** From the muzzle along the axis, and across it. */
  readonly along: number;
  readonly across: number;
  readonly acrossU: number;
}

export interface Slope {
  /** Of the path at the muzzle against the axis. */
  readonly value: number;
  readonly u: number;
  /** Null: the centres scatter as stated. */
  readonly dof: number | null;
}

/**
 * How much a flight may bend, 1/m, as a standard uncertainty about a straight one: gravity in whatever direction the
 * picture shows it, g / v^2, and a spinning ball's lift, taken to be no larger than its drag (1/m), either way.
 */
export const bendU = (speed: number, drag: number): number =>
  Math.hypot(STANDARD_GRAVITY / speed ** 2, drag / Math.sqrt(3));

/**
 * Slope of the path at the muzzle: a parabola through the centres, its bend known beforehand to `bend` (per unit of
 * length). Scatter larger than stated widens the uncertainty. Null with fewer than two centres.
 */
export function slopeAtMuzzle(places: readonly PlaceBeside[], bend: number): Slope | null {
  const n = places.length;
  if (n < 2) return null;
  const rows = n + 1;
  const design = new Float64Array(3 * rows);
  const observed = new Float64Array(rows);
  const sigmas = new Float64Array(rows);
  places.forEach(({ along, across, acrossU }, i) => {
    design[i] = 1;
    design[rows + i] = along;
    design[2 * rows + i] = along ** 2 / 2;
    observed[i] = across;
    sigmas[i] = acrossU;
  });
  design[2 * rows + n] = 1;
  sigmas[n] = bend;
  const { parameters, covariance, chiSquare, dof } = fitLinear(design, observed, sigmas);
  if (!covariance.ok) return null;
  const excess = dof > 0 ? Math.max(1, chiSquare / dof) : 1;
  return {
    value: parameters[1] as number,
    u: Math.sqrt(excess * (covariance.value[4] as number)),
    dof: excess > 1 ? dof : null,
  };
}
