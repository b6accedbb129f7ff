import { describe, expect, it } from 'vitest';
import { ellipseOf, frameNear, markPaths, thinned } from '../../../src/ui/film/marks';
import { greyAt, paintFrame, profileThrough } from '../../../src/ui/film/picture';

describe('ellipseOf', () => {
  it('has the eigenvalues and eigenvectors of the covariance', () => {
    // [[2, 1], [1, 2]] has eigenvalues 3 and 1 along (1, 1) and (1, -1): elementary linear algebra.
    const { major, minor, angle } = ellipseOf(Math.SQRT2, Math.SQRT2, 1);
    expect(major ** 2).toBeCloseTo(3, 12);
    expect(minor ** 2).toBeCloseTo(1, 12);
    expect(angle).toBeCloseTo(Math.PI / 4, 12);
  });

  it('lies along the axes without correlation', () => {
    expect(ellipseOf(3, 2, 0)).toEqual({ major: 3, minor: 2, angle: 0 });
    expect(ellipseOf(2, 3, 0).angle).toBeCloseTo(Math.PI / 2, 12);
  });

  it('becomes a line, not a fault, where correlation is full', () => {
    expect(ellipseOf(1, 1, 1).minor).toBe(0);
  });
});

describe('marks', () => {
  const row = Array.from({ length: 40 }, (_, i) => ({
    left: i * 2,
    top: 0,
    used: i !== 13,
    manual: i === 21,
  }));

  it('thins used centres to where they can be told apart, and no others', () => {
    const kept = thinned(row);
    expect(kept.filter(({ used, manual }) => used && !manual).map(({ left }) => left)).toEqual([
      0, 8, 16, 24, 32, 40, 48, 56, 64, 72,
    ]);
    expect(kept.some(({ used }) => !used)).toBe(true);
    expect(kept.some(({ manual }) => manual)).toBe(true);
  });

  it('have a shape of their own for each kind', () => {
    const paths = markPaths([
      { left: 10, top: 10, used: true, manual: false },
      { left: 20, top: 10, used: false, manual: false },
      { left: 30, top: 10, used: true, manual: true },
    ]);
    expect(paths.used).toMatch(/^M7 10a/);
    expect(paths.refused).toBe('M17 7l6 6m0 -6l-6 6');
    expect(paths.manual).toBe('M27 7h6v6h-6z');
  });

  it('are picked by the nearest within reach', () => {
    const at = (frame: number, x: number | null) => {
      const rest = { ux: null, uy: null, cov: null, used: true, manual: false };
      return { frame, x, y: x === null ? null : 5, ...rest };
    };
    const positions = [at(1, 10), at(2, null), at(3, 14)];
    const view = { scale: 2, x0: 0, y0: 0, fitted: false };
    expect(frameNear(positions, view, 26, 10, 9)).toBe(3);
    expect(frameNear(positions, view, 23, 10, 9)).toBe(1);
    expect(frameNear(positions, view, 26, 60, 9)).toBeNull();
  });
});

describe('the picture', () => {
  const frame = (data: Uint8Array | Uint16Array, white: number) => ({
    index: 0,
    width: 2,
    height: 2,
    data,
    white,
  });

  it('is the window of greys, 8 and 16 bit alike', () => {
    const rgba = new Uint8ClampedArray(16);
    paintFrame(frame(Uint8Array.of(0, 50, 100, 255), 255), { low: 50, high: 100 }, rgba);
    expect([...rgba]).toEqual([0, 0, 0, 255, 0, 0, 0, 255, ...Array(8).fill(255)]);
    const deep = frame(Uint16Array.of(0, 1000, 1500, 65535), 65535);
    paintFrame(deep, { low: 1000, high: 2000 }, rgba);
    expect([...rgba].filter((_, i) => i % 4 === 0)).toEqual([0, 0, 128, 255]);
    expect([...rgba].filter((_, i) => i % 4 === 3)).toEqual([255, 255, 255, 255]);
  });

  it('gives the grey of the pixel a point lies in', () => {
    const small = frame(Uint8Array.of(1, 2, 3, 4), 255);
    expect(greyAt(small, [0.49, 0.51])).toBe(3);
    expect(greyAt(small, [1.6, 0])).toBeNull();
    expect(greyAt(small, [-0.51, 0])).toBeNull();
  });

  it('has a straight profile on a plane of greys', () => {
    const width = 16;
    const data = Uint8Array.from(
      { length: width * width },
      (_, i) => 3 * (i % width) + 5 * Math.floor(i / width),
    );
    const plane = { index: 0, width, height: width, data, white: 255 };
    const profile = profileThrough(plane, [7.3, 6.1], [0.6, 0.8], 3, 4);
    expect(profile).toHaveLength(25);
    // On g = 3 x + 5 y the grey changes by 3 * 0.6 + 5 * 0.8 = 5.8 a pixel along the direction.
    for (const { offset, grey } of profile) {
      expect(grey).toBeCloseTo(3 * 7.3 + 5 * 6.1 + 5.8 * offset, 9);
    }
  });
});
