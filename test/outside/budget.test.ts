import { describe, expect, it } from 'vitest';
import type { Estimate } from '../../src/core/estimate';
import { seededRandom } from '../../src/core/random';
import { coverageFactor } from '../../src/core/statistics';
import { combine, entry } from '../../src/uncertainty/budget';
import { standardDraw } from '../../src/uncertainty/draw';
import { propagate } from '../../src/uncertainty/monteCarlo';
import { effects } from '../../src/uncertainty/propagation';
import { effectiveDof, uniformU } from '../../src/uncertainty/quantity';

// JCGM 100:2008, H.1: calibration of an end gauge, Table H.1 (nm, kelvin). Inputs as in the GTC package's example.
describe('JCGM 100 H.1', () => {
  const comparator = combine([
    entry('repeated observations', 'A', 5.8, 'nm', 1, 24),
    entry('random effects of the comparator', 'A', 3.9, 'nm', 1, 5),
    entry('systematic effects of the comparator', 'B', 6.7, 'nm', 1, 8),
  ]);
  const inputs = [
    { name: 'standard', value: 50.000623e6, u: 25, dof: 18, spread: 'student' },
    { name: 'comparison', value: 215, u: comparator.u, dof: comparator.dof, spread: 'student' },
    {
      name: 'expansion of the standard',
      value: 11.5e-6,
      u: uniformU(2e-6),
      dof: null,
      spread: 'rectangular',
    },
    {
      name: 'difference of expansions',
      value: 0,
      u: uniformU(1e-6),
      dof: 50,
      spread: 'rectangular',
    },
    { name: 'temperature of the bench', value: -0.1, u: 0.41, dof: null, spread: 'normal' },
    {
      name: 'difference of temperatures',
      value: 0,
      u: uniformU(0.05),
      dof: 2,
      spread: 'rectangular',
    },
  ] as const;
  /** H.1.1, eq. H.3: length of the gauge at 20 degrees. */
  const gauge = ([
    l = 0,
    d = 0,
    alpha = 0,
    dAlpha = 0,
    theta = 0,
    dTheta = 0,
  ]: readonly number[]) => [l + d - l * (dAlpha * theta + alpha * dTheta)];
  const estimates: readonly Estimate[] = inputs;
  const moved = effects(gauge, estimates);
  const entries = inputs.map(({ name, u, dof }, i) =>
    entry(name, 'B', u, 'nm', (moved[i]?.[0] as number) / u, dof),
  );

  it('gives the comparison 9.7 nm with 25.6 degrees of freedom', () => {
    expect(comparator.u).toBeCloseTo(9.7, 1);
    expect(comparator.dof).toBeGreaterThan(25.4);
    expect(comparator.dof).toBeLessThan(25.6);
  });

  it('gives the contributions of Table H.1, and none of what the differences multiply', () => {
    const [l, d, alpha, dAlpha, theta, dTheta] = entries.map(({ contribution }) => contribution);
    expect(l).toBeCloseTo(25, 2);
    expect(d).toBeCloseTo(9.68, 2);
    expect(alpha).toBe(0);
    expect(dAlpha).toBeCloseTo(2.89, 2);
    expect(theta).toBe(0);
    expect(dTheta).toBeCloseTo(16.6, 2);
  });

  it('combines to 32 nm with 16 degrees of freedom and an expanded 93 nm at 99 %', () => {
    const { u, dof } = combine(entries);
    expect(u).toBeCloseTo(31.66, 2);
    expect(dof).toBeCloseTo(16.75, 1);
    // The guide truncates the degrees of freedom and rounds u first (H.1.6).
    expect(coverageFactor(0.99, Math.floor(dof as number))).toBeCloseTo(2.92, 2);
    expect(coverageFactor(0.99, Math.floor(dof as number)) * 32).toBeCloseTo(93, 0);
  });

  // H.1.7: the second-order terms 11.7 nm and 1.7 nm bring u to 34 nm. A Monte Carlo trial holds all orders; drawn
  // here without the degrees of freedom, which the guide's second-order terms leave out too.
  it('has 34 nm with the second order, as its Monte Carlo shows', () => {
    const random = seededRandom(71);
    const found = propagate(
      () => {
        const drawn = inputs.map(
          ({ value, u, spread }) =>
            value + u * standardDraw(random, spread === 'student' ? 'normal' : spread, null),
        );
        return (gauge(drawn)[0] as number) - 50.000838e6;
      },
      { coverage: 0.99, tolerance: 0, blockSize: 10_000, maxTrials: 200_000 },
    );
    if (!found.ok) throw new Error(found.reason.message);
    const exact = Math.hypot(combine(entries).u, 11.7, 1.7);
    expect(exact).toBeCloseTo(33.8, 1);
    // 200 000 trials leave u a standard deviation of 0.16 %.
    expect(Math.abs(found.value.u / exact - 1)).toBeLessThan(0.008);
  });
});

// Worked figure of the suncal package: 0.57 with 9 degrees of freedom and 0.25 with unlimited ones have 12.8.
it('Welch-Satterthwaite gives 12.8 degrees of freedom', () => {
  const parts = [
    { contribution: 0.57, dof: 9 },
    { contribution: 0.25, dof: null },
  ];
  expect(effectiveDof(Math.hypot(0.57, 0.25), parts)).toBeCloseTo(12.8, 1);
});
