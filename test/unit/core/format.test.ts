import { describe, expect, it } from 'vitest';
import {
  formatCount,
  formatInterval,
  formatNumber,
  formatQuantity,
  NO_VALUE,
  quantityParts,
  shortNumber,
} from '../../../src/core/format';

const plain = (value: number, u: number) => {
  const parts = quantityParts({ value, u });
  return parts === null ? null : `${parts.value} ± ${parts.u}${parts.exponent}`;
};

describe('uncertainty to two figures, value to the same place', () => {
  // JCGM 100:2008, 7.2.6 (27 mOhm: 10,057 62 Ohm is given as 10,058 Ohm) and 7.2.2
  // (100,021 47 g with 0,35 mg); from memory.
  it('agrees with the published example', () => {
    expect(plain(10.05762, 0.027)).toBe('10.058 ± 0.027');
    expect(plain(100.02147, 0.00035)).toBe('100.02147 ± 0.00035');
  });

  it.each([
    [181.338, 0.4178, '181.34 ± 0.42'],
    [181.338, 0.0995, '181.34 ± 0.10'],
    [181.338, 0.996, '181.3 ± 1.0'],
    [181.338, 9.96, '181 ± 10'],
    [181.338, 41.78, '181 ± 42'],
    [181.338, 417.8, '180 ± 420'],
    [0.000312, 0.000048, '0.000312 ± 0.000048'],
    [-0.5, 0.2, '\u22120.50 ± 0.20'],
    [-0.001, 0.2, '0.00 ± 0.20'],
    [12000, 0.6, '12\u202f000.00 ± 0.60'],
    [5.0e6, 2.4e4, '5.000 ± 0.024 × 10⁶'],
    [2.35e-9, 1.2e-11, '2.350 ± 0.012 × 10⁻⁹'],
    [0, 0.03, '0.000 ± 0.030'],
  ])('%d with u %d reads %s', (value, u, text) => {
    expect(plain(value, u)).toBe(text);
  });

  it('never prints a number that is none', () => {
    expect(formatQuantity({ value: Number.NaN, u: 1 }, 'speed', 'm/s')).toBe(NO_VALUE);
    expect(formatQuantity({ value: 1, u: Number.POSITIVE_INFINITY }, 'speed', 'm/s')).toBe(
      NO_VALUE,
    );
    expect(formatNumber(Number.NaN)).toBe(NO_VALUE);
    expect(formatInterval([Number.NaN, 1], 1, 'speed', 'm/s')).toBe(NO_VALUE);
  });
});

describe('units', () => {
  // 1 ft = 0.3048 m and 1 mi = 1609.344 m exactly (NIST SP 811, Appendix B).
  it('converts value and uncertainty alike', () => {
    expect(formatQuantity({ value: 100, u: 0.5 }, 'speed', 'ft/s')).toBe('328.1 ± 1.6 ft/s');
    expect(formatQuantity({ value: 100, u: 0.5 }, 'speed', 'mph')).toBe('223.7 ± 1.1 mph');
    expect(formatQuantity({ value: 100, u: 0.5 }, 'speed', 'km/h')).toBe('360.0 ± 1.8 km/h');
  });

  it('puts the common exponent outside the brackets', () => {
    expect(formatQuantity({ value: 5e6, u: 2.4e4 }, 'speed', 'm/s')).toBe(
      '(5.000 ± 0.024) × 10⁶ m/s',
    );
  });

  it('shifts a temperature but not its uncertainty', () => {
    expect(formatQuantity({ value: 293.15, u: 2 }, 'temperature', '°C')).toBe('20.0 ± 2.0 °C');
  });

  it('states an exact number without an uncertainty', () => {
    expect(formatQuantity({ value: 0.03, u: 0 }, 'length', 'mm')).toBe('30 mm');
  });
});

describe('plain numbers', () => {
  it.each([
    [0.0995, 2, '0.10'],
    [123456, 4, '123\u202f500'],
    [1234567, 4, '1.235 × 10⁶'],
    [0, 3, '0.00'],
    [-2.5, 3, '\u22122.50'],
  ])('%d to %d figures reads %s', (x, figures, text) => {
    expect(formatNumber(x, figures)).toBe(text);
  });

  it('groups counts', () => {
    expect(formatCount(12000)).toBe('12\u202f000');
    expect(formatCount(999)).toBe('999');
  });

  it('gives interval bounds at the place of the uncertainty', () => {
    expect(formatInterval([180.5132, 182.1661], 0.42, 'speed', 'm/s')).toBe('180.51 to 182.17 m/s');
  });
});

it.each([
  [1.2345e-5, '1.23 × 10⁻⁵'],
  [0.012345, '0.0123'],
  [-0.0012345, '\u22121.23 × 10⁻³'],
  [144.4, '144'],
  [9996, '1.00 × 10⁴'],
  [176_651, '1.77 × 10⁵'],
  [0, '0.00'],
])('a column of numbers has no filling zeros: %d reads %s', (x, text) => {
  expect(shortNumber(x, 3)).toBe(text);
});
