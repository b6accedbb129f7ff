import type { Outcome, Reason } from './reason';

/** A value and its standard uncertainty, same unit (JCGM 100:2008, 2.3.1). */
export interface Estimate {
  readonly value: number;
  readonly u: number;
}

/** A reported quantity: estimate, coverage interval (JCGM 101:2008, 3.12) and effective degrees of freedom. */
export interface Quantity extends Estimate {
  readonly interval: readonly [low: number, high: number];
  /** Coverage probability of the interval, 0..1. */
  readonly coverage: number;
  /** Effective degrees of freedom; null where they are unlimited (JSON has no infinity). */
  readonly dof: number | null;
}

/** Stands where a number would, and says why there is none. */
export interface Unavailable {
  readonly unavailable: Reason;
}

export type Reported = Quantity | Unavailable;

export const isAvailable = (reported: Reported): reported is Quantity => 'value' in reported;

/** What is read off an outcome, or the reason there is nothing to read. */
export const orUnavailable = <T, R>(outcome: Outcome<T>, read: (value: T) => R): R | Unavailable =>
  outcome.ok ? read(outcome.value) : { unavailable: outcome.reason };
