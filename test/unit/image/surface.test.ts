import { describe, expect, it } from 'vitest';
import type { GreyFrame } from '../../../src/core/frame';
import { unrollSurface } from '../../../src/image/surface';

const SIZE = 81;
const frameOf = (grey: (x: number, y: number) => number): GreyFrame => ({
  index: 0,
  width: SIZE,
  height: SIZE,
  white: 65_535,
  data: Uint16Array.from({ length: SIZE * SIZE }, (_, p) =>
    Math.round(grey(p % SIZE, Math.floor(p / SIZE))),
  ),
});
const plainBall = {
  middle: [40, 40],
  radius: 30,
  shape: [1, 0, 0, 1],
  plain: () => 10_000,
  noise: () => 25,
  faulty: () => false,
} as const;

describe('the unrolled face', () => {
  it('has a pattern where it is, directions going from x towards y', () => {
    // 1000 cos(angle - 90 degrees): brightest below the middle, as y points down.
    const frame = frameOf((x, y) => 10_000 + 1000 * Math.sin(Math.atan2(y - 40, x - 40)));
    const { radii, angles, residual } = unrollSurface(frame, plainBall);
    expect(residual.length).toBe(radii.length * angles);
    for (let r = 0; r < radii.length; r++) {
      for (let k = 0; k < angles; k++) {
        const expected = 1000 * Math.sin((2 * Math.PI * k) / angles);
        // A direction gathers a few pixels around it.
        expect(Math.abs((residual[r * angles + k] as number) - expected)).toBeLessThan(120);
      }
    }
  });

  it('states the variance of the mean of as many pixels as a direction gathers', () => {
    const { radii, angles, variance } = unrollSurface(
      frameOf(() => 10_000),
      plainBall,
    );
    const ring = (radii.length - 1) * angles;
    const outer = variance.subarray(ring, ring + angles);
    const pixels = 25 / (outer.reduce((a, b) => a + b, 0) / angles);
    // Ring from 0.8 to 0.92 of 30 px, shared by 64 directions.
    expect(pixels).toBeGreaterThan((0.8 * Math.PI * 900 * (0.92 ** 2 - 0.8 ** 2)) / 64);
    expect(pixels).toBeLessThan((1.2 * Math.PI * 900 * (0.92 ** 2 - 0.8 ** 2)) / 64);
  });

  it('has no value where nothing was seen', () => {
    const right = unrollSurface(
      frameOf(() => 10_000),
      {
        ...plainBall,
        faulty: (pixel) => pixel % SIZE < 36,
      },
    );
    const { angles, radii, variance } = right;
    const outer = (radii.length - 1) * angles;
    expect(variance[outer + angles / 2]).toBe(Number.POSITIVE_INFINITY);
    expect(variance[outer]).toBeLessThan(25);
  });

  it("undoes the outline's stretch", () => {
    // An image drawn out by 5 % along x: a ring of the ball is an ellipse in the image.
    const frame = frameOf((x, y) => {
      const r = Math.hypot((x - 40) / 1.05, y - 40) / 30;
      return r >= 0.6 && r < 0.8 ? 12_000 : 10_000;
    });
    const { angles, residual } = unrollSurface(frame, {
      ...plainBall,
      shape: [1 / 1.05, 0, 0, 1],
    });
    const ring = residual.subarray(2 * angles, 3 * angles);
    for (const value of ring) expect(value).toBe(2000);
  });
});
