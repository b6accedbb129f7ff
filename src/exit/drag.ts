import type { Estimate } from '../core/estimate';

/** What is taken as known of a ball in air before its film is looked at. */
export interface BallInAir {
  /** m */
  readonly diameter: number;
  /** kg */
  readonly mass: number;
  /** kg/m^3 */
  readonly density: number;
}

/**
 * Drag coefficients taken as known. Wide: any sphere from well past its drag crisis to the speed of sound
 * (0.1 to 1). Narrow: a smooth sphere short of its drag crisis and below about Mach 0.6.
 */
export const WIDE_DRAG: Estimate = { value: 0.5, u: 0.25 };
export const SMOOTH_SPHERE_DRAG: Estimate = { value: 0.47, u: 0.12 };

/** k of the drag deceleration k v^2, 1/m: density * area * coefficient / (2 mass). */
export function dragOf(ball: BallInAir, coefficient: number): number {
  return (ball.density * Math.PI * ball.diameter ** 2 * coefficient) / (8 * ball.mass);
}

/**
 * Share of its speed a ball is expected to lose in the muzzle zone besides drag. Setting the still air around it
 * moving costs a sphere what half the mass of the air it displaces would (added mass; Lamb, Hydrodynamics, art. 92);
 * the gas following from the tube may help or hinder, hence an uncertainty somewhat larger than the value.
 */
export function muzzleLossOf(ball: BallInAir): Estimate {
  const displaced = (ball.density * Math.PI * ball.diameter ** 3) / (6 * ball.mass);
  return { value: 0.5 * displaced, u: 0.6 * displaced };
}

/**
 * Lengths of the zone's straight-line profile in ball diameters, and their shares beforehand: anywhere from 1.5 to
 * 3.5, which stands for tails of about three, by the three nodes of Gauss and Legendre.
 */
export const ZONE_LENGTHS = [
  { diameters: 2.5 - Math.sqrt(0.6), share: 5 / 18 },
  { diameters: 2.5, share: 8 / 18 },
  { diameters: 2.5 + Math.sqrt(0.6), share: 5 / 18 },
] as const;
