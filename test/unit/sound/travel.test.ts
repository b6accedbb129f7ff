import { expect, it } from 'vitest';
import { backstopToMicrophone, blastLeadU, soundSpeedIn } from '../../../src/sound/travel';

it('knows the third side of the triangle as far as the two others tell', () => {
  const distance = { value: 1, u: 0 };
  const backstop = { value: 0.4, u: 0 };
  const { value, u } = backstopToMicrophone({ distance, toBackstop: null }, backstop);
  // From 0.6 to 1.4 m, as likely.
  expect(value).toBeCloseTo(1, 12);
  expect(u).toBeCloseTo(0.4 / Math.sqrt(3), 12);
  const toBackstop = { value: 1.1, u: 0.01 };
  expect(backstopToMicrophone({ distance, toBackstop }, backstop)).toEqual(toBackstop);
});

it('a microphone at the muzzle hears no early front', () => {
  expect(blastLeadU(0, 343)).toBe(0);
  expect(1e6 * blastLeadU(1, 343)).toBeCloseTo(38.8, 1);
});

it('a kelvin moves the speed of sound by 0.585 m/s at 20 C', () => {
  const exact = { value: 101_325, u: 0 };
  const { u } = soundSpeedIn({
    temperature: { value: 293.15, u: 1 },
    pressure: exact,
    humidity: { value: 0, u: 0 },
  });
  expect(u).toBeCloseTo(0.585, 3);
});
