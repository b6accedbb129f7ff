import { describe, expect, it } from 'vitest';
import { grubbsCritical, grubbsTest } from '../../src/series/outliers';
import { summariseSeries } from '../../src/series/summarise';
import type { SeriesReport } from '../../src/series/types';

function summary(values: readonly number[], us: readonly number[]): SeriesReport {
  const shots = values.map((value, i) => ({
    name: `${i}`,
    value,
    u: us[i] as number,
    dof: null,
    shared: [],
  }));
  const report = summariseSeries(shots, 0.95);
  if (!report.ok) throw new Error(report.reason.message);
  return report.value;
}

// Paule & Mandel, J. Res. NBS 87 (1982) 377: heat of vaporisation of cadmium from five laboratories, as copied in
// the R package metRology (mpaule.Rd).
const CADMIUM = {
  values: [27.044, 26.022, 26.34, 26.787, 26.796],
  us: [0.003, 0.076, 0.464, 0.003, 0.014].map(Math.sqrt),
};
// Eight series of the acceleration of free fall, 1934-35 (Cressie 1982), as copied in the R package boot (gravity):
// means and standard deviations of series of n, in deviations from 980.000 cm/s2 times 1000.
const GRAVITY = {
  values: [66.375, 89.909, 77.333, 81.375, 75.25, 78.909, 77.538, 80.385],
  us: [19.25, 15.293, 15.756, 8.297, 3.655, 5.839, 4.737, 3.355].map(
    (s, i) => s / Math.sqrt([8, 11, 9, 8, 8, 11, 13, 13][i] as number),
  ),
};

// Results worked out independently from the published formulas (Birge 1932; DerSimonian & Laird 1986; Paule & Mandel
// 1982) in Python, from the inputs as printed above; no published digits to compare with could be read here.
describe.each([
  {
    name: 'heat of vaporisation of cadmium',
    data: CADMIUM,
    chiSquare: 22.631,
    birge: 2.3786,
    fixed: [26.8869, 0.0364],
    moment: [26.7675, 0.1164, 0.04127],
    pauleMandel: [26.7121, 0.1711, 0.105219],
  },
  {
    name: 'free fall',
    data: GRAVITY,
    chiSquare: 21.277,
    birge: 1.7434,
    fixed: [78.6293, 0.5896],
    moment: [78.6957, 1.2687, 6.7041],
    pauleMandel: [78.793, 1.7508, 16.3146],
  },
] as const)('$name', ({ data, chiSquare, birge, fixed, moment, pauleMandel }) => {
  const report = summary(data.values, data.us);
  const between = ({ tau, mean }: SeriesReport['mandelPaule']) => [mean.value, mean.u, tau ** 2];
  const near = (found: readonly number[], wanted: readonly number[]) => {
    found.forEach((x, i) => {
      expect(x).toBeCloseTo(wanted[i] as number, 4);
    });
  };

  it('scatters by its Birge ratio more than the uncertainties explain', () => {
    expect(report.consistency.chiSquare).toBeCloseTo(chiSquare, 3);
    expect(report.consistency.birgeRatio).toBeCloseTo(birge, 4);
    // Birge's own limit: ratio^2 < 1 + root(8 / (n - 1)).
    expect(birge ** 2).toBeGreaterThan(1 + Math.sqrt(8 / report.consistency.dof));
    expect(report.consistency.verdict).toBe('more');
  });

  it('has the means of no scatter, of DerSimonian and Laird, of Mandel and Paule', () => {
    near([report.fixed.value, report.fixed.u], fixed);
    near(between(report.derSimonianLaird), moment);
    near(between(report.mandelPaule), pauleMandel);
  });
});

// mpaule.Rd: two laboratories, where both estimates are the same.
it('two results give one scatter between by either formula', () => {
  const report = summary([201.533, 216.55], [0.154 / Math.sqrt(6), 0.25 / Math.SQRT2]);
  for (const { tau, mean } of [report.derSimonianLaird, report.mandelPaule]) {
    expect(mean.value).toBeCloseTo(209.0406, 3);
    expect(mean.u).toBeCloseTo(7.5085, 4);
    expect(tau ** 2).toBeCloseTo(112.7375, 3);
  }
});

// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1 (from memory): uranium isotope readings with one far off;
// statistic 2.4688, upper one-sided critical value 2.032 at 5 %.
it("Grubbs's test calls the far reading an outlier", () => {
  const readings = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
  const test = grubbsTest(readings);
  expect(test).toMatchObject({ index: 7, outlier: true });
  expect(test?.statistic).toBeCloseTo(2.4688, 4);
  expect(grubbsCritical(8, 0.05)).toBeCloseTo(2.032, 3);
  expect(grubbsTest(readings.slice(0, 7))).toMatchObject({ outlier: false });
});
