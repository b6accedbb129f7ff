import { describe, expect, it } from 'vitest';
import { launchByConstantForce } from '../../../src/launch/constantForce';
import { launchConverged } from '../../../src/launch/converged';
import { launchByExpansion } from '../../../src/launch/expansion';
import { launchByGasDynamics } from '../../../src/launch/gasDynamics';
import { launchByMomentum } from '../../../src/launch/momentum';
import { predict } from '../../../src/launch/predict';
import { LAUNCHER_B } from '../../validate/model/launchers';

const OPTIONS = { coverage: 0.95 };

const done = <T>(outcome: { ok: true; value: T } | { ok: false; reason: { message: string } }) => {
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value;
};

describe('a prediction', () => {
  it('of constant force has the sensitivities of v = sqrt(2 p A s / m)', () => {
    const uncertainty = {
      ...{ ballMass: 1e-5, airPressure: 100, boreDiameter: 5e-5, barrelLength: 0.001 },
    };
    const { speed, warnings } = done(
      predict(launchByConstantForce, LAUNCHER_B, uncertainty, OPTIONS),
    );
    const v = speed.quantity.value;
    // Half of each relative uncertainty, the bore's twice as it stands squared.
    const parts = [
      v * (5e-5 / 0.031),
      (v * (0.001 / (1.4 - LAUNCHER_B.startPosition))) / 2,
      (v * (1e-5 / 0.0019)) / 2,
      (v * (100 / 101_325)) / 2,
    ];
    expect(speed.budget.map(({ source }) => source)).toEqual([
      'bore diameter',
      'barrel length',
      'ball mass',
      'air pressure',
    ]);
    speed.budget.forEach(({ contribution }, i) => {
      expect(contribution / (parts[i] as number)).toBeCloseTo(1, 4);
    });
    expect(speed.quantity.u).toBeCloseTo(Math.hypot(...parts), 3);
    expect(speed.quantity.interval[1] - v).toBeCloseTo(1.96 * speed.quantity.u, 2);
    expect(warnings).toEqual([]);
  });

  it('moves the pressure outside the muzzle with that of the air, but not that of an evacuated box', () => {
    const sensitivity = (outsidePressure: number) =>
      done(
        predict(
          launchByMomentum,
          { ...LAUNCHER_B, outsidePressure, gapDischarge: 0 },
          { airPressure: 100 },
          OPTIONS,
        ),
      ).lead.budget[0]?.sensitivity as number;
    expect(sensitivity(101_325)).not.toBeCloseTo(sensitivity(50_000), 9);
  });

  it('moves an input at the end of its range one way', () => {
    const tight = { ...LAUNCHER_B, gapDischarge: 0, ballFriction: 0 };
    const { speed } = done(
      predict(launchByExpansion, tight, { gapDischarge: 0.1, ballFriction: 1 }, OPTIONS),
    );
    expect(speed.budget.every(({ sensitivity }) => sensitivity < -0.5)).toBe(true);
    const never = predict(launchByExpansion, tight, { gapDischarge: 2 }, OPTIONS);
    expect(never.ok ? '' : never.reason.code).toBe('inputTooUncertain');
  });

  it('warns of an input it does not follow in a straight line', () => {
    // As the inverse square root of a mass known to two thirds: half as much bent as sloped.
    const { warnings } = done(
      predict(launchByConstantForce, LAUNCHER_B, { ballMass: 0.0012, airPressure: 300 }, OPTIONS),
    );
    expect(warnings.map(({ code }) => code)).toEqual(['predictionBent']);
    expect(warnings[0]?.message).toContain('ball mass');
  });

  it('carries the mesh of the gas dynamics, and is told of its progress', () => {
    const shares: number[] = [];
    const { speed, launch } = done(
      predict(
        launchConverged,
        { ...LAUNCHER_B, gapDischarge: 0 },
        { ballMass: 1e-5 },
        {
          ...OPTIONS,
          varied: (launcher) => launchByGasDynamics(launcher, { cells: 30 }),
          onProgress: (share) => shares.push(share),
        },
      ),
    );
    expect(shares).toEqual([1]);
    const mesh = speed.budget.find(({ source }) => source === 'mesh');
    expect(mesh?.contribution).toBeCloseTo((launch.mesh?.speed as number) / Math.sqrt(3), 12);
  });

  it('says so where the ball does not leave', () => {
    const stuck = predict(launchByMomentum, { ...LAUNCHER_B, ballFriction: 200 }, {}, OPTIONS);
    expect(stuck.ok ? '' : stuck.reason.code).toBe('ballDoesNotLeave');
  });
});
