import { definiteInverse } from '../core/linalg';
import type { Equations } from './discEquations';
import { type Disc, GEOMETRY } from './discModel';

const LEAST_SIGMA = 0.3;
const MOST_SIGMA = 4;

export function copyDisc(from: Disc, to: Disc): void {
  to.x = from.x;
  to.y = from.y;
  to.radius = from.radius;
  to.sigma = from.sigma;
  to.stretch = from.stretch;
  to.shade.set(from.shade);
}

/** Inverse of the equations' matrix with its diagonal raised by the damping (Levenberg, Marquardt); null where it has none. */
export function dampedInverse({ normal, rhs }: Equations, damping: number): Float64Array | null {
  const parameters = rhs.length;
  const damped = normal.slice();
  for (let j = 0; j < parameters; j++) {
    damped[j * parameters + j] = (damped[j * parameters + j] as number) * (1 + damping);
  }
  return definiteInverse(damped, parameters);
}

/** Moves the disc by one Gauss-Newton step; false where there is none, for want of an inverse. */
export function takeStep(
  disc: Disc,
  { rhs }: Equations,
  inverse: Float64Array | null,
  radius: number,
): boolean {
  if (inverse === null) return false;
  const step = Float64Array.from(rhs, (_, r) => stepOf(inverse, rhs, r));
  if (!step.every(Number.isFinite)) return false;
  limit(step, disc, radius);
  disc.x += step[0] as number;
  disc.y += step[1] as number;
  disc.radius += step[2] as number;
  disc.sigma += step[3] as number;
  disc.stretch += step[4] as number;
  for (let j = 0; j < disc.shade.length; j++) {
    disc.shade[j] = (disc.shade[j] as number) + (step[GEOMETRY + j] as number);
  }
  return true;
}

/** Gauss-Newton's undamped step of one parameter. */
export function stepOf(inverse: Float64Array, rhs: Float64Array, parameter: number): number {
  let sum = 0;
  for (let c = 0; c < rhs.length; c++) {
    sum += (inverse[parameter * rhs.length + c] as number) * (rhs[c] as number);
  }
  return sum;
}

/** Keeps a step within what the linearisation can answer for. */
function limit(step: Float64Array, disc: Disc, radius: number): void {
  const most = Math.max(1, 0.08 * radius);
  const move = Math.hypot(step[0] as number, step[1] as number);
  if (move > most) {
    step[0] = ((step[0] as number) * most) / move;
    step[1] = ((step[1] as number) * most) / move;
  }
  step[2] = Math.max(-most / 2, Math.min(most / 2, step[2] as number));
  const sigma = Math.max(LEAST_SIGMA, Math.min(MOST_SIGMA, disc.sigma + (step[3] as number)));
  step[3] = Math.max(-0.4, Math.min(0.4, sigma - disc.sigma));
  const stretch = Math.max(0.3, Math.min(2, disc.stretch + (step[4] as number)));
  step[4] = Math.max(-0.2, Math.min(0.2, stretch - disc.stretch));
}
