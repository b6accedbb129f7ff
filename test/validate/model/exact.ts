/**
 * Exact solutions of the Euler equations for a perfect gas, written apart from the program: Riemann's problem (Toro,
 * Riemann Solvers and Numerical Methods for Fluid Dynamics, 3rd ed. 2009, ch. 4) and simple waves by their
 * characteristics (Courant and Friedrichs, Supersonic Flow and Shock Waves, 1948, ch. III).
 */
export interface Primitive {
  readonly rho: number;
  readonly u: number;
  readonly p: number;
}

export const GAMMA = 1.4;

const soundOf = ({ rho, p }: Primitive): number => Math.sqrt((GAMMA * p) / rho);

/** Velocity change across the wave on one side for a star pressure, and its derivative. */
function side(p: number, k: Primitive): readonly [f: number, df: number] {
  if (p > k.p) {
    const a = 2 / (GAMMA + 1) / k.rho;
    const b = ((GAMMA - 1) / (GAMMA + 1)) * k.p;
    const root = Math.sqrt(a / (p + b));
    return [(p - k.p) * root, root * (1 - (p - k.p) / (2 * (p + b)))];
  }
  const c = soundOf(k);
  const power = (p / k.p) ** ((GAMMA - 1) / (2 * GAMMA));
  return [
    ((2 * c) / (GAMMA - 1)) * (power - 1),
    (p / k.p) ** (-(GAMMA + 1) / (2 * GAMMA)) / (k.rho * c),
  ];
}

export interface Star {
  readonly p: number;
  readonly u: number;
  readonly rhoLeft: number;
  readonly rhoRight: number;
}

/** Pressure and velocity between the waves, by Newton's method. */
export function starOf(left: Primitive, right: Primitive): Star {
  let p = 0.5 * (left.p + right.p);
  for (let i = 0; i < 100; i++) {
    const [fl, dl] = side(p, left);
    const [fr, dr] = side(p, right);
    const next = Math.max(1e-8 * p, p - (fl + fr + right.u - left.u) / (dl + dr));
    const change = Math.abs(next - p) / p;
    p = next;
    if (change < 1e-15) break;
  }
  const u = 0.5 * (left.u + right.u) + 0.5 * (side(p, right)[0] - side(p, left)[0]);
  return { p, u, rhoLeft: starDensity(p, left), rhoRight: starDensity(p, right) };
}

function starDensity(p: number, k: Primitive): number {
  const ratio = p / k.p;
  const g = (GAMMA - 1) / (GAMMA + 1);
  return k.rho * (ratio > 1 ? (ratio + g) / (g * ratio + 1) : ratio ** (1 / GAMMA));
}

/** The solution at speed s = x / t from where the states met. */
export function riemann(left: Primitive, right: Primitive, s: number): Primitive {
  const star = starOf(left, right);
  if (s <= star.u) return fanSide(left, star.p, star.u, s);
  const { rho, u, p } = fanSide({ ...right, u: -right.u }, star.p, -star.u, -s);
  return { rho, u: -u, p };
}

/** The left of the contact. */
function fanSide(k: Primitive, p: number, u: number, s: number): Primitive {
  const c = soundOf(k);
  const star = { rho: starDensity(p, k), u, p };
  if (p > k.p) {
    const shock =
      k.u - c * Math.sqrt(((GAMMA + 1) / (2 * GAMMA)) * (p / k.p) + (GAMMA - 1) / (2 * GAMMA));
    return s < shock ? k : star;
  }
  if (s < k.u - c) return k;
  if (s > u - soundOf(star)) return star;
  const factor = 2 / (GAMMA + 1) + ((GAMMA - 1) / ((GAMMA + 1) * c)) * (k.u - s);
  return {
    rho: k.rho * factor ** (2 / (GAMMA - 1)),
    u: (2 / (GAMMA + 1)) * (c + ((GAMMA - 1) / 2) * k.u + s),
    p: k.p * factor ** ((2 * GAMMA) / (GAMMA - 1)),
  };
}

/** Still gas of sound speed 1 at density 1 in both tests of smooth flow. */
const STILL: Primitive = { rho: 1, u: 0, p: 1 / GAMMA };

const isentropic = (u: number, direction: 1 | -1): Primitive => {
  const c = 1 + direction * ((GAMMA - 1) / 2) * u;
  return {
    rho: c ** (2 / (GAMMA - 1)),
    u,
    p: STILL.p * c ** ((2 * GAMMA) / (GAMMA - 1)),
  };
};

/** A pulse running to the right, of this velocity at its top: nothing beyond 0.2 of its middle at 0.35. */
const PULSE = 0.2;
const pulse = (x: number): number =>
  Math.abs(x - 0.35) < 0.2 ? PULSE * Math.cos((Math.PI / 2) * ((x - 0.35) / 0.2)) ** 4 : 0;

/** The pulse at time t, before it steepens into a shock: each velocity runs at u + c from where it began. */
export function pulseAt(x: number, t: number): Primitive {
  const speed = (u: number) => u + 1 + ((GAMMA - 1) / 2) * u;
  return isentropic(pulse(originOf((from) => from + speed(pulse(from)) * t - x, x - 2, x)), 1);
}

/** Path of a piston that withdraws to the right: X = 0.1 t^4 from 0. */
export const pistonPlace = (t: number): number => 0.1 * t ** 4;
export const pistonSpeed = (t: number): number => 0.4 * t ** 3;

/** Gas to the left of that piston at time t: the wave that leaves the piston at `from` runs at u - c. */
export function behindPiston(x: number, t: number): Primitive {
  if (x <= -t) return STILL;
  const wave = (from: number) => {
    const u = pistonSpeed(from);
    return pistonPlace(from) + (u - 1 + ((GAMMA - 1) / 2) * u) * (t - from);
  };
  return isentropic(pistonSpeed(originOf((from) => wave(from) - x, 0, t)), -1);
}

/** Root of an increasing function, by halving. */
function originOf(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 60; i++) {
    const middle = (a + b) / 2;
    if (f(middle) < 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** Mean of a function over a cell: Gauss and Legendre with three points, exact to the fifth power. */
export function cellMean(f: (x: number) => number, x: number, width: number): number {
  const off = (width / 2) * Math.sqrt(0.6);
  return (5 * f(x - off) + 8 * f(x) + 5 * f(x + off)) / 18;
}
