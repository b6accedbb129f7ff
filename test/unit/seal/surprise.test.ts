import { describe, expect, it } from 'vitest';
import { surprise } from '../../../src/seal/surprise';

const growth = (values: readonly number[]) => values.map((v, i) => [i, v] as const);

describe('surprise', () => {
  it('is none for steady acceleration, also over a lost frame', () => {
    expect(surprise(growth([0, 1, 4, 9, 16, 25, 36]), 1)).toBeCloseTo(0, 12);
    expect(
      surprise(
        [0, 1, 2, 4, 5].map((t) => [t, 3 * t] as const),
        1,
      ),
    ).toBeCloseTo(0, 12);
  });

  it('counts a step too long or too short in units of the floor', () => {
    expect(surprise(growth([0, 1, 2, 3, 4, 5, 8]), 0.5)).toBeCloseTo(4, 12);
    expect(surprise(growth([0, 1, 2, 3, 4, 5, 4]), 0.5)).toBeCloseTo(-4, 12);
  });

  it('allows more where the same growth was uneven before', () => {
    const calm = surprise(growth([0, 1, 2, 3, 4, 5, 6, 12]), 0.1);
    const uneven = surprise(growth([0, 1, 3, 3, 5, 5, 7, 12]), 0.1);
    expect(uneven).toBeLessThan(calm / 5);
  });

  it('is none before there is enough to forecast from', () => {
    expect(surprise(growth([0, 1, 40]), 1)).toBe(0);
  });
});
