import { describe, expect, it } from 'vitest';
import { agreement } from '../../../src/compare/agreement';
import { closersOf } from '../../../src/compare/gap';
import { quantity } from '../../../src/core/quantity';
import { launchByConstantForce } from '../../../src/launch/constantForce';
import { launchByMomentum } from '../../../src/launch/momentum';
import { LAUNCHER_B } from '../../validate/model/launchers';

const of = (value: number, u: number, dof: number | null = null) => quantity(value, u, dof, 0.95);
const judged = (...args: Parameters<typeof agreement>) => {
  const outcome = agreement(...args);
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value;
};

describe('film against model', () => {
  it('zeta and E number by their definitions (ISO 13528:2015, 9.6 and 9.7, from memory)', () => {
    const { zeta, en, difference, verdict } = judged(of(203, 3), of(195, 4), 0.95);
    expect(zeta).toBeCloseTo(8 / 5, 12);
    // Expanded by 1.96 on both sides.
    expect(en).toBeCloseTo(8 / 5 / 1.96, 3);
    expect(difference.value).toBe(8);
    expect(difference.u).toBeCloseTo(5, 12);
    expect(verdict).toBe('agree');
  });

  it('few degrees of freedom widen the expanded uncertainty, not zeta', () => {
    const { zeta, en } = judged(of(203, 3, 2), of(195, 4, 2), 0.95);
    expect(zeta).toBeCloseTo(1.6, 12);
    // t of 95 % at 2 degrees of freedom: 4.303.
    expect(en).toBeCloseTo(1.6 / 4.303, 3);
  });

  it('what both share cancels', () => {
    expect(judged(of(203, 3), of(195, 4), 0.95, 0.5).zeta).toBeCloseTo(8 / Math.sqrt(13), 12);
  });

  it('judges the number', () => {
    expect(judged(of(100, 1), of(101, 1), 0.95).verdict).toBe('agree');
    expect(judged(of(100, 1), of(103.5, 1), 0.95)).toMatchObject({ verdict: 'questionable' });
    const apart = judged(of(100, 1), of(110, 1), 0.95);
    expect(apart.verdict).toBe('differ');
    expect(apart.zeta).toBeCloseTo(-7.07, 2);
  });

  it('needs an uncertainty to hold the difference against', () => {
    const outcome = agreement(of(100, 0), of(101, 0), 0.95);
    expect(outcome.ok ? '' : outcome.reason.code).toBe('noUncertainty');
  });
});

describe('what would close the gap', () => {
  it('by constant force: a mass that goes with the inverse square of the speed', () => {
    const { exit } = launchByConstantForce(LAUNCHER_B);
    const speed = exit.ok ? exit.value.speed : 0;
    const keys = ['ballMass', 'airPressure', 'residualPressure'] as const;
    const uncertainty = { ballMass: 1e-5, airPressure: 300 };
    const found = closersOf(launchByConstantForce, LAUNCHER_B, uncertainty, 1.05 * speed, keys);
    const [first, second, third] = found;
    // 9.3 % of the mass is 18 of its u, 10.25 % of the pressure 35 of its.
    expect(first?.key).toBe('ballMass');
    const mass = first?.needed.ok ? first.needed.value : null;
    // The speed is met to a hundredth of the gap, and so is the shift.
    const shift = 0.0019 / 1.05 ** 2 - 0.0019;
    expect((mass?.shift as number) / shift).toBeCloseTo(1, 1);
    expect(mass?.value).toBeCloseTo(0.0019 + (mass?.shift as number), 12);
    expect((mass?.inU as number) / (shift / 1e-5)).toBeCloseTo(1, 1);
    const pressure = second?.needed.ok ? second.needed.value : null;
    expect((pressure?.value as number) / 101_325).toBeCloseTo(1.1025, 2);
    // The model does not know of residual air.
    expect(third?.key).toBe('residualPressure');
    expect(third?.needed.ok).toBe(false);
  });

  it('both ways, from nothing, and not past what a launcher can be', () => {
    const tight = { ...LAUNCHER_B, gapDischarge: 0 };
    const exit = launchByMomentum(tight).exit;
    const target = (exit.ok ? exit.value.speed : 0) - 5;
    const closers = closersOf(launchByMomentum, tight, {}, target, [
      ...(['ballFriction', 'residualPressure'] as const),
    ]);
    for (const { key, needed } of closers) {
      expect(needed.ok).toBe(true);
      if (!needed.ok) continue;
      expect(needed.value.shift).toBeGreaterThan(0);
      const again = launchByMomentum({ ...tight, [key]: needed.value.value }).exit;
      expect(Math.abs((again.ok ? again.value.speed : 0) - target)).toBeLessThan(0.06);
    }
    // The ball cannot start behind the rear seal, however much faster that would make it.
    const [start] = closersOf(launchByConstantForce, tight, {}, 400, ['startPosition']);
    expect(start?.needed.ok === false && start.needed.reason.code).toBe('gapNotClosed');
  });
});
