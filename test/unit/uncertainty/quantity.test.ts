import { describe, expect, it } from 'vitest';
import { quantity } from '../../../src/core/quantity';
import { combine, entry } from '../../../src/uncertainty/budget';
import { difference, triangularU, uniformU } from '../../../src/uncertainty/quantity';

describe('quantity', () => {
  it('puts the interval at Student distances about the value', () => {
    const { interval, dof, coverage } = quantity(10, 2, 4, 0.95);
    expect(interval[0]).toBeCloseTo(10 - 2.776 * 2, 2);
    expect(interval[1]).toBeCloseTo(10 + 2.776 * 2, 2);
    expect({ dof, coverage }).toEqual({ dof: 4, coverage: 0.95 });
  });
});

describe('difference', () => {
  const a = quantity(5, 0.3, null, 0.95);
  const b = quantity(2, 0.4, 10, 0.95);

  it('adds variances of independent quantities', () => {
    const d = difference(a, b, 0, 0.95);
    expect(d.value).toBe(3);
    expect(d.u).toBeCloseTo(0.5, 12);
    expect(d.dof).toBeCloseTo(0.5 ** 4 / (0.4 ** 4 / 10), 9);
  });

  it('counts correlation', () => {
    expect(difference(a, b, 1, 0.95).u).toBeCloseTo(0.1, 12);
    expect(difference(a, b, -1, 0.95).u).toBeCloseTo(0.7, 12);
  });
});

// JCGM 100:2008, 4.3.7 and 4.3.9: a / sqrt(3) and a / sqrt(6).
it('takes half-widths to standard uncertainties', () => {
  expect(uniformU(3) ** 2).toBeCloseTo(3, 12);
  expect(triangularU(3) ** 2).toBeCloseTo(1.5, 12);
});

it('combines entries and leaves unlimited degrees of freedom unlimited', () => {
  const entries = [entry('a', 'A', 3, 'px', -1, null), entry('b', 'B', 2, 'm', 2, null)];
  expect(combine(entries)).toEqual({ u: 5, dof: null });
  expect(entries[0]).toMatchObject({ contribution: 3, sensitivity: -1 });
});
