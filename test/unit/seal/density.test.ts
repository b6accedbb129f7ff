import { describe, expect, it } from 'vitest';
import {
  type Density,
  intervalOf,
  momentsOf,
  posteriorOf,
  quantileOf,
  shifted,
  withNormal,
} from '../../../src/seal/density';

const grid = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
const rectangular: Density = { times: grid(10, 12, 2001), weights: new Array(2001).fill(3) };
const normal: Density = {
  times: grid(-8, 8, 3201),
  weights: grid(-8, 8, 3201).map((z) => Math.exp(-0.5 * z * z)),
};

describe('a density on even steps', () => {
  it('has the moments of the rectangular distribution', () => {
    // Half-width a: standard deviation a / sqrt(3) (JCGM 101:2008, 6.4.2).
    const { mean, sd } = momentsOf(rectangular);
    expect(mean).toBeCloseTo(11, 9);
    expect(sd).toBeCloseTo(1 / Math.sqrt(3), 3);
  });

  it('has the interval of the normal distribution', () => {
    // JCGM 100:2008, table G.1: 1.960 for 95 %.
    const [low, high] = intervalOf(normal, 0.95);
    expect(low).toBeCloseTo(-1.96, 2);
    expect(high).toBeCloseTo(1.96, 2);
    expect(quantileOf(normal, 0.5)).toBeCloseTo(0, 6);
  });

  it('adds the variance of a normal source, and none of one too narrow to matter', () => {
    const sum = momentsOf(withNormal(rectangular, 0.5));
    expect(sum.mean).toBeCloseTo(11, 6);
    expect(sum.sd).toBeCloseTo(Math.hypot(1 / Math.sqrt(3), 0.5), 2);
    expect(withNormal(rectangular, 1e-6)).toBe(rectangular);
  });

  it('moves and widens by a discrete source', () => {
    const both = shifted(normal, [
      [-1, 0.5],
      [3, 0.5],
    ]);
    const { mean, sd } = momentsOf(both);
    // Means add, variances add: (-1 + 3) / 2 and 2^2.
    expect(mean).toBeCloseTo(1, 3);
    expect(sd).toBeCloseTo(Math.sqrt(5), 3);
  });

  it('is reported with area 1, ends that do not matter left out', () => {
    const { times, density } = posteriorOf(normal);
    const area = times
      .slice(1)
      .reduce(
        (sum, t, i) =>
          sum +
          ((t - (times[i] as number)) * ((density[i] as number) + (density[i + 1] as number))) / 2,
        0,
      );
    expect(area).toBeCloseTo(1, 9);
    expect(times[0]).toBeGreaterThan(-6);
    expect(Math.max(...density)).toBeCloseTo(1 / Math.sqrt(2 * Math.PI), 4);
  });
});
