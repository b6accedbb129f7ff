import { describe, expect, it } from 'vitest';
import { chiSquareCdf, chiSquareQuantile, coverageFactor } from '../../src/core/statistics';

// JCGM 100:2008, Table G.2: t_p(nu), here with a digit more by scipy.
const DOF = [1, 2, 3, 4, 5, 6, 8, 10, 16, 20, 30, 50, 100, null] as const;
describe.each([
  [
    0.6827,
    [1.837, 1.321, 1.197, 1.142, 1.111, 1.091, 1.067, 1.053, 1.032, 1.026, 1.017, 1.01, 1.005, 1],
  ],
  [
    0.9,
    [6.314, 2.92, 2.353, 2.132, 2.015, 1.943, 1.86, 1.812, 1.746, 1.725, 1.697, 1.676, 1.66, 1.645],
  ],
  [
    0.95,
    [
      12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.306, 2.228, 2.12, 2.086, 2.042, 2.009, 1.984,
      1.96,
    ],
  ],
  [
    0.9545,
    [13.968, 4.527, 3.307, 2.869, 2.649, 2.517, 2.366, 2.284, 2.169, 2.133, 2.087, 2.051, 2.025, 2],
  ],
  [
    0.99,
    [
      63.657, 9.925, 5.841, 4.604, 4.032, 3.707, 3.355, 3.169, 2.921, 2.845, 2.75, 2.678, 2.626,
      2.576,
    ],
  ],
  [
    0.9973,
    [235.78, 19.206, 9.219, 6.62, 5.507, 4.904, 4.277, 3.957, 3.544, 3.422, 3.27, 3.157, 3.077, 3],
  ],
] as const)('coverage factors for %d', (coverage, factors) => {
  it.each(DOF.map((dof, i) => [dof, factors[i] as number] as const))('%s dof: %d', (dof, k) => {
    // Rounded in the third decimal, or in the fifth figure.
    expect(Math.abs(coverageFactor(coverage, dof) - k)).toBeLessThan(Math.max(5.1e-4, 3e-5 * k));
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
