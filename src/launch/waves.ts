/**
 * The single wave between gas and whatever bounds it, exact (Toro, Riemann Solvers and Numerical Methods for Fluid
 * Dynamics, 3rd ed. 2009, ch. 4 and 6.3). Velocities are counted from the boundary into the gas: moving in is positive.
 */
import type { Gas } from './gas';

/** Gas next to a boundary: density kg/m^3, velocity away from the boundary m/s, pressure Pa. */
export interface Facing {
  readonly density: number;
  readonly inward: number;
  readonly pressure: number;
}

export const soundOf = ({ gamma }: Gas, { density, pressure }: Facing): number =>
  Math.sqrt((gamma * pressure) / density);

/** How much faster inward the gas moves behind a wave that brings it to `pressure`: shock above its own, fan below. */
export function velocityGain(gas: Gas, facing: Facing, pressure: number): number {
  const { gamma } = gas;
  const { density, pressure: before } = facing;
  if (pressure > before) {
    const a = 2 / ((gamma + 1) * density);
    const b = ((gamma - 1) / (gamma + 1)) * before;
    return (pressure - before) * Math.sqrt(a / (pressure + b));
  }
  const ratio = (pressure / before) ** ((gamma - 1) / (2 * gamma));
  return ((2 * soundOf(gas, facing)) / (gamma - 1)) * (ratio - 1);
}

/** Pressure behind a wave that makes the gas `gain` faster inward: the inverse of `velocityGain`; 0 where it leaves a vacuum. */
export function pressureBehind(gas: Gas, facing: Facing, gain: number): number {
  const { gamma } = gas;
  const { density, pressure } = facing;
  if (gain > 0) {
    const a = 2 / ((gamma + 1) * density);
    const b = ((gamma - 1) / (gamma + 1)) * pressure;
    const square = gain * gain;
    return (
      pressure + (square + Math.sqrt(square * square + 4 * a * square * (pressure + b))) / (2 * a)
    );
  }
  const ratio = Math.max(0, 1 + ((gamma - 1) / 2) * (gain / soundOf(gas, facing)));
  return pressure * ratio ** ((2 * gamma) / (gamma - 1));
}

/** Density behind the same wave. */
export function densityBehind({ gamma }: Gas, facing: Facing, pressure: number): number {
  const ratio = pressure / facing.pressure;
  if (ratio <= 1) return facing.density * ratio ** (1 / gamma);
  const share = (gamma - 1) / (gamma + 1);
  return (facing.density * (ratio + share)) / (share * ratio + 1);
}

/**
 * Root of an increasing function between `low`, where it is not positive, and `high`, where it is not negative:
 * regula falsi with the Illinois change of weights, to 1e-13 of the bracket.
 */
export function rootBetween(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (fa >= 0) return a;
  if (fb <= 0) return b;
  const close = 1e-13 * Math.max(Math.abs(low), Math.abs(high));
  let side = 0;
  for (let i = 0; i < 100 && b - a > close; i++) {
    const x = (fa * b - fb * a) / (fa - fb);
    const fx = f(x);
    if (fx === 0) return x;
    if (fx < 0) {
      if (Math.abs(x - a) <= close) return x;
      [a, fa] = [x, fx];
      if (side === -1) fb /= 2;
      side = -1;
    } else {
      if (Math.abs(b - x) <= close) return x;
      [b, fb] = [x, fx];
      if (side === 1) fa /= 2;
      side = 1;
    }
  }
  return (fa * b - fb * a) / (fa - fb);
}
