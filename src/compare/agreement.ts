import type { Quantity } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import { coverageFactor } from '../core/statistics';
import { difference } from '../uncertainty/quantity';

/** How a measured value stands to a predicted one. */
export interface Agreement {
  /** Measured minus predicted, with what both share counted. */
  readonly difference: Quantity;
  /** The difference over its standard uncertainty (ISO 13528:2015, 9.6, from memory). */
  readonly zeta: number;
  /** The difference over its expanded uncertainty for 95 % (E number; ISO 13528:2015, 9.7, from memory). */
  readonly en: number;
  readonly verdict: 'agree' | 'questionable' | 'differ';
}

/** Limits of zeta by ISO 13528: up to 2 fine, from 3 on calling for action. */
const FINE = 2;
const ACTION = 3;
const COVERAGE = 0.95;

/**
 * The normalised difference of a measured and a predicted quantity, same unit. `correlation` is that of their errors,
 * where they share an input.
 */
export function agreement(
  measured: Quantity,
  predicted: Quantity,
  coverage: number,
  correlation = 0,
): Outcome<Agreement> {
  const off = difference(measured, predicted, correlation, coverage);
  const expanded = (q: Quantity) => coverageFactor(COVERAGE, q.dof) * q.u;
  const [a, b] = [expanded(measured), expanded(predicted)];
  const together = Math.sqrt(Math.max(0, a * a + b * b - 2 * correlation * a * b));
  if (!(off.u > 0 && together > 0)) {
    return failure(
      'noUncertainty',
      'Neither film nor model has an uncertainty that their difference could be held against.',
      'State how well the inputs of the launcher are known.',
    );
  }
  const zeta = off.value / off.u;
  const size = Math.abs(zeta);
  const verdict = size <= FINE ? 'agree' : size < ACTION ? 'questionable' : 'differ';
  return success({ difference: off, zeta, en: off.value / together, verdict });
}
