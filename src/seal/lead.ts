import type { Quantity } from '../core/estimate';
import { difference } from '../uncertainty/quantity';
import type { BurstReport } from './burst';
import { intervalOf, momentsOf, withNormal } from './density';

/**
 * An event's time minus the burst's. What the film leaves open of the burst keeps its own distribution; all else is
 * taken as normal (JCGM 101:2008, 5.2). `covariance`: of the two times, through the clock they share, s^2.
 */
export function leadOf(
  event: Quantity,
  { burst, film }: Pick<BurstReport, 'burst' | 'film'>,
  covariance: number,
  coverage: number,
): Quantity {
  const product = burst.u * event.u;
  const correlation = product > 0 ? covariance / product : 0;
  const lead = difference(event, burst, correlation, coverage);
  const { mean, sd } = momentsOf(film);
  const others = Math.sqrt(Math.max(0, lead.u ** 2 - sd ** 2));
  const mirrored = {
    times: film.times.map((time) => lead.value + mean - time).reverse(),
    weights: film.weights.slice().reverse(),
  };
  return { ...lead, interval: intervalOf(withNormal(mirrored, others), coverage) };
}
