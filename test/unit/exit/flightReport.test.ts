import { describe, expect, it } from 'vitest';
import { isAvailable, type Reported } from '../../../src/core/estimate';
import { seededRandom } from '../../../src/core/random';
import { budgetExit } from '../../../src/exit/determineExit';
import { flightReadings } from '../../../src/exit/flightReport';
import type { ExitOptions } from '../../../src/exit/types';
import { binomialLimits } from '../../validate/statistics';
import { BALL, HIGH_SPEED, PHONE, type ShotClass, type Simulated, simulate } from './shots';

const OPTIONS: ExitOptions = { model: 'auto', robust: true, coverage: 0.95, seed: 1 };
const fittedTo = ({ points, shared }: Simulated, options: Partial<ExitOptions> = {}) => {
  const outcome = budgetExit(points, shared, { ...OPTIONS, ...options });
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value.report;
};
const readOff = (shot: Simulated, options: Partial<ExitOptions> = {}) =>
  flightReadings(fittedTo(shot, options).fitted, 0.95);
const found = (reported: Reported) => {
  if (!isAvailable(reported)) throw new Error(reported.unavailable.message);
  return reported;
};

/** A shot whose only uncertainties are those of its centres and of what is changed here. */
const exactly = (shot: ShotClass, change: Partial<Simulated['shared']> = {}): Simulated => {
  const simulated = simulate(shot, 3);
  const shared = {
    ...simulated.shared,
    scaleSources: [],
    clockSources: [],
    muzzleU: 0,
    ballDiameter: { value: BALL.diameter, u: 0 },
    ballMass: { value: BALL.mass, u: 0 },
    airDensity: { value: BALL.density, u: 0 },
    ...change,
  };
  return { ...simulated, shared };
};

describe('energy and momentum', () => {
  const slow = { ...HIGH_SPEED, velocity: 100, noise: [0.001, 0.001] as const };

  it('a ball of 1.9 g at 100 m/s has 9.5 J and 0.19 kg m/s', () => {
    const simulated = simulate(slow, 3);
    const { exitVelocity } = fittedTo(simulated);
    const { kineticEnergy, momentum } = readOff(simulated);
    const scale = exitVelocity.value / 100;
    expect(found(kineticEnergy).value / scale ** 2).toBeCloseTo(9.5, 4);
    expect(found(momentum).value / scale).toBeCloseTo(0.19, 6);
  });

  it('has twice the relative uncertainty of the speed in the energy, the mass beside it', () => {
    const plain = exactly(HIGH_SPEED);
    const { exitVelocity: v } = fittedTo(plain);
    const known = readOff(plain);
    expect(found(known.kineticEnergy).u / found(known.kineticEnergy).value).toBeCloseTo(
      (2 * v.u) / v.value,
      5,
    );
    // 1 % of the mass moves the drag to be expected as well; the film tells that better.
    const weighed = readOff(exactly(HIGH_SPEED, { ballMass: { value: BALL.mass, u: 1.9e-5 } }));
    const relative = (reported: Reported) => found(reported).u / found(reported).value;
    expect(relative(weighed.momentum)).toBeCloseTo(Math.hypot(0.01, v.u / v.value), 4);
    expect(relative(weighed.kineticEnergy)).toBeCloseTo(Math.hypot(0.01, (2 * v.u) / v.value), 4);
  });

  it('counts the drag that uniform motion leaves out', () => {
    const plain = exactly(HIGH_SPEED);
    const { exitVelocity: v } = fittedTo(plain, { model: 'uniform' });
    const { momentum } = readOff(plain, { model: 'uniform' });
    expect(found(momentum).u / BALL.mass / v.u).toBeCloseTo(1, 3);
  });
});

describe('drag', () => {
  it('is unavailable where the film tells nothing of it', () => {
    for (const shot of [
      simulate({ ...HIGH_SPEED, frames: 3 }, 3),
      simulate({ ...HIGH_SPEED, frames: 6, noise: [0.3, 0.3] }, 3),
    ]) {
      const { deceleration, dragCoefficient } = readOff(shot);
      expect(deceleration).toMatchObject({ unavailable: { code: 'dragNotSeen' } });
      expect(dragCoefficient).toMatchObject({ unavailable: { code: 'dragNotSeen' } });
    }
  });

  it('is unavailable where the flight speeds up', () => {
    const simulated = simulate({ ...HIGH_SPEED, dragCoefficient: -1.5 }, 3);
    expect(readOff(simulated).dragCoefficient).toMatchObject({
      unavailable: { code: 'dragNegative' },
    });
  });

  it('follows the coefficient, not what is known of it beforehand', () => {
    const low = found(readOff(exactly({ ...HIGH_SPEED, dragCoefficient: 0.1 })).dragCoefficient);
    expect(Math.abs(low.value - 0.1)).toBeLessThan(3 * low.u);
    expect(low.u).toBeLessThan(0.1);
  });

  it('has the deceleration k v^2 of its coefficient', () => {
    const { deceleration, dragCoefficient } = readOff(exactly(HIGH_SPEED));
    const k =
      (found(dragCoefficient).value * BALL.density * Math.PI * BALL.diameter ** 2) /
      (8 * BALL.mass);
    expect(found(deceleration).value / (k * 180 ** 2)).toBeCloseTo(1, 2);
  });
});

const SHOTS = 200;
/** Shots whose drag and loss at the muzzle are what is known of them beforehand. */
const asExpected =
  (shot: ShotClass) =>
  (seed: number): ShotClass => {
    const random = seededRandom(seed, 99);
    const displaced = (BALL.density * Math.PI * BALL.diameter ** 3) / (6 * BALL.mass);
    return {
      ...shot,
      loss: displaced * (0.5 + 0.6 * random.normal()),
      dragCoefficient: Math.max(0.05, 0.5 + 0.25 * random.normal()),
    };
  };

describe.each([
  ['high speed', asExpected(HIGH_SPEED)],
  ['phone', asExpected(PHONE)],
  ['poor centres', asExpected({ ...HIGH_SPEED, noise: [0.2, 0.3], frames: 20 })],
] as const)('over shots as expected, %s', (_name, shotOf) => {
  it('95 % intervals hold the truth 95 % of the time', () => {
    const hits = { kineticEnergy: 0, momentum: 0, deceleration: 0, dragCoefficient: 0 };
    const counts = { ...hits };
    for (let seed = 1; seed <= SHOTS; seed++) {
      const shot = shotOf(seed);
      const simulated = simulate(shot, seed);
      const { diameter, mass, density } = simulated.ball;
      const k = (density * Math.PI * diameter ** 2 * shot.dragCoefficient) / (8 * mass);
      const truth = {
        kineticEnergy: (mass * shot.velocity ** 2) / 2,
        momentum: mass * shot.velocity,
        deceleration: k * shot.velocity ** 2,
        dragCoefficient: shot.dragCoefficient,
      };
      const readings = readOff(simulated);
      for (const name of Object.keys(hits) as (keyof typeof hits)[]) {
        const reported = readings[name];
        if (!isAvailable(reported)) continue;
        counts[name]++;
        if (reported.interval[0] <= truth[name] && truth[name] <= reported.interval[1])
          hits[name]++;
      }
    }
    for (const name of Object.keys(hits) as (keyof typeof hits)[]) {
      expect(counts[name]).toBeGreaterThan(name === 'momentum' ? SHOTS - 1 : SHOTS / 10);
      const [low, high] = binomialLimits(hits[name], counts[name], 0.999);
      expect([name, low < 0.95 && high > 0.95, hits[name] / counts[name]]).toEqual([
        name,
        true,
        expect.any(Number),
      ]);
    }
  });
});
