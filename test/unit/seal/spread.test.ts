import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { coverageHalfWidth } from '../../../src/seal/spread';

describe('coverageHalfWidth', () => {
  it('gives k = 1.65 for a rectangular distribution', () => {
    // EA-4/02 M, supplement S9: coverage factor 1.65 for a dominant rectangular contribution (from memory).
    expect(coverageHalfWidth(1, 0, 0, 0.95) * Math.sqrt(3)).toBeCloseTo(1.65, 2);
  });

  it('gives k = 1.95996 for a normal distribution', () => {
    // JCGM 100:2008, table G.1: 1.960.
    expect(coverageHalfWidth(0, 0, 2, 0.95) / 2).toBeCloseTo(1.959964, 4);
  });

  it('gives the exact half-width of a triangular distribution', () => {
    // Two equal rectangles make a triangle on +-2a (JCGM 101:2008, 6.4.5): 1 - F = (2a - x)^2 / (8 a^2) beyond x.
    expect(coverageHalfWidth(1, 1, 0, 0.95)).toBeCloseTo(2 * (1 - Math.sqrt(0.05)), 6);
  });

  it('holds the stated share of drawn values', () => {
    const random = seededRandom(5);
    const half = coverageHalfWidth(1, 0.4, 0.25, 0.95);
    const draws = 200_000;
    let inside = 0;
    for (let i = 0; i < draws; i++) {
      const x =
        2 * random.uniform() - 1 + 0.4 * (2 * random.uniform() - 1) + 0.25 * random.normal();
      if (Math.abs(x) <= half) inside++;
    }
    // Four standard deviations of a binomial share.
    expect(Math.abs(inside / draws - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / draws));
  });
});
