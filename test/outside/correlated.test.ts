import { describe, expect, it } from 'vitest';
import {
  type Correlated,
  correlation,
  meansOf,
  propagateCorrelated,
  standardU,
} from '../../src/uncertainty/propagation';

// JCGM 100:2008, H.2, Table H.2: voltage, current and phase observed together five times. Data as in the suncal
// package's test of H.2; results to the digits of Tables H.3 and H.4.
const OBSERVED = [
  [5.007, 19.663e-3, 1.0456],
  [4.994, 19.639e-3, 1.0438],
  [5.005, 19.64e-3, 1.0468],
  [4.99, 19.685e-3, 1.0428],
  [4.999, 19.678e-3, 1.0433],
] as const;

/** Resistance, reactance and impedance, ohm. */
const impedance = ([v = 0, i = 0, phi = 0]: readonly number[]): readonly number[] => [
  (v / i) * Math.cos(phi),
  (v / i) * Math.sin(phi),
  v / i,
];

const correlations = (of: Correlated) => [
  correlation(of, 0, 1),
  correlation(of, 0, 2),
  correlation(of, 1, 2),
];

function expectEach(found: readonly number[], wanted: readonly number[], digits: number): void {
  expect(found).toHaveLength(wanted.length);
  wanted.forEach((value, k) => {
    expect(found[k]).toBeCloseTo(value, digits);
  });
}

describe('JCGM 100 H.2', () => {
  const inputs = meansOf(OBSERVED);
  const us = (of: Correlated) => of.values.map((_, k) => standardU(of, k));

  it('means, their standard uncertainties and correlations (Table H.2)', () => {
    const [v, i, phi] = inputs.values;
    expect(v).toBeCloseTo(4.999, 6);
    expect(i).toBeCloseTo(19.661e-3, 9);
    expect(phi).toBeCloseTo(1.04446, 6);
    const [uv, ui, uphi] = us(inputs);
    expect(uv).toBeCloseTo(0.0032, 4);
    expect(ui).toBeCloseTo(9.5e-6, 7);
    expect(uphi).toBeCloseTo(0.00075, 5);
    expectEach(correlations(inputs), [-0.36, 0.86, -0.65], 2);
  });

  // Tables H.3 (approach 1) and H.4 (approach 2), with one digit more by independent computation in Python.
  it.each([
    [
      'approach 1: the means propagated with their correlations',
      propagateCorrelated(impedance, inputs),
    ],
    ['approach 2: the mean of each occasion’s own result', meansOf(OBSERVED.map(impedance))],
  ])('%s', (_name, results) => {
    expectEach(results.values, [127.732, 219.847, 254.26], 2);
    expectEach(us(results), [0.071, 0.2955, 0.236], 3);
    expectEach(correlations(results), [-0.588, -0.485, 0.993], 3);
  });

  it('without the correlations the uncertainties would be wrong', () => {
    const covariance = inputs.covariance.map((row, a) => row.map((c, b) => (a === b ? c : 0)));
    const [ur, ux] = us(propagateCorrelated(impedance, { ...inputs, covariance }));
    expect(ur).toBeGreaterThan(0.18);
    expect(ux).toBeLessThan(0.22);
  });
});
