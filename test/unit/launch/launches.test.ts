import { describe, expect, it } from 'vitest';
import { launchByConstantForce } from '../../../src/launch/constantForce';
import { launchConverged } from '../../../src/launch/converged';
import { launchByExpansion } from '../../../src/launch/expansion';
import { gasOf } from '../../../src/launch/gas';
import { launchByGasDynamics } from '../../../src/launch/gasDynamics';
import { launchByMomentum } from '../../../src/launch/momentum';
import type { Launch, Launcher } from '../../../src/launch/types';
import { LAUNCHER_B } from '../../validate/model/launchers';

const coarse = (launcher: Launcher) => launchByGasDynamics(launcher, { cells: 25 });
const MODELS = [launchByConstantForce, launchByMomentum, launchByExpansion, coarse];

const exitOf = ({ exit }: Launch) => {
  if (!exit.ok) throw new Error(exit.reason.message);
  return exit.value;
};

const everyNumberFinite = (launch: Launch) =>
  Object.values(launch.curve).every((values) => values.every(Number.isFinite));

describe('every model', () => {
  it.each(MODELS)('%o gives a whole curve that ends at the exit', (model) => {
    const launch = model(LAUNCHER_B);
    const { time, speed, seal } = exitOf(launch);
    const { curve } = launch;
    expect(everyNumberFinite(launch)).toBe(true);
    expect(new Set(Object.values(curve).map(({ length }) => length)).size).toBe(1);
    expect(curve.time.length).toBeGreaterThan(300);
    expect(curve.position[0]).toBe(LAUNCHER_B.startPosition);
    expect(curve.position.at(-1)).toBeCloseTo(LAUNCHER_B.barrelLength, 9);
    expect(curve.time.at(-1)).toBeCloseTo(time, 9);
    expect(curve.speed.at(-1)).toBeCloseTo(speed, 6);
    expect(seal.lead).toBeCloseTo(time - seal.time, 12);
    expect(seal.distance).toBeGreaterThan(0.0149);
  });

  it.each(MODELS)('%o refuses what is no launcher, and says what is wrong', (model) => {
    const wrong: readonly [Partial<Launcher>, RegExp][] = [
      [{ ballMass: 0 }, /ballMass is 0/],
      [{ barrelLength: Number.NaN }, /barrelLength is NaN/],
      [{ wallFriction: -1 }, /wallFriction is -1/],
      [{ gapDischarge: 1.2 }, /gapDischarge is 1.2/],
      [{ ballDiameter: 0.032 }, /wider than the bore/],
      [{ residualPressure: 2e5 }, /residual pressure/],
      [{ outsidePressure: 900, sealBurstPressure: 50 }, /opens the muzzle seal/],
      [{ startPosition: 0.01 }, /starts 10.0 mm/],
      [{ air: { temperature: -5, pressure: 1e5, humidity: 0.5 } }, /temperature/],
      [{ air: { temperature: 547, pressure: 1e5, humidity: 0.5 } }, /cannot hold so much vapour/],
    ];
    for (const [change, message] of wrong) {
      expect(() => model({ ...LAUNCHER_B, ...change })).toThrow(message);
    }
  });
});

describe('what slows the ball slows it by every model that knows of it', () => {
  const changes: readonly [string, Partial<Launcher>, readonly (typeof launchByMomentum)[]][] = [
    ['residual air', { residualPressure: 5000 }, MODELS.slice(1)],
    ['leak', { gapDischarge: 0.9 }, MODELS.slice(1)],
    ['ball friction', { ballFriction: 5 }, MODELS.slice(1)],
    ['entrance loss', { entranceLoss: 1.5 }, [launchByMomentum, coarse]],
    ['wall friction', { wallFriction: 0.05 }, [launchByMomentum, coarse]],
  ];
  it.each(changes)('%s', (_, change, models) => {
    for (const model of models) {
      const slower = exitOf(model({ ...LAUNCHER_B, ...change })).speed;
      expect(slower).toBeLessThan(exitOf(model(LAUNCHER_B)).speed - 0.1);
    }
  });

  it('a ball held by friction stays, and says so', () => {
    for (const model of MODELS.slice(1)) {
      const { exit } = model({ ...LAUNCHER_B, ballFriction: 200 });
      expect(exit.ok).toBe(false);
      if (!exit.ok) expect(exit.reason.message).toContain('it is 16 mm from');
    }
  });
});

describe('gas dynamics', () => {
  it('opens the seal by pressure with air left, by contact with next to none', () => {
    expect(exitOf(coarse(LAUNCHER_B)).seal.cause).toBe('pressure');
    const tight = { ...LAUNCHER_B, gapDischarge: 0, residualPressure: 5 };
    const { seal } = exitOf(coarse({ ...tight, sealBurstPressure: 40_000 }));
    expect(seal.cause).toBe('contact');
    expect(seal.distance).toBeCloseTo(0.015, 6);
  });

  it('a stronger seal opens later', () => {
    const leads = [0, 10_000, 40_000].map(
      (sealBurstPressure) => exitOf(coarse({ ...LAUNCHER_B, sealBurstPressure })).seal.lead,
    );
    expect(leads).toEqual([...leads].sort((a, b) => b - a));
    expect(new Set(leads).size).toBe(3);
  });

  it('sees the shock ahead of a ball in air, reflected from the seal', () => {
    const { profiles } = launchByGasDynamics(
      { ...LAUNCHER_B, residualPressure: 10_000, gapDischarge: 0 },
      { cells: 100 },
    );
    const ahead = profiles.flatMap(({ ball, shocks }) =>
      shocks.filter(({ position }) => position > ball),
    );
    expect(ahead.some(({ direction }) => direction === 'forwards')).toBe(true);
    expect(ahead.some(({ direction }) => direction === 'backwards')).toBe(true);
    for (const { position, pressure, velocity } of profiles) {
      expect(pressure.length).toBe(position.length);
      expect(velocity.length).toBe(position.length);
    }
  });

  it('tells its progress and stops when no longer wanted', () => {
    const shares: number[] = [];
    launchByGasDynamics(LAUNCHER_B, { cells: 20, onProgress: (share) => shares.push(share) });
    expect(shares.length).toBeGreaterThan(50);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    let asked = 0;
    const cancellation = {
      aborted: false,
      throwIfAborted() {
        if (++asked > 3) throw new Error('enough');
      },
    };
    expect(() => launchByGasDynamics(LAUNCHER_B, { cells: 20, cancellation })).toThrow('enough');
  });

  it('accounts for mass and energy with everything switched on', () => {
    const { imbalance } = launchByGasDynamics(
      { ...LAUNCHER_B, ballFriction: 3, residualPressure: 3000 },
      { cells: 30 },
    );
    expect(imbalance.mass).toBeLessThan(1e-12);
    expect(imbalance.energy).toBeLessThan(1e-12);
  });

  it('stands on a finer mesh, and says how well', () => {
    const shares: number[] = [];
    const launch = launchConverged(LAUNCHER_B, { onProgress: (share) => shares.push(share) });
    expect(launch.mesh.cells).toBe(100);
    expect(launch.mesh.speed).toBeLessThan(0.002 * exitOf(launch).speed);
    expect(launch.mesh.lead).toBeLessThan(5e-5);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    const stuck = launchConverged({ ...LAUNCHER_B, ballFriction: 200 });
    expect(stuck.exit.ok).toBe(false);
  });

  it('each further half metre of barrel gains less', () => {
    const lengths = [0.5, 1, 1.5, 2, 2.5];
    const speeds = lengths.map(
      (barrelLength) => exitOf(coarse({ ...LAUNCHER_B, barrelLength })).speed,
    );
    const gains = speeds.slice(1).map((speed, i) => speed - (speeds[i] as number));
    expect(gains).toEqual([...gains].sort((a, b) => b - a));
  });
});

it('moist air is a lighter gas, with a little less stiffness', () => {
  const dry = gasOf({ temperature: 293.15, pressure: 101_325, humidity: 0 });
  const moist = gasOf({ temperature: 293.15, pressure: 101_325, humidity: 1 });
  expect(dry.gamma).toBeCloseTo(1.4, 12);
  expect(dry.constant).toBeCloseTo(287.05287, 9);
  expect(moist.constant / dry.constant).toBeCloseTo(1.0088, 3);
  expect(moist.gamma).toBeLessThan(1.4);
  expect(moist.gamma).toBeGreaterThan(1.395);
});
