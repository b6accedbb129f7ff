/** The ball's flight in the muzzle's frame: s along the axis, q across (turned from the axis as y is from x). */
export interface Flight {
  /** [s, q] in metres at time t. */
  position(t: number): [number, number];
  /** [ds/dt, dq/dt] in metres per second. */
  velocity(t: number): [number, number];
}

export interface FlightLaw {
  readonly exitTime: number;
  readonly velocity: number;
  /** Acceleration in the bore just before the muzzle, m/s^2. */
  readonly boreAcceleration: number;
  /** Deceleration per speed squared, 1/m. */
  readonly drag: number;
  readonly muzzleZone: { readonly loss: number; readonly length: number } | null;
  /** Gravity in the muzzle's frame, m/s^2. */
  readonly gravity: readonly [number, number];
}

const STEP = 1e-6;

/** Deceleration of a sphere per speed squared: Cd rho A / (2 m), 1/m. */
export function dragPerLength(cd: number, density: number, radius: number, mass: number): number {
  return (cd * density * Math.PI * radius * radius) / (2 * mass);
}

/** Solves the flight until `until` by classical Runge-Kutta steps of 1 us (longer for slow shots). */
export function fly(law: FlightLaw, until: number): Flight {
  const step = STEP * Math.max(1, Math.round(100 / law.velocity));
  const count = Math.max(2, Math.ceil((until - law.exitTime) / step) + 2);
  const table = new Float64Array(4 * count);
  let state: State = [0, 0, law.velocity, 0];
  for (let i = 0; i < count; i++) {
    table.set(state, 4 * i);
    state = rungeKutta(law, state, step);
  }
  const at = (t: number): State => {
    const tau = t - law.exitTime;
    if (tau < 0) {
      const a = law.boreAcceleration;
      return [law.velocity * tau + 0.5 * a * tau * tau, 0, law.velocity + a * tau, 0];
    }
    const i = Math.min(Math.floor(tau / step), count - 1);
    const o = 4 * i;
    const start: State = [
      table[o] as number,
      table[o + 1] as number,
      table[o + 2] as number,
      table[o + 3] as number,
    ];
    return rungeKutta(law, start, tau - i * step);
  };
  return {
    position: (t) => {
      const [s, q] = at(t);
      return [s, q];
    },
    velocity: (t) => {
      const [, , vs, vq] = at(t);
      return [vs, vq];
    },
  };
}

type State = readonly [number, number, number, number];

function derivative(law: FlightLaw, [s, , vs, vq]: State): State {
  const speed = Math.hypot(vs, vq);
  const zone = law.muzzleZone;
  // dv/ds = -(loss v0 / length) exp(-s / length): `loss` of the exit velocity is lost in all.
  const extra = zone
    ? ((zone.loss * law.velocity) / zone.length) * Math.exp(-s / zone.length) * vs
    : 0;
  return [
    vs,
    vq,
    -law.drag * speed * vs - extra + law.gravity[0],
    -law.drag * speed * vq + law.gravity[1],
  ];
}

function rungeKutta(law: FlightLaw, y: State, h: number): State {
  const along = (k: State, f: number): State => [
    y[0] + f * k[0],
    y[1] + f * k[1],
    y[2] + f * k[2],
    y[3] + f * k[3],
  ];
  const k1 = derivative(law, y);
  const k2 = derivative(law, along(k1, h / 2));
  const k3 = derivative(law, along(k2, h / 2));
  const k4 = derivative(law, along(k3, h));
  const sum = (i: 0 | 1 | 2 | 3): number =>
    y[i] + (h / 6) * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
  return [sum(0), sum(1), sum(2), sum(3)];
}
