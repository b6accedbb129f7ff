import type { Quantity } from '../core/estimate';
import type { Reason } from '../core/reason';
import type { BudgetEntry, FitReport, MonteCarloReport, Warning } from '../shot/result';
import type { Fitted } from './reading';
import type { FittedPath } from './types';

export interface ExitReport {
  readonly exitVelocity: Quantity;
  readonly exitTime: Quantity;
  readonly fit: FitReport;
  readonly budget: readonly BudgetEntry[];
  readonly monteCarlo: MonteCarloReport | { readonly unavailable: Reason };
  readonly warnings: readonly Warning[];
  readonly path: FittedPath;
  /** The fit itself, for what else is read off it. */
  readonly fitted: Fitted;
  /** Frames left out by the estimator, with the reason (outlier, muzzle zone, before the exit). */
  readonly leftOut: readonly { readonly frame: number; readonly reason: Reason }[];
}
