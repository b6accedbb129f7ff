import { airDensity } from '../core/air';
import { dragOf, WIDE_DRAG } from '../exit/drag';
import type { Shot } from '../shot/schema';
import type { TrackPrior } from '../tracking/types';
import type { Scene } from './scene';

/** What the shot says of a flight before it is looked at, besides where it passes. */
export type FlightPrior = Pick<TrackPrior, 'maxSpeed' | 'slowing' | 'placed' | 'seeds'>;

/** No ball driven by the atmosphere is faster, m/s: air at 20 degrees escapes into vacuum at 1716 (2 c / (gamma - 1)). */
const FASTEST_BALL = 1716;

export function flightPrior({ ball, air, edits }: Shot, { scale }: Scene): FlightPrior {
  const density = airDensity(air.temperature.value, air.pressure.value, air.humidity.value);
  const known = { diameter: ball.diameter.value, mass: ball.mass.value, density };
  return {
    maxSpeed: FASTEST_BALL / scale.value,
    slowing: dragOf(known, WIDE_DRAG.value + 2 * WIDE_DRAG.u) * scale.value,
    placed: edits.manualPoints,
    seeds: edits.seeds,
  };
}
