import type { CandidateFit, Estimator } from './candidate';
import type { Setting } from './flight';
import { PARAMETERS } from './motion';

/** A candidate that takes part in the answer. */
export interface Member {
  readonly estimator: Estimator;
  readonly fit: CandidateFit;
  /** Share in the average; all add up to 1. */
  readonly weight: number;
}

/** Parameters averaged over the members, and their covariance within and between the members (5 x 5 each). */
export interface Average {
  readonly theta: Float64Array;
  readonly within: Float64Array;
  readonly between: Float64Array;
}

export function average(members: readonly Member[]): Average {
  const theta = new Float64Array(PARAMETERS);
  const within = new Float64Array(PARAMETERS * PARAMETERS);
  const between = new Float64Array(PARAMETERS * PARAMETERS);
  for (const { fit, weight } of members) {
    for (let j = 0; j < PARAMETERS; j++) {
      theta[j] = (theta[j] as number) + weight * (fit.theta[j] as number);
    }
  }
  for (const { fit, weight } of members) {
    for (let a = 0; a < PARAMETERS; a++) {
      const da = (fit.theta[a] as number) - (theta[a] as number);
      for (let b = 0; b < PARAMETERS; b++) {
        const at = a * PARAMETERS + b;
        const db = (fit.theta[b] as number) - (theta[b] as number);
        within[at] = (within[at] as number) + weight * (fit.covariance[at] as number);
        between[at] = (between[at] as number) + weight * da * db;
      }
    }
  }
  return { theta, within, between };
}

/** Every member fitted again at another setting; null where one has no fit there. */
export function refitAt(
  members: readonly Member[],
  setting: Setting,
): readonly Float64Array[] | null {
  const thetas: Float64Array[] = [];
  for (const { estimator, fit } of members) {
    const theta = Float64Array.from(fit.theta);
    estimator.load(setting);
    if (!estimator.refine(theta)) return null;
    thetas.push(theta);
  }
  return thetas;
}
