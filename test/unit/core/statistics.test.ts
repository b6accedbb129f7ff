import { expect, it } from 'vitest';
import {
  coverageFactor,
  mean,
  median,
  normalQuantile,
  standardDeviation,
  studentCdf,
  studentQuantile,
} from '../../../src/core/statistics';

it('takes null degrees of freedom as unlimited', () => {
  expect(studentQuantile(0.9, null)).toBe(normalQuantile(0.9));
  expect(coverageFactor(0.95, 1e7)).toBeCloseTo(coverageFactor(0.95, null), 5);
});

it('has quantile and distribution undo each other, also between whole degrees of freedom', () => {
  expect(studentCdf(studentQuantile(0.93, 4.7), 4.7)).toBeCloseTo(0.93, 10);
});

it('takes the middle of samples of odd and even size', () => {
  expect(median([9, 1, 4])).toBe(4);
  expect(median(Float64Array.of(9, 1, 4, 5))).toBe(4.5);
});

it('divides the spread of a sample by n - 1', () => {
  expect(mean([2, 4, 9])).toBe(5);
  expect(standardDeviation([2, 4, 9])).toBeCloseTo(Math.sqrt(13), 12);
});

it('refuses what has no value', () => {
  expect(() => mean([])).toThrow('nothing');
  expect(() => median([])).toThrow('nothing');
  expect(() => studentQuantile(1.2, 3)).toThrow('1.2');
});
