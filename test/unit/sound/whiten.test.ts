import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { whitenerOf } from '../../../src/sound/whiten';

/** Noise of which each value is a share of the one before and something new of standard deviation 0.1, about a level. */
function noise(share: number, level = 0): number[] {
  const random = seededRandom(8);
  let last = 0;
  return Array.from({ length: 20_000 }, () => {
    last = share * last + 0.1 * random.normal();
    return level + last;
  });
}

describe('whitenerOf', () => {
  it.each([0, 0.9, -0.5])('leaves what is new in noise that keeps %d of itself', (share) => {
    const whitener = whitenerOf(noise(share));
    // 17 numbers fitted to 20 000 values: known to about 0.7 %.
    expect(whitener.sigma).toBeGreaterThan(0.097);
    expect(whitener.sigma).toBeLessThan(0.103);
  });

  it('takes the level of the noise off', () => {
    const whitener = whitenerOf(noise(0.9, 5));
    const left = whitener.apply(noise(0.9, 5), 100, 20_000);
    expect(Math.abs(left.reduce((a, b) => a + b, 0) / left.length)).toBeLessThan(0.005);
  });

  it('leaves of a step its height at first and then what the noise would not have kept', () => {
    const step = new Float64Array(6).fill(1);
    const left = whitenerOf(noise(0.9)).response(step);
    expect(left[0]).toBe(1);
    for (const value of left.slice(1)) expect(Math.abs(value - 0.1)).toBeLessThan(0.05);
  });

  it('leaves of a shape what it leaves of the same samples, the level apart', () => {
    const whitener = whitenerOf(noise(-0.5));
    const shape = Float64Array.of(1, -2, 3, 0.5);
    const silence = whitener.apply([0, 0, 0, 0], 0, 4);
    const left = whitener.apply(shape, 0, 4);
    whitener.response(shape).forEach((value, i) => {
      expect(value).toBeCloseTo((left[i] as number) - (silence[i] as number), 12);
    });
  });
});
