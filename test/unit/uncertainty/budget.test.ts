import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quantity } from '../../../src/core/quantity';
import { combine, entry } from '../../../src/uncertainty/budget';
import {
  type Correlated,
  independent,
  propagateCorrelated,
  standardU,
} from '../../../src/uncertainty/propagation';

const SEED = { seed: 20_310_417 };
const size = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
const steep = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
const slope = fc.oneof(
  fc.constant(0),
  steep,
  steep.map((one) => -one),
);
const dof = fc.integer({ min: 1, max: 1000 });
const line = (freedom: fc.Arbitrary<number | null>) =>
  fc
    .tuple(size, slope, freedom)
    .map(([u, sensitivity, nu]) => entry('input', 'B', u, 'm', sensitivity, nu));
const lines = (freedom: fc.Arbitrary<number | null> = fc.option(dof)) =>
  fc.array(line(freedom), { minLength: 1, maxLength: 12 });
/** Relative, for sums of squares in another order. */
const near = (a: number, b: number, within = 1e-12) =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(within * Math.max(Math.abs(a), Math.abs(b)));

describe('a budget of independent inputs (JCGM 100:2008, 5.1.2)', () => {
  it('has the square root of the sum of the squared contributions, each |sensitivity| u', () => {
    fc.assert(
      fc.property(lines(), (entries) => {
        const squares = entries.reduce(
          (sum, { u, sensitivity }) => sum + (u * sensitivity) ** 2,
          0,
        );
        near(combine(entries).u ** 2, squares);
      }),
      SEED,
    );
  });

  it('does not depend on the order of its lines', () => {
    const shuffled = lines().chain((entries) =>
      fc.tuple(fc.constant(entries), fc.shuffledSubarray(entries, { minLength: entries.length })),
    );
    fc.assert(
      fc.property(shuffled, ([entries, others]) => {
        const [a, b] = [combine(entries), combine(others)];
        near(a.u, b.u);
        if (a.dof === null) expect(b.dof).toBeNull();
        else near(a.dof, b.dof ?? Number.NaN, 1e-9);
      }),
      SEED,
    );
  });

  it('grows with every line that is added', () => {
    fc.assert(
      fc.property(lines(), line(fc.option(dof)), (entries, more) => {
        const before = combine(entries).u;
        expect(combine([...entries, more]).u).toBeGreaterThanOrEqual(before * (1 - 1e-15));
      }),
      SEED,
    );
  });

  it('grows k times where each input is known k times worse; the degrees of freedom stay', () => {
    fc.assert(
      fc.property(lines(), fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (entries, k) => {
        const wider = entries.map((one) =>
          entry(one.source, one.type, k * one.u, one.unit, one.sensitivity, one.dof),
        );
        const [a, b] = [combine(entries), combine(wider)];
        near(b.u, k * a.u);
        if (a.dof !== null) near(a.dof, b.dof ?? Number.NaN, 1e-9);
      }),
      SEED,
    );
  });
});

describe('effective degrees of freedom (JCGM 100:2008, G.4.1, note 1 and eq. G.2b)', () => {
  const told = lines(dof).filter((entries) => entries.some(({ contribution }) => contribution > 0));

  it('lie between the fewest of a contribution and the sum of all', () => {
    fc.assert(
      fc.property(told, (entries) => {
        const all = entries.map((one) => one.dof ?? 0);
        const effective = combine(entries).dof ?? Number.NaN;
        expect(effective).toBeGreaterThanOrEqual(Math.min(...all) * (1 - 1e-9));
        expect(effective).toBeLessThanOrEqual(all.reduce((sum, nu) => sum + nu) * (1 + 1e-9));
      }),
      SEED,
    );
  });

  it('only grow by a contribution that is exactly known', () => {
    fc.assert(
      fc.property(told, line(fc.constant(null)), (entries, exact) => {
        const before = combine(entries).dof ?? 0;
        expect(combine([...entries, exact]).dof ?? 0).toBeGreaterThanOrEqual(before * (1 - 1e-9));
      }),
      SEED,
    );
  });
});

/** Inputs with the covariance of mixed independent errors, which can be one. */
const correlated = fc.integer({ min: 1, max: 5 }).chain((n) => {
  const few = fc.double({ min: -3, max: 3, noNaN: true });
  const row = fc.array(few, { minLength: n, maxLength: n });
  return fc.record({
    values: row,
    mixing: fc.array(row, { minLength: n, maxLength: n }),
    slopes: row,
  });
});
const covarianceOf = (mixing: readonly (readonly number[])[]) =>
  mixing.map((a) => mixing.map((b) => a.reduce((sum, x, k) => sum + x * (b[k] as number), 0)));

describe('correlated inputs (JCGM 100:2008, 5.2.2, eq. 13)', () => {
  const sumOf = (slopes: readonly number[]) => (inputs: readonly number[]) => [
    inputs.reduce((sum, x, i) => sum + (slopes[i] as number) * x, 0),
  ];

  it('give a linear result u² = Σ Σ c_i c_j u(x_i, x_j)', () => {
    fc.assert(
      fc.property(correlated, ({ values, mixing, slopes }) => {
        const covariance = covarianceOf(mixing);
        const expected = slopes.reduce(
          (sum, a, i) =>
            sum + slopes.reduce((inner, b, j) => inner + a * b * (covariance[i]?.[j] as number), 0),
          0,
        );
        const found = standardU(propagateCorrelated(sumOf(slopes), { values, covariance }), 0) ** 2;
        const scale = slopes.reduce(
          (sum, a, i) => sum + Math.abs(a) * standardU({ values, covariance }, i),
          0,
        );
        expect(Math.abs(found - expected)).toBeLessThanOrEqual(1e-9 * scale ** 2 + 1e-12);
      }),
      SEED,
    );
  });

  it('give as much as a budget where they are independent, and k times u for k times theirs', () => {
    fc.assert(
      fc.property(correlated, fc.double({ min: 0.01, max: 100, noNaN: true }), (drawn, k) => {
        const { values, mixing, slopes } = drawn;
        const us = mixing.map((row) => Math.abs(row[0] as number));
        const of = (factor: number): Correlated =>
          propagateCorrelated(
            sumOf(slopes),
            independent(values.map((value, i) => ({ value, u: factor * (us[i] as number) }))),
          );
        const budget = combine(us.map((u, i) => entry('x', 'B', u, '', slopes[i] as number, null)));
        expect(Math.abs(standardU(of(1), 0) - budget.u)).toBeLessThanOrEqual(
          1e-9 * (budget.u + 1e-3),
        );
        expect(Math.abs(standardU(of(k), 0) - k * budget.u)).toBeLessThanOrEqual(
          1e-9 * (k * budget.u + 1e-3),
        );
      }),
      SEED,
    );
  });

  it('move two results that are one and its double fully together', () => {
    fc.assert(
      fc.property(correlated, ({ values, mixing, slopes }) => {
        const model = (inputs: readonly number[]) => {
          const [one = 0] = sumOf(slopes)(inputs);
          return [one, 2 * one];
        };
        const { covariance } = propagateCorrelated(model, {
          values,
          covariance: covarianceOf(mixing),
        });
        const [a = 0, b = 0] = [covariance[0]?.[0], covariance[1]?.[1]];
        expect(Math.abs(b - 4 * a)).toBeLessThanOrEqual(1e-9 * (a + 1e-6));
        expect(Math.abs((covariance[0]?.[1] ?? 0) - 2 * a)).toBeLessThanOrEqual(1e-9 * (a + 1e-6));
      }),
      SEED,
    );
  });
});

describe('a coverage interval (JCGM 100:2008, G.6.4)', () => {
  const share = fc.double({ min: 0.01, max: 0.999, noNaN: true });

  it('is symmetrical, the wider the more it shall hold and the fewer degrees of freedom there are', () => {
    fc.assert(
      fc.property(size, share, share, dof, dof, (u, p, q, nu, more) => {
        const half = (coverage: number, freedom: number | null) => {
          const { interval, value } = quantity(0, u, freedom, coverage);
          expect(interval[1] - value).toBe(value - interval[0]);
          return interval[1];
        };
        const [low, high] = [Math.min(p, q), Math.max(p, q)];
        expect(half(high, nu)).toBeGreaterThanOrEqual(half(low, nu) * (1 - 1e-9));
        const [few, many] = [Math.min(nu, more), Math.max(nu, more)];
        expect(half(p, few)).toBeGreaterThanOrEqual(half(p, many) * (1 - 1e-9));
        expect(half(p, many)).toBeGreaterThanOrEqual(half(p, null) * (1 - 1e-6));
      }),
      SEED,
    );
  });
});
