import type { Unavailable } from '../core/estimate';
import type { FlightReport } from '../shot/result';

const missing: Unavailable = {
  unavailable: { code: 'notDetermined', message: 'This is not determined yet.' },
};

/** What else is read off the flight. */
export const flightReport = (): FlightReport => ({
  elevation: missing,
  kineticEnergy: missing,
  momentum: missing,
  boreAcceleration: missing,
  deceleration: missing,
  dragCoefficient: missing,
  target: null,
});
