import type { Estimate } from '../core/estimate';
import type { Spread } from '../uncertainty/draw';
import type { Zone } from './motion';

/** What is taken as known of a ball in air before its film is looked at. */
export interface BallInAir {
  /** m */
  readonly diameter: number;
  /** kg */
  readonly mass: number;
  /** kg/m^3 */
  readonly density: number;
}

/** What is known of a drag coefficient before the film is looked at, and how a trial draws it. */
export interface CoefficientPrior extends Estimate {
  readonly spread: Spread;
}

/** For any ball: one past its drag crisis as one at the speed of sound (0.1 to 1). */
export const WIDE_DRAG: CoefficientPrior = { value: 0.5, u: 0.25, spread: 'normal' };

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

/** The muzzle zone as a candidate takes it: its shape, and its length in ball diameters. */
export interface ZoneProfile {
  readonly shape: Zone['shape'];
  readonly diameters: number;
}

/**
 * Zone lengths that are tried, in ball diameters: anywhere from 1.5 to 3.5 is as likely. Close enough together that a
 * film which tells the length finds one to its liking; five leave it off by what many sharp frames can see.
 */
const SHORTEST = 1.5;
const LONGEST = 3.5;
const TRIED = 7;
const LENGTHS = Array.from(
  { length: TRIED },
  (_, i) => SHORTEST + ((LONGEST - SHORTEST) * (i + 0.5)) / TRIED,
);
const SHAPES = ['straight', 'tail'] as const;

/** What is tried of the zone, with shares beforehand: no shape is likelier than the other. */
export const ZONE_PROFILES = SHAPES.flatMap((shape) =>
  LENGTHS.map((diameters) => ({
    profile: { shape, diameters },
    share: 1 / (TRIED * SHAPES.length),
  })),
);

/** The zone of a ball of this diameter, m; where there is none, any does, the loss being zero. */
export const zoneIn = (profile: ZoneProfile | null, diameter: number): Zone => ({
  shape: profile?.shape ?? 'straight',
  length: (profile?.diameters ?? 1) * diameter,
});
