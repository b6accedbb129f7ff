import { describe, expect, it } from 'vitest';
import { fitLinear } from '../../src/fit/linear';
import { propagateCorrelated, standardU } from '../../src/uncertainty/propagation';
import { digits, referenceSet } from './strd';

const powers = (x: Float64Array, from: number, to: number): Float64Array => {
  const n = x.length;
  const design = new Float64Array(n * (to - from + 1));
  for (let j = from; j <= to; j++)
    design.set(
      x.map((value) => value ** j),
      (j - from) * n,
    );
  return design;
};
const x0 = (set: ReturnType<typeof referenceSet>) => set.x[0] as Float64Array;

// NIST StRD, linear regression: certified coefficients and standard deviations.
// The last two columns are the digits asked for, of values and of standard deviations. Exception: Wampler5's values to
// 5 digits instead of 6. Its errors are some 1e8 beside parameters of 1, and double precision loses as many digits.
describe.each([
  ['Norris', 0, 1, 11, 10],
  ['Pontius', 0, 2, 11, 10],
  ['NoInt1', 1, 1, 13, 13],
  ['NoInt2', 1, 1, 13, 13],
  ['Wampler1', 0, 5, 9, 9],
  ['Wampler2', 0, 5, 12, 12],
  ['Wampler3', 0, 5, 9, 9],
  ['Wampler4', 0, 5, 7, 9],
  ['Wampler5', 0, 5, 5, 9],
  ['Filip', 0, 10, 6, 6],
] as const)('NIST StRD %s', (name, from, to, valueDigits, deviationDigits) => {
  it('gives the certified coefficients and standard deviations', () => {
    const set = referenceSet(name);
    const fit = fitLinear(
      powers(x0(set), from, to),
      set.y,
      set.y.map(() => 1),
    );
    check(set, fit, valueDigits, deviationDigits);
  });
});

// NIST StRD Longley: six nearly collinear predictors.
it('NIST StRD Longley gives the certified coefficients and standard deviations', () => {
  const set = referenceSet('Longley');
  const n = set.y.length;
  const design = new Float64Array(n * 7).fill(1, 0, n);
  set.x.forEach((x, j) => {
    design.set(x, (j + 1) * n);
  });
  check(
    set,
    fitLinear(
      design,
      set.y,
      set.y.map(() => 1),
    ),
    10,
    10,
  );
});

function check(
  set: ReturnType<typeof referenceSet>,
  fit: ReturnType<typeof fitLinear>,
  valueDigits: number,
  deviationDigits: number,
): void {
  if (!fit.covariance.ok) throw new Error(fit.covariance.reason.message);
  const p = set.certified.length;
  expect(fit.parameters).toHaveLength(p);
  const variance = fit.chiSquare / fit.dof;
  for (let j = 0; j < p; j++) {
    expect(digits(fit.parameters[j] as number, set.certified[j] as number)).toBeGreaterThan(
      valueDigits,
    );
    const found = Math.sqrt((fit.covariance.value[j * p + j] as number) * variance);
    expect(digits(found, set.standardDeviations[j] as number)).toBeGreaterThan(deviationDigits);
  }
  expect(digits(Math.sqrt(variance), set.residualDeviation)).toBeGreaterThan(deviationDigits);
}

// JCGM 100:2008, H.3, Table H.6: calibration of a thermometer, correction b against t - 20 C.
// Data as in the GTC package's example of H.3; results to the digits printed there.
it('JCGM 100 H.3 gives intercept, slope, their correlation and the prediction at 30 C', () => {
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const design = Float64Array.from([...t.map(() => 1), ...t.map((value) => value - 20)]);
  const fit = fitLinear(design, Float64Array.from(b), new Float64Array(11).fill(1));
  if (!fit.covariance.ok) throw new Error(fit.covariance.reason.message);
  const s2 = fit.chiSquare / fit.dof;
  const [v1, v12, , v2] = Array.from(fit.covariance.value, (v) => v * s2) as [
    number,
    number,
    number,
    number,
  ];
  const [y1, y2] = fit.parameters as unknown as [number, number];
  expect(fit.dof).toBe(9);
  expect(y1).toBeCloseTo(-0.1712, 4);
  expect(y2).toBeCloseTo(0.00218, 5);
  expect(Math.sqrt(v1)).toBeCloseTo(0.0029, 4);
  expect(Math.sqrt(v2)).toBeCloseTo(0.00067, 5);
  expect(v12 / Math.sqrt(v1 * v2)).toBeCloseTo(-0.93, 3);
  expect(Math.sqrt(s2)).toBeCloseTo(0.0035, 4);
  // H.3.4: prediction at 30 C, intercept and slope correlated.
  const covariance = [
    [v1, v12],
    [v12, v2],
  ];
  const at30 = propagateCorrelated(([a = 0, s = 0]) => [a + 10 * s], {
    values: [y1, y2],
    covariance,
  });
  expect(at30.values[0]).toBeCloseTo(-0.1494, 4);
  expect(standardU(at30, 0)).toBeCloseTo(0.0041, 4);
});
