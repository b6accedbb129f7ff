import type { Estimate } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import type { Member } from './average';
import type { Response } from './budget';
import type { Flight, Setting } from './flight';
import { type Moved, moveTo, nowhere, PARAMETERS } from './motion';
import type { FittedPath } from './types';

interface State {
  readonly s: number;
  readonly v: number;
}

/** The averaged path with every input's effect on it. */
export function fittedPath(
  members: readonly Member[],
  flight: Flight,
  nominal: Setting,
  shared: readonly Response[],
): FittedPath {
  const moved: Moved = nowhere();
  const stateOf = (member: Member, theta: Float64Array, t: number): State => {
    const { motion, zoneDiameters } = member.fit.candidate;
    moveTo(motion, theta, (zoneDiameters ?? 1) * nominal.diameter, t, moved);
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

  /** Variances of a member's s and v by its own covariance, gradients by differences of one standard deviation. */
  const ownVariance = (member: Member, t: number): State => {
    const { theta, covariance } = member.fit;
    const steps: number[] = [];
    const byS: number[] = [];
    const byV: number[] = [];
    const shifted = Float64Array.from(theta);
    for (let j = 0; j < PARAMETERS; j++) {
      const step = Math.sqrt(covariance[j * PARAMETERS + j] as number);
      steps.push(step);
      if (step === 0) {
        byS.push(0);
        byV.push(0);
        continue;
      }
      shifted[j] = (theta[j] as number) + step;
      const up = stateOf(member, shifted, t);
      shifted[j] = (theta[j] as number) - step;
      const down = stateOf(member, shifted, t);
      shifted[j] = theta[j] as number;
      byS.push((up.s - down.s) / (2 * step));
      byV.push((up.v - down.v) / (2 * step));
    }
    return { s: quadraticForm(byS, covariance), v: quadraticForm(byV, covariance) };
  };

  const at: FittedPath['at'] = (time) => {
    const t = time - flight.reference;
    const mean = meanState(t, (member) => member.fit.theta);
    let sVariance = 0;
    let vVariance = 0;
    for (const member of members) {
      const own = ownVariance(member, t);
      const { s, v } = stateOf(member, member.fit.theta, t);
      sVariance += member.weight * (own.s + (s - mean.s) ** 2);
      vVariance += member.weight * (own.v + (v - mean.v) ** 2);
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

  return { at, timeAt };
}

function quadraticForm(gradient: readonly number[], covariance: Float64Array): number {
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
