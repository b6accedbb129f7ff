import type { Estimate } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import type { Member } from './average';
import type { Response } from './budget';
import type { Choice } from './choice';
import { zoneIn } from './drag';
import type { Flight, Setting } from './flight';
import { type Moved, moveTo, nowhere, PARAMETERS } from './motion';
import type { FittedPath } from './types';

interface State {
  readonly s: number;
  readonly v: number;
}

/** The averaged path with every input's effect on it. */
export function fittedPath(
  { members, noiseDof }: Choice,
  flight: Flight,
  nominal: Setting,
  shared: readonly Response[],
): FittedPath {
  const moved: Moved = nowhere();
  const stateOf = (member: Member, theta: Float64Array, t: number): State => {
    const { motion, zone } = member.fit.candidate;
    moveTo(motion, theta, zoneIn(zone, nominal.diameter), t, moved);
    return { s: moved.s, v: moved.v };
  };
  const meanState = (
    t: number,
    thetaOf: (member: Member, index: number) => Float64Array,
  ): State => {
    let s = 0;
    let v = 0;
    members.forEach((member, i) => {
      const state = stateOf(member, thetaOf(member, i), t);
      s += member.weight * state.s;
      v += member.weight * state.v;
    });
    return { s, v };
  };

  /** Derivatives of a member's s and v by its parameters, by differences of one standard deviation. */
  const gradients = (member: Member, t: number): { byS: Float64Array; byV: Float64Array } => {
    const { theta, covariance } = member.fit;
    const byS = new Float64Array(PARAMETERS);
    const byV = new Float64Array(PARAMETERS);
    const shifted = Float64Array.from(theta);
    for (let j = 0; j < PARAMETERS; j++) {
      const step = Math.sqrt(covariance[j * PARAMETERS + j] as number);
      if (step === 0) continue;
      shifted[j] = (theta[j] as number) + step;
      const up = stateOf(member, shifted, t);
      shifted[j] = (theta[j] as number) - step;
      const down = stateOf(member, shifted, t);
      shifted[j] = theta[j] as number;
      byS[j] = (up.s - down.s) / (2 * step);
      byV[j] = (up.v - down.v) / (2 * step);
    }
    return { byS, byV };
  };

  const at: FittedPath['at'] = (time) => {
    const t = time - flight.reference;
    const mean = meanState(t, (member) => member.fit.theta);
    let sVariance = 0;
    let vVariance = 0;
    for (const member of members) {
      const { byS, byV } = gradients(member, t);
      const { covariance } = member.fit;
      const { s, v } = stateOf(member, member.fit.theta, t);
      sVariance += member.weight * (quadraticForm(byS, covariance) + (s - mean.s) ** 2);
      vVariance += member.weight * (quadraticForm(byV, covariance) + (v - mean.v) ** 2);
    }
    for (const { up, down } of shared) {
      const above = meanState(t, (_, i) => up[i] as Float64Array);
      const below = meanState(t, (_, i) => down[i] as Float64Array);
      sVariance += ((above.s - below.s) / 2) ** 2;
      vVariance += ((above.v - below.v) / 2) ** 2;
    }
    return { s: mean.s, sU: Math.sqrt(sVariance), v: mean.v, vU: Math.sqrt(vVariance) };
  };

  const timeAt = (s: number): Outcome<Estimate> => {
    let t = flight.start.t0;
    for (let i = 0; i < 50; i++) {
      const state = meanState(t, (member) => member.fit.theta);
      if (!(state.v > 0 && Number.isFinite(state.s))) break;
      const step = (s - state.s) / state.v;
      t += step;
      if (Math.abs(step) * state.v < 1e-12) {
        const { v, sU } = at(t + flight.reference);
        return success({ value: t + flight.reference, u: sU / v });
      }
    }
    return failure(
      'placeNotReached',
      `The fitted path never reaches ${s.toPrecision(3)} m from the muzzle plane.`,
      'Ask for a place on the filmed stretch of the flight.',
    );
  };

  const meanSpeed: FittedPath['meanSpeed'] = (times, shares) => {
    const meanOf = (one: (t: number) => number): number => {
      let sum = 0;
      for (let i = 0; i < times.length; i++) {
        sum += (shares[i] as number) * one((times[i] as number) - flight.reference);
      }
      return sum;
    };
    const value = meanOf((t) => meanState(t, (member) => member.fit.theta).v);
    let variance = 0;
    for (const member of members) {
      const { theta, covariance } = member.fit;
      const byV = theta.map((_, j) => meanOf((t) => gradients(member, t).byV[j] as number));
      const speed = meanOf((t) => stateOf(member, theta, t).v);
      variance += member.weight * (quadraticForm(byV, covariance) + (speed - value) ** 2);
    }
    const moved = shared.map(({ up, down }) => {
      const above = meanOf((t) => meanState(t, (_, i) => up[i] as Float64Array).v);
      const below = meanOf((t) => meanState(t, (_, i) => down[i] as Float64Array).v);
      return (above - below) / 2;
    });
    return { value, ownU: Math.sqrt(variance), dof: noiseDof, moved };
  };

  return { at, timeAt, meanSpeed };
}

function quadraticForm(gradient: Float64Array, covariance: Float64Array): number {
  let sum = 0;
  for (let a = 0; a < PARAMETERS; a++) {
    for (let b = 0; b < PARAMETERS; b++) {
      sum +=
        (gradient[a] as number) *
        (covariance[a * PARAMETERS + b] as number) *
        (gradient[b] as number);
    }
  }
  return sum;
}
