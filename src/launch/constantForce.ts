import { success } from '../core/reason';
import { createCurve, SAMPLES } from './curve';
import { boreArea, checkLauncher } from './launcher';
import type { Launch, Launcher } from './types';

/**
 * Constant force p A on the ball into a perfect vacuum: v = sqrt(2 p A s / m), without bound.
 *
 * Taken for granted: the outside pressure stays at the ball's back however fast it goes; nothing ahead, not outside the
 * muzzle either; no air set in motion, no leak, no friction. Residual pressure and losses of the launcher are not used.
 * The seal opens when the ball touches it. Source: textbook; Ayars and Buchholtz, Am. J. Phys. 72 (2004) 961, eq. 1
 * and 2, who give it as the naive bound.
 */
export function launchByConstantForce(launcher: Launcher): Launch {
  checkLauncher(launcher);
  const { air, ballMass, ballDiameter, barrelLength, startPosition } = launcher;
  const acceleration = (air.pressure * boreArea(launcher)) / ballMass;
  const way = barrelLength - startPosition;
  const after = (s: number) => Math.sqrt((2 * s) / acceleration);
  const { curve, add } = createCurve();
  for (let i = 0; i <= SAMPLES; i++) {
    const time = (after(way) * i) / SAMPLES;
    add({
      ...{ time, acceleration, basePressure: air.pressure, frontPressure: 0, sealPressure: 0 },
      position: startPosition + 0.5 * acceleration * time ** 2,
      speed: acceleration * time,
    });
  }
  const touched = after(way - ballDiameter / 2);
  const seal = {
    ...{ time: touched, cause: 'contact' as const, distance: ballDiameter / 2 },
    lead: after(way) - touched,
  };
  return {
    curve,
    exit: success({ time: after(way), speed: acceleration * after(way), seal }),
  };
}
