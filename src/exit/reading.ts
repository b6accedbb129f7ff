import type { Quantity } from '../core/estimate';
import { quantity } from '../core/quantity';
import { effectiveDof } from '../uncertainty/quantity';
import type { Member } from './average';
import type { Response } from './budget';
import type { Candidate } from './candidate';
import type { Choice } from './choice';
import type { Flight, Setting } from './flight';
import { type SharedInput, shifted } from './inputs';
import { PARAMETERS } from './motion';

/** A fit with what moving each shared input does to it, ready to be read. */
export interface Fitted {
  readonly choice: Choice;
  readonly flight: Flight;
  readonly nominal: Setting;
  readonly shared: readonly Response[];
  /** Standard uncertainty of the exit speed for what the fitted model leaves out, m/s. */
  readonly unmodelled: number;
}

/** A number read off one member's parameters at a setting; not finite where it has none. */
export type ReadOff = (theta: Float64Array, candidate: Candidate, setting: Setting) => number;

/** A number read off a fit, its uncertainty kept apart by cause. */
export interface Reading {
  readonly value: number;
  /** Standard uncertainty from the centres, what is known beforehand and the choice of model, with its degrees of freedom. */
  readonly own: readonly { readonly contribution: number; readonly dof: number | null }[];
  /** What one standard uncertainty of each shared input does to it, signed, in the order of `sharedInputs`. */
  readonly moved: readonly { readonly input: SharedInput; readonly by: number }[];
}

/**
 * Reads a number off a fit: averaged over the members, to first order in the fitted parameters (JCGM 100:2008, 5.2.2)
 * with the spread between members, and each shared input moved through fit and reading together, so that an input
 * which enters both (the ball's mass: drag to be expected, energy) counts as one.
 */
export function read({ choice, nominal, shared }: Fitted, of: ReadOff): Reading {
  const { members, noiseDof } = choice;
  const mean = (thetaOf: (member: Member, i: number) => Float64Array, setting: Setting): number =>
    members.reduce(
      (sum, member, i) =>
        sum + member.weight * of(thetaOf(member, i), member.fit.candidate, setting),
      0,
    );
  const value = mean(({ fit }) => fit.theta, nominal);
  let variance = 0;
  for (const { fit, weight } of members) {
    const { theta, covariance, candidate } = fit;
    const at = (moved: Float64Array) => of(moved, candidate, nominal);
    const slopes = gradient(at, theta, covariance);
    variance += weight * (quadraticForm(slopes, covariance) + (at(theta) - value) ** 2);
  }
  return {
    value,
    own: [{ contribution: Math.sqrt(variance), dof: noiseDof }],
    moved: shared.map(({ input, up, down }) => ({
      input,
      by:
        (mean((_, i) => up[i] as Float64Array, shifted(nominal, input, input.u)) -
          mean((_, i) => down[i] as Float64Array, shifted(nominal, input, -input.u))) /
        2,
    })),
  };
}

/** Derivatives by the parameters, by differences of one standard deviation. */
function gradient(
  at: (theta: Float64Array) => number,
  theta: Float64Array,
  covariance: Float64Array,
): Float64Array {
  return theta.map((value, j) => {
    const step = Math.sqrt(covariance[j * PARAMETERS + j] as number);
    if (step === 0) return 0;
    return (at(theta.with(j, value + step)) - at(theta.with(j, value - step))) / (2 * step);
  });
}

function quadraticForm(slopes: Float64Array, covariance: Float64Array): number {
  let sum = 0;
  for (let a = 0; a < PARAMETERS; a++) {
    for (let b = 0; b < PARAMETERS; b++) {
      sum +=
        (slopes[a] as number) * (covariance[a * PARAMETERS + b] as number) * (slopes[b] as number);
    }
  }
  return sum;
}

/** First minus second, read off fits to different centres of one shot: the inputs they share count together. */
export const minus = (a: Reading, b: Reading): Reading => ({
  value: a.value - b.value,
  own: [...a.own, ...b.own],
  moved: a.moved.map(({ input, by }, k) => ({ input, by: by - (b.moved[k]?.by ?? 0) })),
});

/** The reading with one more independent contribution to its standard uncertainty. */
export const widened = (reading: Reading, contribution: number): Reading => ({
  ...reading,
  own: [...reading.own, { contribution, dof: null }],
});

/** Standard uncertainty, every cause counted. */
export const readingU = ({ own, moved }: Reading): number =>
  Math.hypot(...own.map(({ contribution }) => contribution), ...moved.map(({ by }) => by));

/**
 * The reading as reported, with a Student interval. Symmetric also for quantities that cannot be negative: what is read
 * here is in proportion to what the film tells, or to a speed known to a few per cent, whose square is hardly skew.
 */
export function quantityRead(reading: Reading, coverage: number): Quantity {
  const u = readingU(reading);
  const parts = reading.moved.map(({ input, by }) => ({
    contribution: Math.abs(by),
    dof: input.dof,
  }));
  return quantity(reading.value, u, effectiveDof(u, [...reading.own, ...parts]), coverage);
}
