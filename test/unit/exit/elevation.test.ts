import { expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { bendU, slopeAtMuzzle } from '../../../src/exit/elevation';
import { binomialLimits } from '../../validate/statistics';

/** A path in m: falls by 9.81 m/s^2 at this speed, from a slope at the muzzle. */
const path = (slope: number, speed: number, u: number, seed: number, reach = 0.5) => {
  const random = seededRandom(seed);
  return Array.from({ length: 10 }, (_, i) => {
    const along = 0.02 + (reach * i) / 10;
    const across = slope * along + (9.81 / 2) * (along / speed) ** 2 + u * random.normal();
    return { along, across, acrossU: u };
  });
};

it('reads the slope at the muzzle off a falling ball, not the mean slope', () => {
  const speed = 10;
  const exact = slopeAtMuzzle(path(0.02, speed, 1e-7, 1), bendU(speed, 0.1));
  expect(exact?.value).toBeCloseTo(0.02, 4);
  // A straight line through them would be off by half the fall's slope at the end.
  const straight = slopeAtMuzzle(path(0.02, speed, 1e-7, 1), 1e-9);
  expect(straight?.value).toBeGreaterThan(0.04);
});

it('with fewer than two centres there is none', () => {
  expect(slopeAtMuzzle(path(0, 10, 1e-4, 1).slice(0, 1), 0.1)).toBeNull();
  expect(slopeAtMuzzle(path(0, 10, 1e-4, 1).slice(0, 2), 0.1)).not.toBeNull();
});

it('a fast ball may bend by its lift, a slow one by gravity', () => {
  expect(bendU(1e4, 0.1)).toBeCloseTo(0.1 / Math.sqrt(3), 6);
  expect(bendU(1, 0)).toBeCloseTo(9.80665, 5);
});

it('scatter beyond what is stated widens it', () => {
  const places = path(0, 100, 1e-4, 2);
  const stated = slopeAtMuzzle(places, 0.1);
  const vague = slopeAtMuzzle(
    places.map((place) => ({ ...place, acrossU: 1e-5 })),
    0.1,
  );
  expect(vague?.dof).toBe(8);
  expect((vague?.u ?? 0) / (stated?.u ?? 1)).toBeGreaterThan(0.5);
});

it('95 % intervals hold the truth 95 % of the time', () => {
  const SHOTS = 1000;
  let hits = 0;
  for (let seed = 1; seed <= SHOTS; seed++) {
    const speed = 8 + (seed % 10);
    const found = slopeAtMuzzle(path(0.01, speed, 1e-4, seed, 0.2), bendU(speed, 0.1));
    if (found !== null && Math.abs(found.value - 0.01) < 1.96 * found.u) hits++;
  }
  const [low, high] = binomialLimits(hits, SHOTS, 0.999);
  expect(low).toBeLessThan(0.97);
  expect(high).toBeGreaterThan(0.95);
});
