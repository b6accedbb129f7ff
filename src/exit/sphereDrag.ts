import { airViscosity, soundSpeed } from '../core/air';
import { uniformU } from '../uncertainty/quantity';
import type { CoefficientPrior } from './drag';

/**
 * Drag coefficient of a smooth sphere short of its drag crisis, by Reynolds and Mach number (Loth, AIAA J. 46 (2008)
 * 2219; without compressibility it is a curve of Clift and Gauvin's form, 1970). Meant for Re from 45 to about 3e5; the branch
 * beyond Mach 1.45 is from memory, checked only for joining the other.
 */
export function subcriticalDrag(re: number, mach: number): number {
  const c =
    mach < 1.45
      ? (5 + 2 * Math.tanh(3 * Math.log(mach + 0.1))) / 3
      : 2.044 + 0.2 * Math.exp(-1.8 * Math.log(mach / 1.5) ** 2);
  const g = mach < 0.89 ? 1 - 1.525 * mach ** 4 : 1e-4 * (2 + 8 * Math.tanh(12.77 * (mach - 2.02)));
  const h = 1 - (0.258 * c) / (1 + 514 * g);
  return (h * 24 * (1 + 0.15 * re ** 0.687)) / re + (0.42 * c) / (1 + 42500 * g * re ** -1.16);
}

/** Half-widths about that curve, relative: what published curves and balls not quite smooth differ by. */
const SLOW_SPREAD = 0.15;
/** Compressible correlations differ by up to a quarter between Mach 0.6 and 1. */
const FAST_SPREAD = 0.25;
/** Past the crisis published curves fall to 0.08 (Clift, Grace and Weber 1978; Morrison 2010). */
const LOWEST = 0.07;

/** How far `x` is on the way from `from` to `to`, 0..1. */
const ramp = (x: number, from: number, to: number): number =>
  Math.min(1, Math.max(0, (x - from) / (to - from)));

/**
 * Least and greatest drag coefficient to be reckoned with. From Re = 1e5 on, the flow may be past the drag crisis, from
 * 3e5 on as well be as not: then anything from 0.07 to the curve of the rough side. The crisis fades as the ball nears
 * the speed of sound and is taken to be gone at Mach 0.85 (Miller and Bailey, J. Fluid Mech. 93 (1979) 449, from memory).
 */
export function dragBounds(re: number, mach: number): readonly [low: number, high: number] {
  const curve = subcriticalDrag(re, mach);
  const spread = SLOW_SPREAD + (FAST_SPREAD - SLOW_SPREAD) * ramp(mach, 0.5, 0.6);
  const crisis = ramp(Math.log(re), Math.log(1e5), Math.log(3e5)) * (1 - ramp(mach, 0.5, 0.85));
  const low = curve * (1 - spread);
  return [low - crisis * Math.max(0, low - LOWEST), curve * (1 + spread)];
}

/** What is known beforehand of the drag coefficient of a ball, `diameter` m, at `speed` m/s in air of `density` kg/m^3. */
export function ballDrag(
  { diameter, density, temperature }: { diameter: number; density: number; temperature: number },
  speed: number,
): CoefficientPrior {
  const re = (density * speed * diameter) / airViscosity(temperature);
  const [low, high] = dragBounds(re, speed / soundSpeed(temperature));
  return { value: (low + high) / 2, u: uniformU((high - low) / 2), spread: 'rectangular' };
}
