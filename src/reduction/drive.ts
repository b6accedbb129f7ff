import { atmosphericForce, initialAcceleration, STANDARD_GRAVITY } from '../exit/force';
import type { Shot } from '../shot/schema';
import type { Drive } from './types';

/** What the air outside could do to the ball at most: full pressure behind it, perfect vacuum ahead. */
export function driveOf({ air, ball }: Shot): Drive {
  const force = atmosphericForce(air.pressure.value, ball.diameter.value);
  const acceleration = initialAcceleration(force, ball.mass.value);
  return { force, acceleration, gravities: acceleration / STANDARD_GRAVITY };
}
