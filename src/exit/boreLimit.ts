import type { Setting } from './flight';
import { atmosphericForce, initialAcceleration } from './force';

/** Specific gas constant of dry air, J/(kg K); moist air differs by less than a hundredth. */
const GAS_CONSTANT = 287.05;

/** What the air outside does at most: its pressure, by density and temperature, on the ball with nothing ahead of it. */
export const mostInBore = ({ density, temperature, diameter, mass }: Setting): number =>
  initialAcceleration(atmosphericForce(density * GAS_CONSTANT * temperature, diameter), mass);

/** What is not believable in an acceleration in the bore, as the end of a sentence; null where nothing is. */
export function implausibleBore(acceleration: number, nominal: Setting): string | null {
  if (acceleration < 0) return 'it has the ball slowing down in the bore.';
  return acceleration > 1.1 * mostInBore(nominal)
    ? 'its acceleration in the bore is more than the air outside can give the ball.'
    : null;
}
