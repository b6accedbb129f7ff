import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { agrees, propagate, symmetricInterval } from '../../../src/uncertainty/monteCarlo';

describe('propagate', () => {
  const options = { coverage: 0.95, blockSize: 2000, maxTrials: 40_000 };

  it('stops as soon as its results have settled', () => {
    const random = seededRandom(1);
    const loose = propagate(() => random.normal(), { ...options, tolerance: 0.2 });
    const tight = propagate(() => random.normal(), { ...options, tolerance: 1e-4 });
    expect(loose).toMatchObject({ ok: true, value: { settled: true } });
    expect(tight).toMatchObject({ ok: true, value: { settled: false, trials: 40_000 } });
    if (loose.ok) expect(loose.value.trials).toBeLessThan(10_000);
  });

  it('bears a few trials without a result and refuses many', () => {
    const every = (period: number) => {
      const random = seededRandom(2);
      let i = 0;
      return () => (i++ % period === 0 ? null : random.normal());
    };
    expect(propagate(every(500), { ...options, tolerance: 0.2 }).ok).toBe(true);
    expect(propagate(every(20), { ...options, tolerance: 0.2 })).toMatchObject({
      ok: false,
      reason: { code: 'trialsWithoutResult' },
    });
  });
});

it('takes the interval between ranks that leave equal shares outside', () => {
  const values = Array.from({ length: 1000 }, (_, i) => i + 1);
  expect(symmetricInterval(values, 0.95)).toEqual([25, 975]);
});

it('wants both ends of two intervals within the tolerance', () => {
  expect(agrees([0, 10], [0.4, 10.4], 0.5)).toBe(true);
  expect(agrees([0, 10], [0.4, 10.6], 0.5)).toBe(false);
});
