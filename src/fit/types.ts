import type { Outcome } from '../core/reason';

export interface Stop {
  readonly reason: 'exact' | 'smallStep' | 'smallGain' | 'iterationLimit' | 'stuck' | 'notFinite';
  readonly converged: boolean;
  readonly iterations: number;
}

/** What a weighted fit gives; n observations, p parameters. */
export interface Fit {
  readonly parameters: Float64Array;
  /** p x p, row after row, for the standard uncertainties as stated (not scaled by chi-square); or why there is none. */
  readonly covariance: Outcome<Float64Array>;
  /** Observed minus fitted, n, in the unit of the observations. */
  readonly residuals: Float64Array;
  /** Sum of squared residuals, each over its standard uncertainty. */
  readonly chiSquare: number;
  readonly dof: number;
  readonly stop: Stop;
}
