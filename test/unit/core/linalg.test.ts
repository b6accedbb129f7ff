import { describe, expect, it } from 'vitest';
import {
  backSubstitute,
  inverseGram,
  leastSquares,
  singularValues,
  triangulate,
} from '../../../src/core/linalg';

const rows = [
  [1, 2],
  [1, 3],
  [1, 5],
  [1, 9],
];
const b = [1, 2.5, 4, 9];
const columns = () => Float64Array.from([1, 1, 1, 1, 2, 3, 5, 9]);

describe('triangulate', () => {
  it('leads to the least-squares solution the library finds', () => {
    const a = columns();
    const rhs = Float64Array.from(b);
    const x = new Float64Array(2);
    triangulate(a, 4, 2, rhs);
    expect(backSubstitute(a, 4, 2, rhs, x)).toBe(true);
    const [x0 = 0, x1 = 0] = leastSquares(rows, b);
    expect(x[0]).toBeCloseTo(x0, 12);
    expect(x[1]).toBeCloseTo(x1, 12);
  });

  it('keeps the length of the right-hand side', () => {
    const rhs = Float64Array.from(b);
    triangulate(columns(), 4, 2, rhs);
    expect(Math.hypot(...rhs)).toBeCloseTo(Math.hypot(...b), 12);
  });

  it('gives the inverse of the normal matrix', () => {
    const a = columns();
    triangulate(a, 4, 2, new Float64Array(4));
    // A'A = [[4, 19], [19, 119]], determinant 115.
    const expected = [119 / 115, -19 / 115, -19 / 115, 4 / 115];
    inverseGram(a, 4, 2).forEach((value, i) => {
      expect(value).toBeCloseTo(expected[i] as number, 12);
    });
  });
});

it('refuses to solve a singular triangle', () => {
  const a = Float64Array.from([1, 0, 0, 0]);
  expect(backSubstitute(a, 2, 2, Float64Array.of(1, 1), new Float64Array(2))).toBe(false);
  expect(() => inverseGram(a, 2, 2)).toThrow('no inverse');
});

it('gives the solution of least norm where many fit', () => {
  const [x0, x1] = leastSquares(
    [
      [1, 1],
      [2, 2],
    ],
    [2, 4],
  );
  expect(x0).toBeCloseTo(1, 12);
  expect(x1).toBeCloseTo(1, 12);
});

it('lists singular values, largest first', () => {
  const [first, second] = singularValues([
    [0, 2],
    [3, 0],
  ]);
  expect(first).toBeCloseTo(3, 12);
  expect(second).toBeCloseTo(2, 12);
});
