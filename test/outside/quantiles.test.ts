import { describe, expect, it } from 'vitest';
import { chiSquareCdf, chiSquareQuantile, coverageFactor } from '../../src/core/statistics';

// JCGM 100:2008, Table G.2: t_p(nu).
const DOF = [1, 2, 3, 4, 5, 6, 8, 10, 16, 20, 30, 50, 100, null] as const;
describe.each([
  [0.6827, [1.84, 1.32, 1.2, 1.14, 1.11, 1.09, 1.07, 1.05, 1.03, 1.03, 1.02, 1.01, 1.005, 1]],
  [0.95, [12.71, 4.3, 3.18, 2.78, 2.57, 2.45, 2.31, 2.23, 2.12, 2.09, 2.04, 2.01, 1.984, 1.96]],
  [0.99, [63.66, 9.92, 5.84, 4.6, 4.03, 3.71, 3.36, 3.17, 2.92, 2.85, 2.75, 2.68, 2.626, 2.576]],
] as const)('coverage factors for %d', (coverage, factors) => {
  it.each(DOF.map((dof, i) => [dof, factors[i] as number] as const))('%s dof: %d', (dof, k) => {
    expect(Math.abs(coverageFactor(coverage, dof) - k)).toBeLessThan(0.0051);
  });
});

// Chi-square critical values: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4 (from memory).
it.each([
  [0.95, 1, 3.841],
  [0.99, 1, 6.635],
  [0.95, 10, 18.307],
  [0.05, 10, 3.94],
  [0.975, 30, 46.979],
])('chi-square quantile %d at %i dof is %d', (probability, dof, value) => {
  expect(chiSquareQuantile(probability, dof)).toBeCloseTo(value, 3);
  expect(chiSquareCdf(value, dof)).toBeCloseTo(probability, 4);
});
