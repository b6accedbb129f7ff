import type { Air } from './gas';
import { densityAt, type Gas, heatAtConstantPressure, soundSpeedAt } from './gas';
import { type Drive, launchBy } from './lumped';
import type { Launch, Launcher } from './types';

/**
 * Quasi-steady expansion from still air outside: the pressure at the ball's back is that of air expanded without loss
 * to the ball's speed, with no time for waves to run. Up to the sonic speed c* at the mouth the flow is steady, beyond it
 * a simple wave follows from the sonic mouth. The limit of the gas dynamics for a heavy ball, and above it for a
 * light one; by this limit a ball into a vacuum could reach sqrt((gamma + 1) / 2) 2 c0 / (gamma - 1).
 *
 * Taken for granted: no loss at the entrance, no friction of the air, air alike over the bore; air ahead and leak as in
 * `lumped.ts`. Entrance loss and wall friction of the launcher are not used. Source: Seigel, The Theory of High
 * Speed Guns, AGARDograph 91 (1965), infinite chambrage (from memory; algebra checked).
 */
export const launchByExpansion = (launcher: Launcher): Launch =>
  launchBy(launcher, (gas) =>
    expansionDrive(gas, launcher.air, reservoirPressure(gas, launcher.air)),
  );

/** Pressure, Pa, behind a ball of `speed`, m/s, that steady flow from a reservoir follows. */
export function reservoirPressure(
  gas: Gas,
  { pressure, temperature }: Air,
): (speed: number) => number {
  const { gamma } = gas;
  const c0 = soundSpeedAt(gas, temperature);
  const sonic = c0 * Math.sqrt(2 / (gamma + 1));
  const critical = pressure * (2 / (gamma + 1)) ** (gamma / (gamma - 1));
  return (speed) =>
    speed <= sonic
      ? pressure * (1 - ((gamma - 1) / 2) * (speed / c0) ** 2) ** (gamma / (gamma - 1))
      : critical *
        Math.max(0, (gamma + 1) / 2 - ((gamma - 1) / 2) * (speed / sonic)) **
          ((2 * gamma) / (gamma - 1));
}

/** The same in a barrel full of still air behind the ball, without an end: a simple wave (Seigel, as above). */
export function simpleWavePressure(
  gas: Gas,
  { pressure, temperature }: Air,
): (speed: number) => number {
  const { gamma } = gas;
  const c0 = soundSpeedAt(gas, temperature);
  return (speed) =>
    pressure * Math.max(0, 1 - ((gamma - 1) / 2) * (speed / c0)) ** ((2 * gamma) / (gamma - 1));
}

/** A drive by the base pressure alone; density and enthalpy at the ball by the isentrope from outside. */
export function expansionDrive(gas: Gas, air: Air, pressureAt: (speed: number) => number): Drive {
  const { gamma } = gas;
  const density = densityAt(gas, air.pressure, air.temperature);
  const enthalpy = heatAtConstantPressure(gas) * air.temperature;
  return {
    base(_way, speed) {
      const pressure = pressureAt(speed);
      const ratio = pressure / air.pressure;
      return {
        pressure,
        density: density * ratio ** (1 / gamma),
        enthalpy: enthalpy * ratio ** ((gamma - 1) / gamma),
      };
    },
  };
}
