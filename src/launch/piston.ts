/**
 * The ball as a piston between two columns of gas, with a gap around it through which gas leaks.
 *
 * The gap holds no gas of its own. What leaves the gas on one side enters that on the other with the same mass and the
 * same total enthalpy as seen from the ball, well mixed over the bore, at most at the speed of sound from the ball. The
 * force on the ball is the difference of the momentum fluxes on its two sides, so mass, momentum and energy are kept.
 */

import { atWall } from './boundary';
import { type Gas, type GasState, orificeFlux } from './gas';
import { densityBehind, type Facing, pressureBehind, rootBetween, velocityGain } from './waves';

/** Share of the bore that the gap has, times its coefficient of discharge. */
export type GapShare = number;

/** What passes the ball, per area of the bore. */
export interface Passage {
  /** Leak past the ball, positive forwards, kg/(s m^2). */
  readonly leak: number;
  /** Pressure behind and ahead at the ball, Pa. */
  readonly basePressure: number;
  readonly frontPressure: number;
  /** Momentum fluxes on both sides as the ball feels them, Pa. */
  readonly push: number;
  readonly hold: number;
  /** Total enthalpy the leak carries out of the gas behind, as seen from the barrel, W/m^2. */
  readonly carried: number;
}

/** Passage between the gas behind and ahead, or a given pressure there, Pa; the ball moves at `speed`, m/s. */
export function passBall(
  gas: Gas,
  behind: GasState,
  ahead: GasState | number,
  speed: number,
  gap: GapShare,
): Passage {
  const rear: Facing = { ...behind, inward: -behind.velocity };
  const front: Facing | number =
    typeof ahead === 'number' ? ahead : { ...ahead, inward: ahead.velocity };
  const basePressure = atWall(gas, rear, -speed).pressure;
  const frontPressure = typeof front === 'number' ? front : atWall(gas, front, speed).pressure;
  const forwards = basePressure >= frontPressure;
  if (gap === 0 || (typeof front === 'number' && !forwards)) {
    // No gas is known of that could leak backwards.
    const push = basePressure;
    return { leak: 0, basePressure, frontPressure, push, hold: frontPressure, carried: 0 };
  }
  const { leak, from, into } =
    forwards || typeof front === 'number'
      ? leakBetween(gas, rear, front, -speed, gap)
      : leakBetween(gas, front, rear, speed, gap);
  const direction = forwards ? 1 : -1;
  const [back, fore] = forwards ? [from, into] : [into, from];
  const rate = direction * leak;
  const enthalpy = (gas.gamma / (gas.gamma - 1)) * (back.pressure / back.density);
  const backSpeed = -back.inward;
  return {
    leak: rate,
    basePressure: back.pressure,
    frontPressure: fore.pressure,
    push: back.pressure + rate * backSpeed,
    hold: fore.pressure + rate * fore.inward,
    carried: rate * (enthalpy + 0.5 * backSpeed ** 2),
  };
}

/**
 * Leak from one side into the other, kg/(s m^2), and the states at the ball. The wall's speed is counted into the gas
 * it leaves. The flux that the gap passes falls as the leak grows, since that lowers one pressure and raises the other.
 */
function leakBetween(
  gas: Gas,
  upstream: Facing,
  downstream: Facing | number,
  wallSpeed: number,
  gap: GapShare,
): { leak: number; from: Facing; into: Facing } {
  const at = (leak: number) => {
    const from = drained(gas, upstream, wallSpeed, leak);
    const relative = leak / from.density;
    const heat = gas.gamma / (gas.gamma - 1);
    const enthalpy = (heat * from.pressure) / from.density + 0.5 * relative ** 2;
    const into = fed(gas, downstream, -wallSpeed, leak, enthalpy);
    return { from, into };
  };
  const passed = (leak: number) => {
    const { from, into } = at(leak);
    return gap * orificeFlux(gas, from.pressure, from.density, into.pressure);
  };
  const most = passed(0);
  const leak = most === 0 ? 0 : rootBetween((rate) => rate - passed(rate), 0, most);
  return { leak, ...at(leak) };
}

/** Gas at a wall through which `leak` leaves it. */
function drained(gas: Gas, facing: Facing, wallSpeed: number, leak: number): Facing {
  let state = atWall(gas, facing, wallSpeed);
  // The speed through the gap is a few per cent of that of sound: each round gains two digits.
  for (let round = 0; leak > 0 && round < 12; round++) {
    const before = state.pressure;
    const inward = wallSpeed - leak / state.density;
    const pressure = pressureBehind(gas, facing, inward - facing.inward);
    state = { inward, pressure, density: densityBehind(gas, facing, pressure) };
    if (Math.abs(pressure - before) <= 1e-13 * before) break;
  }
  return state;
}

/** Gas at a wall through which `leak` of the given total enthalpy, J/kg, as seen from the wall, enters it. */
function fed(
  gas: Gas,
  facing: Facing | number,
  wallSpeed: number,
  leak: number,
  enthalpy: number,
): Facing {
  const { gamma } = gas;
  // Speed from the wall of a flux of this enthalpy at a pressure: mass flux = density times speed.
  const speedAt = (pressure: number) => {
    const a = (gamma - 1) * leak;
    return (
      (2 * a * enthalpy) /
      (gamma * pressure + Math.sqrt((gamma * pressure) ** 2 + 2 * a * a * enthalpy))
    );
  };
  const mixed = (pressure: number): Facing => {
    const relative = speedAt(pressure);
    const inward = wallSpeed + relative;
    return { inward, pressure, density: relative > 0 ? leak / relative : 1 };
  };
  if (typeof facing === 'number') return mixed(facing);
  if (leak === 0) return atWall(gas, facing, wallSpeed);
  const sonic = Math.sqrt((2 * (gamma - 1) * enthalpy) / (gamma + 1));
  const least = (leak * sonic) / gamma;
  const excess = (pressure: number) =>
    facing.inward + velocityGain(gas, facing, pressure) - wallSpeed - speedAt(pressure);
  let most = Math.max(2 * least, pressureBehind(gas, facing, wallSpeed + sonic - facing.inward));
  while (excess(most) < 0) most *= 2;
  return mixed(excess(least) >= 0 ? least : rootBetween(excess, least, most));
}
