import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openEnd } from '../../../src/launch/boundary';
import {
  densityBehind,
  pressureBehind,
  rootBetween,
  soundOf,
  velocityGain,
} from '../../../src/launch/waves';

const GAS = { gamma: 1.4, constant: 287.05287 };
const AIR = { density: 1.2, inward: 0, pressure: 1e5 };
const OUTSIDE = { pressure: 1e5, temperature: 293.15, entranceLoss: 0 };

describe('waves', () => {
  it('the pressure behind a wave is the inverse of the velocity gained', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 50, noNaN: true }), (ratio) => {
        const gain = velocityGain(GAS, AIR, ratio * AIR.pressure);
        expect(pressureBehind(GAS, AIR, gain) / AIR.pressure / ratio).toBeCloseTo(1, 9);
      }),
    );
  });

  it('a weak wave changes density as sound does', () => {
    const more = densityBehind(GAS, AIR, 1.0001 * AIR.pressure) - AIR.density;
    expect((0.0001 * AIR.pressure) / more / soundOf(GAS, AIR) ** 2).toBeCloseTo(1, 3);
  });

  it('a wall that flees faster than the gas can follow leaves a vacuum', () => {
    expect(pressureBehind(GAS, AIR, -6 * soundOf(GAS, AIR))).toBe(0);
  });

  it('finds roots, and the nearer end where there is none', () => {
    expect(rootBetween((x) => x ** 3 - 2, 0, 2)).toBeCloseTo(Math.cbrt(2), 12);
    expect(rootBetween((x) => x + 1, 0, 2)).toBe(0);
    expect(rootBetween((x) => x - 3, 0, 2)).toBe(2);
  });
});

describe('an open end', () => {
  const open = openEnd(GAS, OUTSIDE);

  it('leaves air alone that is as that outside', () => {
    const { inward, pressure } = open({ ...AIR, inward: 0 });
    expect(inward).toBeCloseTo(0, 9);
    expect(pressure).toBeCloseTo(1e5, 6);
  });

  it('draws in air of the total enthalpy outside', () => {
    const { inward, pressure, density } = open({ ...AIR, pressure: 7e4, inward: 20 });
    expect(inward).toBeGreaterThan(20);
    const heat = 3.5 * 287.05287;
    expect(pressure / density / 287.05287 + inward ** 2 / (2 * heat)).toBeCloseTo(293.15, 9);
    expect(pressure).toBeLessThan(1e5);
  });

  it('a loss at the entrance lets in less, choked and unchoked', () => {
    const lossy = openEnd(GAS, { ...OUTSIDE, entranceLoss: 0.5 });
    for (const pressure of [10, 5e4, 9e4]) {
      const facing = { density: (1.2 * pressure) / 1e5, inward: 0, pressure };
      const flux = (state: ReturnType<typeof open>) => state.density * state.inward;
      expect(flux(lossy(facing))).toBeLessThan(flux(open(facing)));
      expect(flux(lossy(facing))).toBeGreaterThan(0.5 * flux(open(facing)));
    }
  });

  it('lets gas out at the outside pressure, or as it comes where it comes faster than sound', () => {
    const out = open({ density: 1.5, inward: 0, pressure: 1.3e5 });
    expect(out.pressure).toBe(1e5);
    expect(out.inward).toBeLessThan(0);
    const fast = { density: 1.5, inward: -500, pressure: 1.3e5 };
    expect(open(fast)).toEqual(fast);
    // Against a higher pressure outside only a strong enough shock stands in its way.
    const thin = { density: 0.6, inward: -900, pressure: 5e4 };
    expect(open(thin)).toEqual(thin);
    // Sound at 342 m/s, a shock to twice the pressure at 1.363 times that.
    expect(open({ ...thin, inward: -470 })).toEqual({ ...thin, inward: -470 });
    expect(open({ ...thin, inward: -460 }).pressure).toBe(1e5);
  });
});
