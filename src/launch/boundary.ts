/** What ends a column of gas at rest: a wall or an opening to air at rest. */
import { densityAt, type Gas, heatAtConstantPressure, soundSpeedAt } from './gas';
import {
  densityBehind,
  type Facing,
  pressureBehind,
  rootBetween,
  soundOf,
  velocityGain,
} from './waves';

/** An opening to still air. */
export interface Opening {
  /** Pa */
  readonly pressure: number;
  /** K */
  readonly temperature: number;
  /** Loss of total pressure on the way in, in units of half density times velocity squared there. */
  readonly entranceLoss: number;
}

/** State of the gas at a wall that moves inward at `speed`, m/s (a piston; 0: a wall at rest). */
export function atWall(gas: Gas, facing: Facing, speed: number): Facing {
  const pressure = pressureBehind(gas, facing, speed - facing.inward);
  return { pressure, inward: speed, density: densityBehind(gas, facing, pressure) };
}

/** Static state of air drawn in through an opening, by its speed there. */
interface Entrance {
  /** Sonic speed at the mouth, the fastest there is, m/s. */
  readonly fastest: number;
  pressure(speed: number): number;
  density(speed: number): number;
}

/**
 * Air from rest to the mouth: total temperature kept, total pressure less by the loss. Mass flux grows with speed up
 * to a greatest value; past it (a mouth with loss chokes at its narrowest, before the barrel runs at the speed of
 * sound) flux and total temperature stay, so the loss grows.
 */
function entranceOf(gas: Gas, { pressure, temperature, entranceLoss }: Opening): Entrance {
  const { gamma, constant } = gas;
  const heat = heatAtConstantPressure(gas);
  const fastest = soundSpeedAt(gas, temperature) * Math.sqrt(2 / (gamma + 1));
  const temperatureAt = (speed: number) => temperature - speed ** 2 / (2 * heat);
  const withLoss = (speed: number) => {
    const cooled = temperatureAt(speed);
    const ratio = (cooled / temperature) ** (gamma / (gamma - 1));
    return (pressure * ratio) / (1 + (entranceLoss * speed ** 2) / (2 * constant * cooled));
  };
  const flux = (speed: number) => (withLoss(speed) * speed) / (constant * temperatureAt(speed));
  const turning = entranceLoss === 0 ? fastest : maximumAt(flux, fastest);
  const greatest = flux(turning);
  const pressureAt = (speed: number) =>
    speed <= turning ? withLoss(speed) : (greatest * constant * temperatureAt(speed)) / speed;
  return {
    fastest,
    pressure: pressureAt,
    density: (speed) => densityAt(gas, pressureAt(speed), temperatureAt(speed)),
  };
}

/** Where a function with one maximum on 0..high has it: golden section. */
function maximumAt(f: (x: number) => number, high: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [0, high];
  while (b - a > 1e-9 * high) {
    const step = share * (b - a);
    if (f(b - step) > f(a + step)) b = a + step;
    else a = b - step;
  }
  return (a + b) / 2;
}

/** State of the gas in the plane of an opening. */
export type OpenEnd = (facing: Facing) => Facing;

/**
 * An opening in its plane: air drawn in from rest, at most at the speed of sound, or gas let out against the outside
 * pressure, at most at its own speed of sound unless it comes faster already. Quasi-steady: no mass of air before the
 * mouth is set in motion.
 */
export function openEnd(gas: Gas, opening: Opening): OpenEnd {
  const entrance = entranceOf(gas, opening);
  return (facing) => {
    const atRest = pressureBehind(gas, facing, -facing.inward);
    return opening.pressure > atRest
      ? drawnIn(gas, facing, entrance)
      : letOut(gas, facing, opening.pressure);
  };
}

function drawnIn(gas: Gas, facing: Facing, entrance: Entrance): Facing {
  const excess = (speed: number) =>
    speed - facing.inward - velocityGain(gas, facing, entrance.pressure(speed));
  const inward = rootBetween(excess, 0, entrance.fastest);
  return { inward, pressure: entrance.pressure(inward), density: entrance.density(inward) };
}

function letOut(gas: Gas, facing: Facing, outside: number): Facing {
  const { gamma } = gas;
  const sound = soundOf(gas, facing);
  if (outside > facing.pressure) {
    // A shock from the opening into the gas; it is swept out again where the gas comes fast enough.
    const ratio = outside / facing.pressure;
    const shock =
      facing.inward + sound * Math.sqrt(((gamma + 1) * ratio + gamma - 1) / (2 * gamma));
    if (shock <= 0) return facing;
  } else if (facing.inward <= -sound) return facing;
  const inward = facing.inward + velocityGain(gas, facing, outside);
  const density = densityBehind(gas, facing, outside);
  if (inward > -Math.sqrt((gamma * outside) / Math.max(density, Number.MIN_VALUE))) {
    return { inward, density, pressure: outside };
  }
  const sonic = (((2 * sound) / (gamma - 1) - facing.inward) * (gamma - 1)) / (gamma + 1);
  const pressure = facing.pressure * (sonic / sound) ** ((2 * gamma) / (gamma - 1));
  return { inward: -sonic, pressure, density: densityBehind(gas, facing, pressure) };
}
