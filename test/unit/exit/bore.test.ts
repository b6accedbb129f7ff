import { expect, it } from 'vitest';
import { isAvailable, type Quantity } from '../../../src/core/estimate';
import { seededRandom } from '../../../src/core/random';
import { median } from '../../../src/core/statistics';
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

const TRUE = 15_000;

/** A wall the bore is seen through, as a share of the distance from 300 px past the muzzle plane; none: 0. */
const WALL = 0.002;

/** A shot with frames in the bore, the ball accelerated so, seen through a wall that is known to `wall`. */
function shoot(
  seed: number,
  acceleration: number,
  { wall = 0, off = () => 0 }: { wall?: number; off?: (frame: number) => number } = {},
) {
  const shot = { ...HIGH_SPEED, bore: { frames: 8, acceleration } };
  const simulated = simulate(shot, seed);
  const amount = seededRandom(seed, 43).normal();
  const points = simulated.points.map((point) => {
    const aside = point.along < 0 ? wall * (point.along - 300) : 0;
    const along = point.along + amount * aside + off(point.frame);
    return { ...point, along, shifts: [aside] };
  });
  const shared = { ...simulated.shared, shiftSources: [{ source: 'wall', u: 1, unit: '1' }] };
  const options = { model: 'boreAndFlight', robust: true, coverage: 0.95, seed } as const;
  const outcome = budgetExit(points, shared, options);
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value.report;
}

const accelerationIn = ({ fitted }: ReturnType<typeof shoot>): Quantity => {
  const found = boreAcceleration(fitted, 0.95);
  if (!isAvailable(found)) throw new Error(found.unavailable.message);
  return found;
};

it('is refused, and warned of, where the air outside could not do it', () => {
  for (const acceleration of [-30_000, 90_000]) {
    const report = shoot(3, acceleration);
    expect(boreAcceleration(report.fitted, 0.95)).toMatchObject({
      unavailable: { code: 'boreImplausible' },
    });
    expect(report.warnings).toContainEqual(expect.objectContaining({ code: 'boreImplausible' }));
  }
});

it('stands where only noise has it beyond belief', () => {
  // 0.1 m/s^2 on such a film: as often below nothing as above.
  const found = Array.from({ length: 20 }, (_, i) => accelerationIn(shoot(i + 1, 0.1)));
  expect(found.some(({ value }) => value < 0)).toBe(true);
});

it('does without a centre in the bore that is grossly wrong', () => {
  const clean = shoot(5, TRUE);
  const wrong = (clean.fitted.flight.points[0]?.frame ?? 0) + 2;
  const report = shoot(5, TRUE, { off: (frame) => (frame === wrong ? 3 : 0) });
  expect(report.leftOut).toContainEqual(
    expect.objectContaining({
      frame: wrong,
      reason: expect.objectContaining({ code: 'outlier' }),
    }),
  );
  const { value, u } = accelerationIn(report);
  expect(Math.abs(value - accelerationIn(clean).value)).toBeLessThan(u);
});

it('takes no shift that all centres in the bore share for a gross error', () => {
  for (let seed = 1; seed <= 50; seed++) {
    const { leftOut } = shoot(seed, TRUE, { wall: WALL });
    expect(leftOut.map(({ reason }) => reason.code)).not.toContain('outlier');
  }
});

it('takes the flight as it is fitted by itself, centres in the bore named as used', () => {
  const report = shoot(5, TRUE);
  const { points, weights } = report.fitted.flight;
  expect(report.fit.residuals).toHaveLength(points.length);
  expect(weights).toHaveLength(points.length);
  const left = new Set(report.leftOut.map(({ frame }) => frame));
  expect(points.filter(({ frame }) => left.has(frame))).toEqual([]);
  expect(report.fit.parameters.map(({ name }) => name)).toContain('boreAcceleration');
});

it.each([
  { wall: 0, most: 0.97 },
  { wall: WALL, most: 1 },
])(
  '95 % intervals hold the true acceleration and exit speed, wall known to $wall',
  ({ wall, most }) => {
    const SHOTS = 300;
    const hits = { bore: 0, speed: 0 };
    const u: number[] = [];
    for (let seed = 1; seed <= SHOTS; seed++) {
      const report = shoot(seed, TRUE, { wall });
      const found = accelerationIn(report);
      u.push(found.u);
      if (covers(found, TRUE)) hits.bore++;
      if (covers(report.exitVelocity, HIGH_SPEED.velocity)) hits.speed++;
    }
    expect(median(u)).toBeLessThan(0.5 * TRUE);
    for (const count of [hits.bore, hits.speed]) {
      const [low, high] = binomialLimits(count, SHOTS, 0.999);
      expect(high).toBeGreaterThan(0.95);
      expect(low).toBeLessThan(most);
    }
  },
);

const covers = ({ interval: [low, high] }: Quantity, truth: number): boolean =>
  low <= truth && truth <= high;
