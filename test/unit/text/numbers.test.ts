import { describe, expect, it } from 'vitest';
import type { QuantityRule } from '../../../src/core/quantityText';
import { fieldText, inLanguage, readField } from '../../../src/text/numbers';

const LENGTH: QuantityRule = { name: 'length', kind: 'length', unit: 'mm', sign: 'any' };
const RATE: QuantityRule = { name: 'rate', kind: 'rate', unit: '/s', sign: 'positive' };

describe('numbers in a language', () => {
  it.each([
    ['181.34 ± 0.42 m/s', '181,34 ± 0,42 m/s'],
    ['\u22120.5 mm', '\u22120,5 mm'],
    ['(1.20 ± 0.05) × 10⁻⁷ m', '(1,20 ± 0,05) × 10⁻⁷ m'],
    ['12\u202f000.5 /s', '12\u202f000,5 /s'],
    ['1.5e-7 m', '1,5e-7 m'],
    ['99.5\u00a0%', '99,5\u00a0%'],
  ])('%s has a comma in German, Spanish and French', (core, shown) => {
    for (const language of ['de', 'es', 'fr'] as const) {
      expect(inLanguage(core, language)).toBe(shown);
    }
    expect(inLanguage(core, 'en')).toBe(core);
  });

  it.each(['clip1.2.mp4', '2031.04 shot 1.2', 'no value', 'x 1.5'])('%s stays', (text) => {
    expect(inLanguage(text, 'de')).toBe(text);
  });
});

describe('what is typed', () => {
  it.each([
    ['1,5 mm', 1.5e-3],
    ['1.5 mm', 1.5e-3],
    [',5', 5e-4],
    ['-0,123', -1.23e-4],
    ['0.123', 1.23e-4],
    ['12.3456', 12.3456e-3],
    ['30,125', 30.125e-3],
    ['12 000,5', 12.0005],
    ['7,87 in', 7.87 * 0.0254],
  ])('%s is read in German', (text, si) => {
    const read = readField(text, LENGTH, 'de');
    expect(read.ok && read.value).toBeCloseTo(si, 9);
  });

  it('takes a fraction with a comma in it', () => {
    const read = readField('1/0,5', RATE, 'fr');
    expect(read.ok && read.value).toBe(2);
  });

  it.each(['1.234', '12.000', '120.000 mm', '1.234.567', '1.234,5', '1,234.5', '1,2,3'])(
    '%s may be a thousand times another and is refused',
    (text) => {
      for (const language of ['de', 'es', 'fr'] as const) {
        const read = readField(text, LENGTH, language);
        expect(read.ok ? read.value : read.reason.code).toBe('decimalOrThousands');
      }
    },
  );

  it.each(['1,5', '12,000'])('%s is refused in English', (text) => {
    const read = readField(text, LENGTH, 'en');
    expect(read.ok ? read.value : read.reason.code).toBe('decimalComma');
  });

  it('what a field shows is read as the same again', () => {
    for (const language of ['en', 'de', 'es', 'fr'] as const) {
      // Three decimals and no thousands: the decimal sign of the language itself is never refused.
      const shown = fieldText(1.234e-3, 'length', 'mm', language);
      const read = readField(shown, LENGTH, language);
      expect(read.ok && read.value).toBeCloseTo(1.234e-3, 12);
    }
  });
});
