import { expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { mean, standardDeviation } from '../../../src/core/statistics';

const draws = (seed: number, stream: number, count: number) => {
  const random = seededRandom(seed, stream);
  return Array.from({ length: count }, () => [random.uniform(), random.normal()] as const);
};

it('repeats for the same seed and stream, and differs for others', () => {
  expect(draws(5, 0, 20)).toEqual(draws(5, 0, 20));
  expect(draws(5, 0, 20)).not.toEqual(draws(6, 0, 20));
  expect(draws(5, 0, 20)).not.toEqual(draws(5, 1, 20));
  expect(draws(0, 0, 20)).not.toEqual(draws(2 ** 32, 0, 20));
});

it('draws uniforms and normals of the right mean and spread', () => {
  const both = draws(11, 0, 40_000);
  const uniforms = both.map(([u]) => u);
  const normals = both.map(([, z]) => z);
  // Five standard deviations of each estimate.
  expect(Math.abs(mean(uniforms) - 0.5)).toBeLessThan(0.0075);
  expect(Math.abs(standardDeviation(uniforms) - 1 / Math.sqrt(12))).toBeLessThan(0.004);
  expect(Math.abs(mean(normals))).toBeLessThan(0.025);
  expect(Math.abs(standardDeviation(normals) - 1)).toBeLessThan(0.018);
  const correlation = mean(both.map(([u, z]) => (u - 0.5) * z)) * Math.sqrt(12);
  expect(Math.abs(correlation)).toBeLessThan(0.025);
});
