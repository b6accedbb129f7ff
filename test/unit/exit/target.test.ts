import { describe, expect, it } from 'vitest';
import { isAvailable, type Reported } from '../../../src/core/estimate';
import { seededRandom } from '../../../src/core/random';
import { failure, success } from '../../../src/core/reason';
import { budgetExit } from '../../../src/exit/determineExit';
import { firstAtTarget, targetReport } from '../../../src/exit/target';
import type { ExitOptions, FlightPoint } from '../../../src/exit/types';
import { binomialLimits } from '../../validate/statistics';
import { BALL, fly, HIGH_SPEED, type ShotClass, type Simulated, simulate } from './shots';

const nothing = success<readonly FlightPoint[]>([]);
const fittedTo = ({ points, shared }: Simulated, model: ExitOptions['model'] = 'auto') => {
  const outcome = budgetExit(points, shared, { model, robust: true, coverage: 0.95, seed: 1 });
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value.report;
};
const found = (reported: Reported) => {
  if (!isAvailable(reported)) throw new Error(reported.unavailable.message);
  return reported;
};

/** True time after the exit, s, and speed, m/s, at a distance. */
function truthAt(shot: ShotClass, ball: typeof BALL, distance: number) {
  let [low, high] = [0, (3 * distance) / shot.velocity];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if ((fly(shot, [middle], ball)[0] as number) < distance) low = middle;
    else high = middle;
  }
  const [a = 0, b = 0] = fly(shot, [low - 1e-5, low + 1e-5], ball);
  return { time: low, speed: (b - a) / 2e-5 };
}

/** Centres past a target, `speed` m/s there and slowing by drag, from the first frame a ball's radius clear of it. */
function leave(
  shot: ShotClass,
  { exitTime, scale, ball }: Simulated,
  distance: number,
  arrival: number,
  speed: number,
  frames: number,
  seed: number,
): FlightPoint[] {
  const random = seededRandom(seed, 31);
  const first = Math.ceil((exitTime + arrival + 0.02 / speed) * shot.rate);
  return Array.from({ length: frames }, (_, i) => {
    const frameTime = (first + i) / shot.rate;
    const [s = 0] = fly(
      { ...shot, velocity: speed, loss: 0 },
      [frameTime - exitTime - arrival],
      ball,
    );
    const alongU = shot.noise[1];
    return {
      frame: first + i,
      frameTime,
      line: 100,
      along: (distance + s) / scale + alongU * random.normal(),
      alongU,
      timeU: 0,
    };
  });
}

describe('a target out of view', () => {
  const simulated = simulate(HIGH_SPEED, 3);
  const { fitted, exitVelocity, exitTime } = fittedTo(simulated);
  const at = (value: number, u = 0) => targetReport(fitted, nothing, { value, u }, 0.95);

  it('at the muzzle plane is the exit', () => {
    const { time, speedBefore } = at(1e-9);
    expect(found(speedBefore).value).toBeCloseTo(exitVelocity.value, 1);
    expect(found(time).value).toBeCloseTo(exitTime.value, 7);
  });

  it('is known the less, the farther it is', () => {
    const us = [0.2, 0.5, 1, 2, 4].map((d) => found(at(d).speedBefore).u);
    for (let i = 1; i < us.length; i++) expect(us[i]).toBeGreaterThan(us[i - 1] as number);
    expect(us[4] as number).toBeGreaterThan(5 * (us[0] as number));
  });

  it('slows by exp(-k s)', () => {
    const [near, far] = [found(at(1).speedBefore).value, found(at(2).speedBefore).value];
    const k = fitted.choice.best.fit.theta[2] as number;
    expect(Math.log(near / far)).toBeCloseTo(k, 2);
  });

  it('a distance known to 1 cm is worth that over the speed in the time', () => {
    const [sharp, vague] = [found(at(0.5).time), found(at(0.5, 0.01).time)];
    const added = Math.sqrt(vague.u ** 2 - sharp.u ** 2);
    expect((added * found(at(0.5).speedBefore).value) / 0.01).toBeCloseTo(1, 3);
  });

  it('says that nothing is seen past it, and passes other reasons on', () => {
    const { speedAfter, energyGivenUp } = at(0.5);
    expect(speedAfter).toMatchObject({ unavailable: { code: 'nothingAfterTarget' } });
    expect(energyGivenUp).toMatchObject({ unavailable: { code: 'nothingAfterTarget' } });
    const why = failure('someReason', 'It says why.');
    expect(targetReport(fitted, why, { value: 0.5, u: 0 }, 0.95).speedAfter).toMatchObject({
      unavailable: { code: 'someReason' },
    });
  });

  it('says so where the chosen model never gets there', () => {
    const steady = fittedTo(simulated, 'constantAcceleration').fitted;
    const report = targetReport(steady, nothing, { value: 50, u: 0 }, 0.95);
    expect(report.time).toMatchObject({ unavailable: { code: 'targetNotReached' } });
    expect(report.speedBefore).toMatchObject({ unavailable: { code: 'targetNotReached' } });
  });

  it('says so where what lies past it does not move away', () => {
    const coming = leave(HIGH_SPEED, simulated, 0.2, 0.001, 60, 6, 1).map((point) => ({
      ...point,
      along: 0.4 / simulated.scale - point.along,
    }));
    const report = targetReport(fitted, success(coming), { value: 0.2, u: 0 }, 0.95);
    expect(report.speedAfter).toMatchObject({ unavailable: { code: 'notLeavingTarget' } });
  });
});

describe('energy given up', () => {
  it('has the scale common to both speeds in proportion to itself', () => {
    const simulated = simulate({ ...HIGH_SPEED, noise: [0.001, 0.001] }, 3);
    const { time } = truthAt(HIGH_SPEED, simulated.ball, 0.25);
    const after = leave({ ...HIGH_SPEED, noise: [0.001, 0.001] }, simulated, 0.25, time, 120, 8, 1);
    const givenUp = (scaleSources: Simulated['shared']['scaleSources']) => {
      const shared = { ...simulated.shared, scaleSources };
      const { fitted } = fittedTo({ ...simulated, shared });
      const report = targetReport(fitted, success(after), { value: 0.25, u: 0 }, 0.95);
      return found(report.energyGivenUp);
    };
    const sharp = givenUp([]);
    const vague = givenUp([{ source: 'known length', type: 'B', u: 0.01, dof: null }]);
    const added = Math.sqrt(vague.u ** 2 - sharp.u ** 2);
    // 1 % of scale is 2 % of any energy, and of the difference of two measured by it; and 1 % of the distance at which
    // the flight is read, whose energy falls by 2 k a metre.
    const k =
      (BALL.density * Math.PI * BALL.diameter ** 2 * HIGH_SPEED.dragCoefficient) / (8 * BALL.mass);
    expect(added / vague.value / (0.02 * (1 + k * 0.25))).toBeCloseTo(1, 2);
  });
});

const SHOTS = 200;
describe.each([
  ['just past the view', 0.3],
  ['a metre away', 1],
] as const)('over shots as expected, a target %s', (_name, distance) => {
  it('95 % intervals hold the truth 95 % of the time', () => {
    const hits = { time: 0, speedBefore: 0, speedAfter: 0, energyGivenUp: 0 };
    for (let seed = 1; seed <= SHOTS; seed++) {
      const random = seededRandom(seed, 99);
      const displaced = (BALL.density * Math.PI * BALL.diameter ** 3) / (6 * BALL.mass);
      const shot = {
        ...HIGH_SPEED,
        loss: displaced * (0.5 + 0.6 * random.normal()),
        dragCoefficient: Math.max(0.05, 0.5 + 0.25 * random.normal()),
      };
      const simulated = simulate(shot, seed);
      const stated = { value: distance, u: 0.002 };
      const truly = distance + stated.u * random.normal();
      const { time, speed } = truthAt(shot, simulated.ball, truly);
      const leaves = 0.6 * speed;
      const after = leave(shot, simulated, truly, time, leaves, 8, seed);
      const report = targetReport(fittedTo(simulated).fitted, success(after), stated, 0.95);
      const truth = {
        time: simulated.exitTime + time,
        speedBefore: speed,
        speedAfter: leaves,
        energyGivenUp: (simulated.ball.mass * (speed ** 2 - leaves ** 2)) / 2,
      };
      for (const name of Object.keys(hits) as (keyof typeof hits)[]) {
        const { interval } = found(report[name]);
        if (interval[0] <= truth[name] && truth[name] <= interval[1]) hits[name]++;
      }
    }
    for (const [name, count] of Object.entries(hits)) {
      const [low, high] = binomialLimits(count, SHOTS, 0.999);
      expect([name, count, low < 0.95 && high > 0.95]).toEqual([name, count, true]);
    }
  });
});

it('a target is met where the leading point reaches it, and what follows in time is past it', () => {
  // Centres at these distances, a ball of 15 mm radius, a target at 0.1 m from which it bounces back.
  expect(firstAtTarget([0.02, 0.05, 0.08, 0.09, 0.06, 0.03], 0.1, 0.015)).toBe(3);
  expect(firstAtTarget([0.02, 0.05, 0.08], 0.1, 0.015)).toBe(3);
});
