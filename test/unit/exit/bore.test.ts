import { expect, it } from 'vitest';
import { isAvailable } from '../../../src/core/estimate';
import { seededRandom } from '../../../src/core/random';
import { boreAcceleration } from '../../../src/exit/bore';
import { budgetExit } from '../../../src/exit/determineExit';
import { moveTo, nowhere, placesAt } from '../../../src/exit/motion';
import { binomialLimits } from '../../validate/statistics';
import { HIGH_SPEED, simulate } from './shots';

const ZONE = { shape: 'straight', length: 0.075 } as const;

it('leaves the bore at the muzzle plane with the exit speed, and has the right derivatives before it', () => {
  const theta = Float64Array.of(0.001, 180, 0.1, 0.01, 15_000);
  const at = (t: number, by = 0, j = 0) => {
    const moved = nowhere();
    moveTo('boreAndFlight', theta.with(j, (theta[j] as number) + by), ZONE, t, moved);
    return moved;
  };
  expect(at(0.001)).toMatchObject({ s: 0, v: 180 });
  // 15 000 m/s^2 for 0.2 ms: 3 m/s slower, 36 mm less 0.3 mm behind.
  expect(at(0.0008).v).toBeCloseTo(177, 9);
  expect(at(0.0008).s).toBeCloseTo(-0.0357, 9);
  const places = new Float64Array(1);
  placesAt('boreAndFlight', theta, ZONE, Float64Array.of(0.0008), places);
  expect(places[0]).toBe(at(0.0008).s);
  const slope = (j: number, by: number) => (at(0.0008, by, j).s - at(0.0008, -by, j).s) / (2 * by);
  expect(at(0.0008).byT0).toBeCloseTo(slope(0, 1e-8), 3);
  expect(at(0.0008).byV0).toBeCloseTo(slope(1, 1e-3), 9);
  expect(at(0.0008).byBore).toBeCloseTo(slope(4, 1), 12);
});

/** A shot with six more frames in the bore, the ball accelerated so. */
function shoot(seed: number, acceleration: number) {
  const simulated = simulate(HIGH_SPEED, seed);
  const random = seededRandom(seed, 41);
  const inBore = Array.from({ length: 6 }, (_, i) => {
    const frame = 19 - i;
    const frameTime = frame / HIGH_SPEED.rate;
    const tau = frameTime - simulated.exitTime;
    const s = HIGH_SPEED.velocity * tau + (acceleration * tau * tau) / 2;
    const alongU = 0.08;
    const along = s / simulated.scale + alongU * random.normal();
    return { frame, frameTime, line: 100, along, alongU, timeU: 0 };
  }).filter(({ along }) => along < 0);
  const points = [...inBore, ...simulated.points];
  return budgetExit(
    points,
    { ...simulated.shared, muzzleU: 0.05 },
    {
      model: 'boreAndFlight',
      robust: true,
      coverage: 0.95,
      seed,
    },
  );
}

it('is refused where the air outside could not do it', () => {
  for (const acceleration of [-30_000, 90_000]) {
    const outcome = shoot(3, acceleration);
    if (!outcome.ok) throw new Error(outcome.reason.message);
    expect(boreAcceleration(outcome.value.report.fitted, 0.95)).toMatchObject({
      unavailable: { code: 'boreImplausible' },
    });
  }
});

it('95 % intervals hold the true acceleration and exit speed at least as often', () => {
  const SHOTS = 100;
  const hits = { bore: 0, speed: 0 };
  for (let seed = 1; seed <= SHOTS; seed++) {
    const outcome = shoot(seed, 15_000);
    if (!outcome.ok) throw new Error(outcome.reason.message);
    const { fitted, exitVelocity, fit } = outcome.value.report;
    expect(fit.parameters.map(({ name }) => name)).toContain('boreAcceleration');
    const found = boreAcceleration(fitted, 0.95);
    if (!isAvailable(found)) continue;
    if (found.interval[0] <= 15_000 && 15_000 <= found.interval[1]) hits.bore++;
    if (exitVelocity.interval[0] <= 180 && 180 <= exitVelocity.interval[1]) hits.speed++;
  }
  for (const count of [hits.bore, hits.speed]) {
    expect(binomialLimits(count, SHOTS, 0.999)[1]).toBeGreaterThan(0.95);
  }
});
