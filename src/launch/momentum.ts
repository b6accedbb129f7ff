import { densityAt, type Gas, heatAtConstantPressure } from './gas';
import { boreArea } from './launcher';
import { type Drive, launchBy } from './lumped';
import type { Launch, Launcher } from './types';

/**
 * Momentum of the ball and the column of air that follows it: d/dt[(m + rho A s) v] = p A, which gives
 * v = sqrt(p A (2 m s + rho A s^2)) / (m + rho A s) and never exceeds sqrt(p / rho).
 *
 * Taken for granted: air of the outside density picked up at once to the ball's speed. It is not squeezed and does not
 * expand, so the ceiling belongs to the model and is no bound of gas dynamics. Added to the published equation, each by
 * its own term: air ahead (uniform, adiabatic), leak past the ball (leaving the column at the ball's speed), loss at the
 * entrance, friction of column and ball on the barrel. Source: Ayars and Buchholtz, Am. J. Phys. 72 (2004) 961.
 */
export const launchByMomentum = (launcher: Launcher): Launch =>
  launchBy(launcher, (gas) => momentumDrive(launcher, gas));

function momentumDrive(launcher: Launcher, gas: Gas): Drive {
  const { air, ballMass, ballFriction, boreDiameter, wallFriction, entranceLoss } = launcher;
  const area = boreArea(launcher);
  const density = densityAt(gas, air.pressure, air.temperature);
  const enthalpy = heatAtConstantPressure(gas) * air.temperature;
  return {
    base(way, speed, ahead, leak) {
      const column = density * area * way;
      const dynamic = 0.5 * density * speed * Math.abs(speed);
      // Shear f / 8 rho v^2 on the wall of the column, in pressure over the bore: f s / D times the dynamic pressure.
      const losses = dynamic * (entranceLoss + (wallFriction * way) / boreDiameter);
      const friction = (ballFriction / area) * Math.sign(speed);
      const driving = air.pressure - ahead - losses - friction - density * speed ** 2;
      const acceleration = (area * driving - leak * speed) / (ballMass + column);
      // What accelerates the ball alone.
      return { density, enthalpy, pressure: ahead + friction + (ballMass * acceleration) / area };
    },
  };
}

/** Speed of the published equation after a way `s`, m, without its additions, m/s: p Pa, rho kg/m^3, A m^2, m kg. */
export const momentumSpeed = (
  p: number,
  rho: number,
  area: number,
  mass: number,
  s: number,
): number => Math.sqrt(p * area * (2 * mass * s + rho * area * s * s)) / (mass + rho * area * s);
