import { expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { mean, standardDeviation } from '../../../src/core/statistics';
import { type Spread, standardDraw } from '../../../src/uncertainty/draw';

const DRAWS = 200_000;
const drawn = (spread: Spread, dof: number | null): number[] => {
  const random = seededRandom(5);
  return Array.from({ length: DRAWS }, () => standardDraw(random, spread, dof));
};

// Standard deviation and largest draw of each; Student's t with 8 degrees of freedom has sd root(8 / 6).
it.each([
  ['normal', null, 1, 3.9, Number.POSITIVE_INFINITY],
  ['student', 8, Math.sqrt(8 / 6), 5, Number.POSITIVE_INFINITY],
  ['rectangular', null, 1, Math.sqrt(3) * 0.9999, Math.sqrt(3)],
  ['triangular', null, 1, Math.sqrt(6) * 0.98, Math.sqrt(6)],
] as const)('%s draws, %s degrees of freedom', (spread, dof, deviation, atLeast, atMost) => {
  const draws = drawn(spread, dof);
  expect(Math.abs(mean(draws))).toBeLessThan((4 * deviation) / Math.sqrt(DRAWS));
  expect(standardDeviation(draws)).toBeCloseTo(deviation, 1.7);
  const most = draws.reduce((a, b) => Math.max(a, Math.abs(b)), 0);
  expect(most).toBeGreaterThan(atLeast);
  expect(most).toBeLessThanOrEqual(atMost);
});

it('draws a rectangle evenly', () => {
  const inner = drawn('rectangular', null).filter((x) => Math.abs(x) < Math.sqrt(3) / 2).length;
  expect(Math.abs(inner / DRAWS - 0.5)).toBeLessThan(4 * Math.sqrt(0.25 / DRAWS));
});
