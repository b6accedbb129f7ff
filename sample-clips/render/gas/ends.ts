/**
 * What the gas in the barrel meets at its ends: a piston, a gap that leaks, an opening. Exact single waves of a perfect
 * gas in one dimension (textbook: Courant & Friedrichs, Supersonic Flow and Shock Waves, 1948; from memory), each
 * solved by plain halving. Directions are counted from the end into the gas.
 */

/** kg/m^3, m/s away from the end, Pa. */
export interface EndState {
  readonly rho: number;
  readonly u: number;
  readonly p: number;
}

/** Air at rest: ratio of specific heats, gas constant J/(kg K), temperature K, pressure Pa. */
export interface Room {
  readonly gamma: number;
  readonly constant: number;
  readonly temperature: number;
  readonly pressure: number;
}

/**
 * Moist air as a perfect gas: mixture of dry air (287.05 J/(kg K), 7/2 R) and vapour (461.5 J/(kg K), 4 R), vapour
 * pressure by the Magnus formula; common values, from memory.
 */
export function moistAir(temperature: number, pressure: number, humidity: number): Room {
  const celsius = temperature - 273.15;
  const vapour = humidity * 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
  const share = vapour / pressure;
  const gamma = (3.5 + 0.5 * share) / (2.5 + 0.5 * share);
  const constant = 1 / ((1 - share) / 287.05 + share / 461.5);
  return { gamma, constant, temperature, pressure };
}

const sound = (gamma: number, { rho, p }: EndState): number => Math.sqrt((gamma * p) / rho);

/** Speed into the gas behind the wave that brings it to pressure `p`, m/s. */
function speedBehind(gamma: number, end: EndState, p: number): number {
  if (p > end.p) {
    const shock = 0.5 * end.rho * ((gamma + 1) * p + (gamma - 1) * end.p);
    return end.u + (p - end.p) / Math.sqrt(shock);
  }
  const fan = (p / end.p) ** ((gamma - 1) / (2 * gamma)) - 1;
  return end.u + ((2 * sound(gamma, end)) / (gamma - 1)) * fan;
}

/** Density behind the same wave, kg/m^3. */
function densityBehind(gamma: number, end: EndState, p: number): number {
  const r = p / end.p;
  if (r <= 1) return end.rho * r ** (1 / gamma);
  const k = (gamma + 1) / (gamma - 1);
  return (end.rho * (k * r + 1)) / (k + r);
}

/** Places are found to this share. */
const CLOSE = 1e-10;

/** Where an increasing function crosses nought between two places: secants, halved where one end stays too long. */
export function crossing(f: (x: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  let [fa, fb] = [f(a), f(b)];
  if (fa >= 0) return a;
  if (fb <= 0) return b;
  for (let i = 0; i < 80 && b - a > CLOSE * Math.abs(to); i++) {
    const x = i % 3 === 2 ? (a + b) / 2 : (fb * a - fa * b) / (fb - fa);
    const fx = f(x);
    if (Math.abs(fx) <= CLOSE * Math.abs(fb - fa)) return x;
    if (fx < 0) [a, fa] = [x, fx];
    else [b, fb] = [x, fx];
  }
  return (a + b) / 2;
}

/** The gas where it moves into the barrel at `speed` with the end: a shock, or a fan down to a vacuum. */
export function atPiston(gamma: number, end: EndState, speed: number): EndState {
  const c = sound(gamma, end);
  const mach = (speed - end.u) / c;
  const half = (gamma + 1) / 4;
  const ratio =
    mach > 0
      ? 1 + gamma * mach * (half * mach + Math.sqrt(1 + (half * mach) ** 2))
      : Math.max(0, 1 + ((gamma - 1) / 2) * mach) ** ((2 * gamma) / (gamma - 1));
  const p = ratio * end.p;
  return { rho: densityBehind(gamma, end, p), u: speed, p };
}

/** The gas in the plane of an opening. */
export type Mouth = (end: EndState) => EndState;

/**
 * An opening to a room: air drawn in, let out against its pressure, or choked. Drawn in, it loses `loss` times half
 * density times speed squared of its total pressure; where that chokes the mouth the flux stays at its greatest, up to
 * the speed of sound in the barrel.
 */
export function mouthTo({ gamma, constant, temperature, pressure }: Room, loss: number): Mouth {
  const heat = (gamma * constant) / (gamma - 1);
  const losing = (u: number): EndState => {
    const cooled = temperature - u ** 2 / (2 * heat);
    const ideal = pressure * (cooled / temperature) ** (gamma / (gamma - 1));
    const p = ideal / (1 + (loss * u ** 2) / (2 * constant * cooled));
    return { rho: p / (constant * cooled), u, p };
  };
  const fastest = Math.sqrt((2 * gamma * constant * temperature) / (gamma + 1));
  const fluxFalls = (u: number) => {
    const [less, more] = [losing(0.9999 * u), losing(u)];
    return less.rho * less.u - more.rho * more.u;
  };
  const choked = crossing(fluxFalls, 0.1 * fastest, fastest);
  const most = losing(choked);
  const drawnIn = (u: number): EndState => {
    if (u <= choked) return losing(u);
    const rho = (most.rho * most.u) / u;
    return { rho, u, p: rho * constant * (temperature - u ** 2 / (2 * heat)) };
  };
  return (end) => {
    if (speedBehind(gamma, end, pressure) >= 0) {
      const excess = (u: number) => u - speedBehind(gamma, end, drawnIn(u).p);
      return drawnIn(crossing(excess, 0, fastest));
    }
    const c = sound(gamma, end);
    if (end.u <= -c) return end;
    const sonic = (((gamma - 1) / (gamma + 1)) * (-end.u + (2 * c) / (gamma - 1))) / c;
    const p = Math.max(pressure, end.p * Math.min(1, sonic) ** ((2 * gamma) / (gamma - 1)));
    return { rho: densityBehind(gamma, end, p), u: speedBehind(gamma, end, p), p };
  };
}

/** Mass flux through a gap from gas at rest to a back pressure, kg/(s m^2), choked where it must be. */
export function gapFlux(gamma: number, from: EndState, backPressure: number): number {
  const critical = (2 / (gamma + 1)) ** (gamma / (gamma - 1));
  const r = Math.min(1, Math.max(critical, backPressure / from.p));
  const head = ((2 * gamma) / (gamma - 1)) * from.p * from.rho;
  return r ** (1 / gamma) * Math.sqrt(head * Math.max(0, 1 - r ** ((gamma - 1) / gamma)));
}

/** Gas on the side of the ball that a leak, kg/(s m^2) of bore, leaves; the ball recedes from it at `-speed`. */
export function leakingFrom(gamma: number, end: EndState, speed: number, leak: number): EndState {
  let state = atPiston(gamma, end, speed);
  for (let i = 0; i < 5; i++) state = atPiston(gamma, end, speed - leak / state.rho);
  return state;
}

/** A leak of total enthalpy `h`, J/kg, where it enters gas at a pressure, and the ball moves at `speed` into that. */
export function fedAt(gamma: number, p: number, speed: number, leak: number, h: number): EndState {
  // Relative speed w of gas of density leak / w and enthalpy h - w^2 / 2.
  const k = (gamma * p) / ((gamma - 1) * leak);
  const w = (2 * h) / (k + Math.sqrt(k ** 2 + 2 * h));
  return { rho: leak / w, u: speed + w, p };
}

/** Gas on the side that a leak enters; seen from the ball the leak is no faster than sound. */
export function leakingInto(
  gamma: number,
  end: EndState,
  speed: number,
  leak: number,
  h: number,
): EndState {
  const fastest = Math.sqrt((2 * (gamma - 1) * h) / (gamma + 1));
  const least = (leak * fastest) / gamma;
  const excess = (p: number) => speedBehind(gamma, end, p) - fedAt(gamma, p, speed, leak, h).u;
  let most = 4 * Math.max(least, end.p);
  while (excess(most) < 0) most *= 4;
  return fedAt(gamma, crossing(excess, least, most), speed, leak, h);
}
