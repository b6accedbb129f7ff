import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseQuantity, type QuantityRule, quantityText } from '../../../src/core/quantityText';
import {
  findUnit,
  fromSi,
  toSi,
  UNITS,
  type Unit,
  type UnitKind,
} from '../../../src/core/unitTable';
import { LANGUAGES } from '../../../src/text/language';
import { fieldText, readField } from '../../../src/text/numbers';

const SEED = { seed: 20_310_417 };
const ALL = (Object.entries(UNITS) as [UnitKind, readonly Unit[]][]).flatMap(([kind, units]) =>
  units.map((unit) => ({ kind, unit })),
);
const any = fc.constantFrom(...ALL);
const language = fc.constantFrom(...LANGUAGES);
/** Sizes a person may type, either sign. */
const number = fc
  .tuple(fc.double({ min: 1, max: 10, noNaN: true }), fc.integer({ min: -9, max: 9 }), fc.boolean())
  .map(([digits, power, negative]) => (negative ? -1 : 1) * digits * 10 ** power);
const ruleOf = (kind: UnitKind, unit: Unit): QuantityRule => ({
  ...{ name: 'value', kind, unit: unit.symbol, sign: 'any' },
});
const readValue = (outcome: ReturnType<typeof parseQuantity>): number => {
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value;
};

describe('units', () => {
  it('go to SI and back', () => {
    fc.assert(
      fc.property(any, number, ({ unit }, value) => {
        const back = fromSi(toSi(value, unit), unit);
        // Zero of a temperature scale is far from zero: it is added and taken off again.
        const size = Math.abs(value) + Math.abs(unit.zero / unit.factor);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(4 * Number.EPSILON * size);
      }),
      SEED,
    );
  });

  it('are found by their symbol and by every spelling that no unit before it has', () => {
    for (const { kind, unit } of ALL) {
      for (const text of [unit.symbol, ...unit.spellings]) {
        expect(findUnit(kind, text)).toBe(unit);
        expect(findUnit(kind, text.replace('µ', 'μ'))).toBe(unit); // micro sign, Greek letter
      }
    }
  });

  it('a quantity written for a field is read as what it was, in every unit and language', () => {
    fc.assert(
      fc.property(any, number, language, ({ kind, unit }, typed, into) => {
        const value = toSi(typed, unit);
        const shown = fieldText(value, kind, unit.symbol, into);
        const read = readValue(readField(shown, ruleOf(kind, unit), into));
        // Seven figures are shown of the number in its unit.
        const size = Math.abs(fromSi(value, unit)) * unit.factor;
        const rounding = 4 * Number.EPSILON * (size + unit.zero);
        expect(Math.abs(read - value)).toBeLessThanOrEqual(5.000_001e-7 * size + rounding);
        expect(fieldText(read, kind, unit.symbol, into)).toBe(shown);
      }),
      { ...SEED, numRuns: 2000 },
    );
  });
});

describe('what is typed', () => {
  const space = fc.constantFrom('', ' ', '  ', '\t', '\u00a0', '\u2009', '\u202f');

  it('means the same with any spaces around it and before its unit', () => {
    fc.assert(
      fc.property(any, number, space, space, space, ({ kind, unit }, typed, a, b, c) => {
        const plain = quantityText(toSi(typed, unit), kind, unit.symbol);
        const [digits = '', ...rest] = plain.split(' ');
        const spaced = `${a}${digits}${b}${rest.join(' ')}${c}`;
        const rule = ruleOf(kind, unit);
        expect(parseQuantity(spaced, rule)).toEqual(parseQuantity(plain, rule));
      }),
      SEED,
    );
  });

  it('may have its thousands set apart by a space of any kind', () => {
    const apart = fc.constantFrom(' ', '\u00a0', '\u2009', '\u202f');
    fc.assert(
      fc.property(fc.integer({ min: 1000, max: 999_999_999 }), apart, language, (n, gap, into) => {
        const grouped = String(n).replace(/\B(?=(\d{3})+$)/g, gap);
        const rule = ruleOf('count', UNITS.count[0]);
        expect(readValue(readField(grouped, rule, into))).toBe(n);
      }),
      SEED,
    );
  });

  it('has decimals behind a comma where the language has them there, and not in English', () => {
    const parts = fc.tuple(
      fc.integer({ min: 0, max: 9999 }),
      fc.string({ unit: digit(), minLength: 1 }),
    );
    fc.assert(
      fc.property(parts, fc.constantFrom('de', 'es', 'fr'), ([whole, decimals], into) => {
        const rule = ruleOf('length', UNITS.length[2]);
        const point = readValue(parseQuantity(`${whole}.${decimals}`, rule));
        expect(readValue(readField(`${whole},${decimals}`, rule, into))).toBe(point);
        expect(readField(`${whole},${decimals}`, rule, 'en')).toMatchObject({
          ok: false,
          reason: { code: 'decimalComma' },
        });
      }),
      SEED,
    );
  });
});

function digit() {
  return fc.constantFrom(...'0123456789');
}
