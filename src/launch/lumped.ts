/**
 * The ball driven by a law for the pressure at its back, against air ahead that is alike throughout: an ordinary
 * differential equation, for the models that follow no waves.
 */
import { success } from '../core/reason';
import { createCurve, SAMPLES } from './curve';
import { densityAt, type Gas, gasOf, heatAtConstantPressure, orificeFlux } from './gas';
import {
  boreArea,
  checkLauncher,
  doesNotLeave,
  gapShare,
  isGivenUp,
  plugLength,
  sealOpensAt,
  timeScale,
} from './launcher';
import type { Launch, Launcher, SealOpening } from './types';

/** Gas at the ball's back: Pa, kg/m^3, J/kg. */
export interface Base {
  readonly pressure: number;
  readonly density: number;
  readonly enthalpy: number;
}

/** What drives the ball. */
export interface Drive {
  /** Gas at the ball's back; `way` m from the start, `speed` m/s, pressure ahead Pa, `leak` kg/s past the ball. */
  base(way: number, speed: number, ahead: number, leak: number): Base;
}

/** Way, speed, and mass and internal energy of the air ahead: m, m/s, kg, J. */
type State = readonly [way: number, speed: number, mass: number, energy: number];

interface Rates {
  readonly change: State;
  readonly base: Base;
  readonly ahead: number;
}

const STEPS_A_SAMPLE = 5;
/** The leak changes the pressures that drive it by a few per cent: so many rounds settle it. */
const ROUNDS = 8;
const SETTLED = 1e-10;

/**
 * The launch under a drive. The air ahead: a perfect gas of one pressure, squeezed without loss of heat, fed by the
 * leak (an orifice, quasi-steady) at the enthalpy of the gas it comes from. Once the seal is open the ball feels the
 * pressure outside.
 */
export function launchBy(launcher: Launcher, driveOf: (gas: Gas) => Drive): Launch {
  checkLauncher(launcher);
  const gas = gasOf(launcher.air);
  const { barrelLength, ballDiameter, startPosition, residualPressure, air } = launcher;
  const rates = ratesOf(launcher, gas, driveOf(gas));
  const leave = barrelLength - startPosition;
  const touch = leave - ballDiameter / 2;
  const opensAt = sealOpensAt(launcher);
  const room = boreArea(launcher) * (leave - plugLength(launcher) / 2);
  let state: State = [
    0,
    0,
    densityAt(gas, residualPressure, air.temperature) * room,
    (residualPressure * room) / (gas.gamma - 1),
  ];
  const scale = timeScale(launcher);
  const dt = scale / SAMPLES / STEPS_A_SAMPLE;
  const { curve, add } = createCurve();
  let time = 0;
  /** Since when the ball rests. */
  let rest = 0;
  let seal: Omit<SealOpening, 'lead'> | null = null;
  const sample = () => {
    const { change, base, ahead } = rates(state, seal !== null);
    const [position, speed] = [startPosition + state[0], state[1]];
    const pressures = { basePressure: base.pressure, frontPressure: ahead, sealPressure: ahead };
    add({ time, position, speed, acceleration: change[1], ...pressures });
  };
  for (let step = 0; state[0] < leave; step++) {
    if (step % STEPS_A_SAMPLE === 0) sample();
    if (state[1] !== 0) rest = time;
    if (isGivenUp(time, rest, scale) || state[0] < -startPosition) {
      return { curve, exit: doesNotLeave(time, startPosition + state[0]) };
    }
    const open = seal !== null;
    const after = (part: number) => rungeKutta((y) => rates(y, open).change, state, part);
    const whole = after(dt);
    // The first thing to happen in the step ends it: the seal opens, or the ball leaves.
    const happens = (y: State) =>
      open ? y[0] >= leave : y[0] >= touch || rates(y, false).ahead >= opensAt;
    const part = happens(whole) ? firstTime(dt, (t) => happens(after(t))) : dt;
    state = part === dt ? whole : after(part);
    time += part;
    if (open && happens(whole)) break;
    if (!open && happens(whole)) {
      const cause = state[0] >= touch ? 'contact' : 'pressure';
      seal = { time, cause, distance: leave - state[0] };
    }
  }
  sample();
  const opening = seal as Omit<SealOpening, 'lead'>;
  return {
    curve,
    exit: success({ time, speed: state[1], seal: { ...opening, lead: time - opening.time } }),
  };
}

function ratesOf(
  launcher: Launcher,
  gas: Gas,
  drive: Drive,
): (state: State, open: boolean) => Rates {
  const { ballMass, ballFriction, barrelLength, startPosition, outsidePressure } = launcher;
  const area = boreArea(launcher);
  const gap = gapShare(launcher) * area;
  const length = barrelLength - startPosition - plugLength(launcher) / 2;
  const heat = heatAtConstantPressure(gas);
  return ([way, speed, mass, energy], open) => {
    const volume = area * (length - way);
    const ahead = open ? outsidePressure : ((gas.gamma - 1) * energy) / volume;
    // The enthalpy of air ahead: gamma times its internal energy.
    const warm = mass > 0 ? (gas.gamma * energy) / mass : heat * launcher.air.temperature;
    const density = open || mass <= 0 ? 0 : mass / volume;
    let leak = 0;
    let base = drive.base(way, speed, ahead, leak);
    for (let round = 0; gap > 0 && round < ROUNDS; round++) {
      const before = leak;
      leak =
        base.pressure >= ahead
          ? gap * orificeFlux(gas, base.pressure, base.density, ahead)
          : -gap * orificeFlux(gas, ahead, density, base.pressure);
      if (Math.abs(leak - before) <= SETTLED * Math.abs(leak)) break;
      base = drive.base(way, speed, ahead, leak);
    }
    const force = area * (base.pressure - ahead);
    const held = speed === 0 && Math.abs(force) <= ballFriction;
    const friction = ballFriction * Math.sign(speed === 0 ? force : speed);
    const acceleration = held ? 0 : (force - friction) / ballMass;
    const warmth = leak * (leak > 0 ? base.enthalpy : warm);
    return {
      base,
      ahead,
      change: [speed, acceleration, open ? 0 : leak, open ? 0 : warmth + ahead * area * speed],
    };
  };
}

/** One step of the classical fourth-order method. */
function rungeKutta(f: (y: State) => State, y: State, dt: number): State {
  const moved = (by: State, share: number) =>
    y.map((v, i) => v + share * dt * (by[i] as number)) as unknown as State;
  const k1 = f(y);
  const k2 = f(moved(k1, 0.5));
  const k3 = f(moved(k2, 0.5));
  const k4 = f(moved(k3, 1));
  const mean = k1.map(
    (k, i) => (k + 2 * (k2[i] as number) + 2 * (k3[i] as number) + (k4[i] as number)) / 6,
  ) as unknown as State;
  return moved(mean, 1);
}

/** The shortest part of a step after which something has happened that has by its end; by halving. */
function firstTime(dt: number, happened: (part: number) => boolean): number {
  let [low, high] = [0, dt];
  for (let round = 0; round < 50 && high > low; round++) {
    const middle = (low + high) / 2;
    if (happened(middle)) high = middle;
    else low = middle;
  }
  return high;
}
