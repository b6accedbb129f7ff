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

/** Half the coverage interval over the standard uncertainty. */
export function intervalFactor({ interval: [low, high], u }: Quantity): number {
  return u > 0 ? (high - low) / 2 / u : 0;
}

/** A quantity as it is stated: with its expanded uncertainty, half the coverage interval. */
export const expanded = (quantity: Quantity, sign: 1 | -1 = 1): Estimate => ({
  value: quantity.value * sign,
  u: quantity.u * intervalFactor(quantity),
});

/** Stands where a number would, and says why there is none. */
export interface Unavailable {
  readonly unavailable: Reason;
}

export type Reported = Quantity | Unavailable;

export const isAvailable = (reported: Reported): reported is Quantity => 'value' in reported;

/** What is read off an outcome, or the reason there is nothing to read. */
export const orUnavailable = <T, R>(outcome: Outcome<T>, read: (value: T) => R): R | Unavailable =>
  outcome.ok ? read(outcome.value) : { unavailable: outcome.reason };
