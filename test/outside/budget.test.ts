import { describe, expect, it } from 'vitest';
import { combine, entry } from '../../src/uncertainty/budget';
import { effectiveDof, quantity, uniformU } from '../../src/uncertainty/quantity';

// JCGM 100:2008, H.1: calibration of an end gauge, Table H.1 (nm). Inputs as in the GTC package's example of H.1.
describe('JCGM 100 H.1', () => {
  const comparator = [
    entry('repeated observations', 'A', 5.8, 'nm', 1, 24),
    entry('random effects of the comparator', 'A', 3.9, 'nm', 1, 5),
    entry('systematic effects of the comparator', 'B', 6.7, 'nm', 1, 8),
  ];
  const nominal = 50.000623e6;
  const difference = combine(comparator);
  const entries = [
    entry('standard', 'B', 25, 'nm', 1, 18),
    entry('comparison', 'A', difference.u, 'nm', 1, difference.dof),
    entry('expansion coefficients', 'B', uniformU(1e-6), '1/K', -nominal * -0.1, 50),
    entry('temperature difference', 'B', uniformU(0.05), 'K', -nominal * 11.5e-6, 2),
    // Sensitivity nothing at the estimates: the differences they multiply are taken as nothing.
    entry('expansion of the standard', 'B', uniformU(2e-6), '1/K', 0, null),
    entry('temperature of the bench', 'B', 0.41, 'K', 0, null),
  ];

  it('gives the comparison 9.7 nm with 25.6 degrees of freedom', () => {
    expect(difference.u).toBeCloseTo(9.7, 1);
    expect(difference.dof).toBeGreaterThan(25);
    expect(difference.dof).toBeLessThan(26);
  });

  it('gives the contributions of Table H.1', () => {
    const contributions = entries.map(({ contribution }) => contribution);
    expect(contributions[2]).toBeCloseTo(2.9, 1);
    expect(contributions[3]).toBeCloseTo(16.6, 1);
  });

  it('combines to 32 nm with 16 degrees of freedom and an expanded 93 nm at 99 %', () => {
    const { u, dof } = combine(entries);
    expect(u).toBeCloseTo(31.7, 1);
    expect(Math.floor(dof as number)).toBe(16);
    const [low, high] = quantity(838, 32, 16, 0.99).interval;
    expect((high - low) / 2).toBeCloseTo(93, 0);
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
