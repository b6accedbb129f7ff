import { describe, expect, it } from 'vitest';
import { binomialLimits, medianLimits, rmsLimits } from '../../validate/statistics';

describe('exact binomial limits', () => {
  it('are those of a published example', () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1: 4 defects among 20, 90 % two-sided
    // (values from memory; its own iteration stops within 1e-6).
    const [low, high] = binomialLimits(4, 20, 0.9);
    expect(low).toBeCloseTo(0.071354, 5);
    expect(high).toBeCloseTo(0.401029, 5);
  });

  it('have their closed form at none and all', () => {
    // (1 - p)^n = alpha / 2.
    const high = 1 - 0.025 ** (1 / 10);
    expect(binomialLimits(0, 10)[0]).toBe(0);
    expect(binomialLimits(0, 10)[1]).toBeCloseTo(high, 9);
    expect(binomialLimits(10, 10)[0]).toBeCloseTo(1 - high, 9);
    expect(binomialLimits(10, 10)[1]).toBe(1);
  });

  it('near the normal approximation for many', () => {
    const [low, high] = binomialLimits(2049, 3000);
    const half = 1.96 * Math.sqrt((0.683 * 0.317) / 3000);
    expect(low).toBeCloseTo(0.683 - half, 3);
    expect(high).toBeCloseTo(0.683 + half, 3);
  });
});

describe('limits of a median', () => {
  it('are the order statistics of the tables: ranks 10 and 21 of 30, 40 and 61 of 100', () => {
    // Conover, Practical Nonparametric Statistics, 3rd ed. 1999, 3.2 and binomial tables (from memory; the ranks recomputed).
    const upTo = (n: number) => Array.from({ length: n }, (_, i) => n - i);
    expect(medianLimits(upTo(30))).toEqual([10, 21]);
    expect(medianLimits(upTo(100))).toEqual([40, 61]);
  });

  it('are without end where there are too few values', () => {
    expect(medianLimits([1, 2, 3])).toEqual([Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
  });
});

describe('limits of a root mean square', () => {
  it('follow the table of chi-square: 3.247 and 20.483 at 2.5 and 97.5 % for 10 values', () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4.
    const [low, high] = rmsLimits(2, 10);
    expect(low).toBeCloseTo(2 * Math.sqrt(10 / 20.483), 4);
    expect(high).toBeCloseTo(2 * Math.sqrt(10 / 3.247), 4);
  });
});
