import { describe, expect, it } from 'vitest';
import { parseQuantity, type QuantityRule, quantityText } from '../../../src/core/quantityText';

const length: QuantityRule = { name: 'known length', kind: 'length', unit: 'mm', sign: 'positive' };
const time: QuantityRule = { name: 'exposure', kind: 'time', unit: 'µs', sign: 'positive' };
const rate: QuantityRule = {
  name: 'recording rate',
  kind: 'rate',
  unit: '/s',
  sign: 'positive',
  min: 1,
  max: 1e7,
};

const readingOf = (text: string, rule: QuantityRule) => {
  const outcome = parseQuantity(text, rule);
  return outcome.ok ? outcome.value : outcome.reason.code;
};

describe('typed quantities', () => {
  it.each([
    ['200 mm', length, 0.2],
    ['200', length, 0.2],
    // 1 in = 25.4 mm exactly (NIST SP 811, Appendix B).
    ['7.87 in', length, 7.87 * 0.0254],
    ['20 us', time, 20e-6],
    ['20 µs', time, 20e-6],
    ['20 μs', time, 20e-6],
    ['1/50000 s', time, 2e-5],
    ['.5ms', time, 5e-4],
    ['12000', rate, 12000],
    ['12 000 fps', rate, 12000],
    ['12\u202f000 /s', rate, 12000],
    ['12 kHz', rate, 12000],
    ['1.2e4 Hz', rate, 12000],
  ] as const)('reads %s', (text, rule, si) => {
    expect(readingOf(text, rule)).toBeCloseTo(si, 12);
  });

  it.each([
    ['0', rate, 'notPositive'],
    ['-12000', rate, 'notPositive'],
    ['−12000', rate, 'notPositive'],
    ['fast', rate, 'notANumber'],
    ['', rate, 'empty'],
    ['3e8', rate, 'outOfRange'],
    ['0.5', rate, 'outOfRange'],
    ['12,000', rate, 'decimalComma'],
    ['200 parsec', length, 'unknownUnit'],
    ['1/0 s', time, 'divisionByZero'],
    ['1e999', length, 'tooLarge'],
    ['200 mm wide', length, 'unknownUnit'],
    ['1 2', length, 'unknownUnit'],
  ] as const)('refuses %s', (text, rule, code) => {
    expect(readingOf(text, rule)).toBe(code);
  });

  it('says what is wrong in words', () => {
    const outcome = parseQuantity('3e8', rate);
    expect(outcome.ok ? '' : outcome.reason.message).toBe(
      'Recording rate must be between 1 /s and 10000000 /s; 300000000 /s is not.',
    );
  });

  it('reads back what it shows', () => {
    for (const si of [0.2, 0.0254, 1.234567, 5e-5]) {
      expect(readingOf(quantityText(si, 'length', 'mm'), length)).toBeCloseTo(si, 9);
    }
    expect(quantityText(293.15, 'temperature', '°C')).toBe('20 °C');
  });

  it('reads temperatures with their own zero', () => {
    const rule: QuantityRule = { name: 'air', kind: 'temperature', unit: '°C', sign: 'positive' };
    expect(readingOf('20', rule)).toBeCloseTo(293.15, 9);
    expect(readingOf('68 F', rule)).toBeCloseTo(293.15, 9);
    expect(readingOf('293.15 K', rule)).toBeCloseTo(293.15, 9);
  });
});
