import { describe, expect, it } from 'vitest';
import { centreNoise, edgeSlope } from '../../../src/plan/centreNoise';
import { centreBound } from '../../validate/bound';
import type { Ball, Scene } from '../../validate/render/scene';

const NOISE = 5;
const CONTRAST = 100;
const SOFTNESS = 0.6;
const RADIUS = 20;
const MIDDLE = 31.5;
const window = { x0: 0, y0: 0, width: 64, height: 64 };
const camera = { read: NOISE ** 2 - 1 / 12, gain: 0 };

/** The bound of the validation's renderer, which knows nothing of `centreNoise`. */
function rendered(sweep: number, cut: number | null) {
  const ball: Ball = {
    ...{ x: MIDDLE, y: MIDDLE, radius: RADIUS, sweep: [sweep, 0] as const },
    ...{ brightness: 60 + CONTRAST, light: null },
  };
  // What lies beyond the cut is hidden to the left.
  const flange = cut === null ? null : { normal: [-1, 0] as const, offset: -cut, level: 60 };
  const scene: Scene & { ball: Ball } = {
    ...{ backdrop: { level: 60, slope: [0, 0], waves: [], flange }, ball },
    ...{ fragment: null, softness: SOFTNESS },
  };
  const bound = centreBound(scene, window, camera, KNOWN, 1);
  return { along: Math.sqrt(bound.xx), across: Math.sqrt(bound.yy) };
}
/** The radius as four frames in full view tell it: bound of one, sqrt(blur / (sqrt(pi) radius)) / (c/n), over two. */
const KNOWN = { radiusU: 0.0034, softnessU: 0.01, sweepU: 0.02 };

const disc = {
  ...{ radius: RADIUS, contrastToNoise: CONTRAST / NOISE, softness: SOFTNESS, sweep: 0 },
  ...{ coded: false, seenLeft: RADIUS, seenRight: RADIUS },
};

/** As `docs/validation.md` has errors over the bound, all frames of the classes clean and blur. */
const SHARP = 1.09;
const BLURRED = 1.24;

describe('the noise expected of a centre', () => {
  it.each([
    ['sharp', 0, SHARP],
    ['blurred by a radius', RADIUS, BLURRED],
  ])(
    'of a disc in full view is the bound times what was measured beyond it: %s',
    (_, sweep, over) => {
      const { alongU, acrossU, visible } = centreNoise({ ...disc, sweep });
      const bound = rendered(sweep, null);
      expect(visible).toBe(1);
      expect(alongU / bound.along / over).toBeGreaterThan(0.96);
      expect(alongU / bound.along / over).toBeLessThan(1.04);
      expect(acrossU / bound.across / over).toBeGreaterThan(0.96);
      expect(acrossU / bound.across / over).toBeLessThan(1.04);
    },
  );

  it('grows beside a cut as the bound does', () => {
    for (const seenLeft of [0, 0.5 * RADIUS]) {
      const { alongU, visible } = centreNoise({ ...disc, seenLeft });
      const bound = rendered(0, MIDDLE - seenLeft);
      expect(visible).toBeCloseTo(1 - Math.acos(seenLeft / RADIUS) / Math.PI, 2);
      expect(alongU / bound.along / SHARP).toBeGreaterThan(0.8);
      expect(alongU / bound.along / SHARP).toBeLessThan(1.2);
    }
  });

  it('is that of the codec where a sharp film is kept with loss', () => {
    const { alongU } = centreNoise({ ...disc, contrastToNoise: 1e4, coded: true });
    expect(alongU).toBeCloseTo(0.05, 3);
    const small = centreNoise({ ...disc, radius: 5, contrastToNoise: 1e4, coded: true });
    expect(small.alongU).toBeCloseTo(0.1, 3);
  });
});

describe('the slope of a blurred edge', () => {
  it('is that of a Gaussian without a box, and of the box where it is long', () => {
    const gaussian = 1 / (2 * 0.8 * Math.sqrt(Math.PI));
    expect(edgeSlope(0.8, 0)).toBeCloseTo(gaussian, 12);
    expect(edgeSlope(0.8, 2e-3)).toBeCloseTo(gaussian, 6);
    expect(edgeSlope(0.01, 5)).toBeCloseTo(1 / 5, 3);
  });

  it('is the integral of the squared slope, summed', () => {
    const [s, w] = [0.7, 2.3];
    const cdf = (x: number) => {
      let sum = 0;
      for (let t = -8; t < x / s; t += 1e-3) sum += Math.exp((-t * t) / 2) * 1e-3;
      return sum / Math.sqrt(2 * Math.PI);
    };
    let sum = 0;
    for (let x = -6; x < 6; x += 0.02) sum += ((cdf(x + w / 2) - cdf(x - w / 2)) / w) ** 2 * 0.02;
    expect(edgeSlope(s, w)).toBeCloseTo(sum, 3);
  });
});
