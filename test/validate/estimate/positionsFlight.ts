/** The true flights of the class: equations of motion integrated in small steps, shared with no code under test. */

export interface TrueBall {
  /** m, kg, kg/m^3 */
  readonly diameter: number;
  readonly mass: number;
  readonly density: number;
}

/** How the muzzle zone takes speed from the ball: its deceleration against distance. */
export type LossShape = 'straight' | 'exponential';

export interface TrueFlight {
  /** m/s */
  readonly velocity: number;
  readonly motion: 'uniform' | 'constant' | 'drag';
  /** k of k v^2, 1/m; for constant deceleration, that at the exit. */
  readonly drag: number;
  /** Share of the speed lost in the muzzle zone besides drag, and the length within which (nearly) all of it is, m. */
  readonly loss: number;
  readonly shape: LossShape;
  readonly reach: number;
}

export const dragFactor = ({ density, diameter, mass }: TrueBall, coefficient: number): number =>
  (density * Math.PI * diameter ** 2 * coefficient) / (8 * mass);

/** Mass of the air a ball displaces, over its own. */
export const displacedShare = ({ density, diameter, mass }: TrueBall): number =>
  (density * Math.PI * diameter ** 3) / (6 * mass);

/** Deceleration at distance s (m) and speed v (m/s). */
function deceleration(flight: TrueFlight, s: number, v: number): number {
  const { velocity, motion, drag, loss, shape, reach } = flight;
  const air = motion === 'drag' ? drag * v * v : motion === 'constant' ? drag * velocity ** 2 : 0;
  const share = loss * velocity ** 2;
  const tail = reach / 3;
  const gas =
    shape === 'exponential'
      ? (share / tail) * Math.exp(-Math.max(0, s) / tail)
      : ((2 * share) / reach) * Math.min(1, Math.max(0, 1 - s / reach));
  return air + (s < 0 ? 0 : gas);
}

/** Step of the integration, as a share of the reach of the zone. */
const STEP = 1 / 30;

/** Distances (m) from the muzzle plane at rising times (s after the exit), by the classical Runge-Kutta method. */
export function fly(flight: TrueFlight, times: readonly number[]): number[] {
  let [t, s, v] = [0, 0, flight.velocity];
  return times.map((end) => {
    const steps = Math.max(1, Math.ceil((Math.abs(end - t) * v) / (STEP * flight.reach)));
    const h = (end - t) / steps;
    for (let i = 0; i < steps; i++) {
      const a1 = -deceleration(flight, s, v);
      const v2 = v + (h / 2) * a1;
      const a2 = -deceleration(flight, s + (h / 2) * v, v2);
      const v3 = v + (h / 2) * a2;
      const a3 = -deceleration(flight, s + (h / 2) * v2, v3);
      const v4 = v + h * a3;
      const a4 = -deceleration(flight, s + h * v3, v4);
      s += (h / 6) * (v + 2 * v2 + 2 * v3 + v4);
      v += (h / 6) * (a1 + 2 * a2 + 2 * a3 + a4);
    }
    t = end;
    return s;
  });
}
