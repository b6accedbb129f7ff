import { expect, test } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { StillLevel } from '../../../src/image/stillLevel';

const estimateOf = (values: readonly number[], isWhole: boolean) => {
  const still = new StillLevel(values.length);
  still.values.set(values);
  still.estimate(values.length, isWhole);
  const { level, variance, agreeing } = still;
  return { level, variance, agreeing };
};

test('counting whole values and sorting them give the same to the last digit', () => {
  const random = seededRandom(7);
  for (let round = 0; round < 400; round++) {
    const n = 1 + Math.floor(60 * random.uniform());
    const noise = [0, 0.6, 3, 9][round % 4] as number;
    const passing = round % 3 === 0 ? 0.2 : 0;
    const values = Array.from({ length: n }, () =>
      Math.max(
        0,
        Math.round(100 + noise * random.normal() + (random.uniform() < passing ? 30 : 0)),
      ),
    );
    expect(estimateOf(values, true)).toEqual(estimateOf(values, false));
  }
});

test('values too far apart to be counted are sorted', () => {
  const values = [10, 4000, 11, 12, 10, 11, 65_535];
  expect(estimateOf(values, true)).toEqual(estimateOf(values, false));
  expect(estimateOf(values, true).agreeing).toBe(5);
});

test('what passes leaves no trace, and the mean of the rest is finer than a grey step', () => {
  const { level, agreeing } = estimateOf([50, 51, 50, 51, 51, 50, 51, 51, 180, 185], true);
  expect(agreeing).toBe(8);
  expect(level).toBeCloseTo(50.625, 12);
});
