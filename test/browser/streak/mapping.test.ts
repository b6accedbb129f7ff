import { describe, expect, it } from 'vitest';
import { toViewport } from '../../../src/ui/film/view';
import {
  alongToLeft,
  fitTime,
  frameAt,
  frameToTop,
  leftToAlong,
  revealFrame,
  scrollTime,
  slopeOf,
  spreadLabels,
  topToFrame,
  zoomTime,
} from '../../../src/ui/streak/mapping';

const view = { scale: 1.25, x0: 40, y0: 0, fitted: false };

describe('across', () => {
  it('stands exactly under the film, whichever way the ball flies', () => {
    for (const axis of [
      [1, 0],
      [-1, 0],
      [0.96, 0.28],
      [-0.8, -0.6],
    ] as const) {
      const geometry = { origin: [330.4, 128] as const, axis, from: -300, length: 700 };
      const along = 123.4;
      const point = [330.4 + along * axis[0], 128 + along * axis[1]] as const;
      const left = alongToLeft(geometry, view, 900, along);
      expect(left).toBeCloseTo(toViewport(view, point)[0], 9);
      expect(leftToAlong(geometry, view, 900, left)).toBeCloseTo(along, 9);
    }
  });

  it('has its own scale for a steep flight: all samples fill the width', () => {
    const geometry = {
      origin: [50, 10] as const,
      axis: [0.28, 0.96] as const,
      from: -20,
      length: 400,
    };
    expect(alongToLeft(geometry, view, 800, -20.5)).toBe(0);
    expect(alongToLeft(geometry, view, 800, 379.5)).toBe(800);
    expect(leftToAlong(geometry, view, 800, 200)).toBeCloseTo(79.5, 9);
  });
});

describe('down', () => {
  const fitted = fitTime(400, 320);

  it('shows all frames at first, each around its whole number', () => {
    expect(frameToTop(fitted, -0.5)).toBe(0);
    expect(frameToTop(fitted, 399.5)).toBeCloseTo(320, 9);
    expect(frameAt(fitted, 0, 400)).toBe(0);
    expect(frameAt(fitted, 999, 400)).toBe(399);
    expect(frameAt(fitted, frameToTop(fitted, 123), 400)).toBe(123);
  });

  it('stretches about the pointer, to more than a CSS pixel a frame, and back to all frames', () => {
    const zoomed = zoomTime(fitted, 10, 100, 400, 320);
    expect(zoomed.rowHeight).toBeCloseTo(8, 12);
    expect(topToFrame(zoomed, 100)).toBeCloseTo(topToFrame(fitted, 100), 9);
    expect(zoomTime(zoomed, 1e-6, 17, 400, 320)).toEqual(fitted);
    expect(zoomTime(fitted, 1e6, 100, 400, 320).rowHeight).toBe(24);
  });

  it('never scrolls beyond the film', () => {
    const zoomed = zoomTime(fitted, 10, 100, 400, 320);
    expect(scrollTime(zoomed, 1e6, 400, 320).topFrame).toBe(-0.5);
    expect(frameToTop(scrollTime(zoomed, -1e6, 400, 320), 399.5)).toBeCloseTo(320, 9);
  });

  it('reveals a frame by scrolling as little as needed', () => {
    const zoomed = { rowHeight: 8, topFrame: 99.5 };
    expect(revealFrame(zoomed, 120, 400, 320)).toBe(zoomed);
    expect(frameToTop(revealFrame(zoomed, 50, 400, 320), 49.5)).toBeCloseTo(0, 9);
    expect(frameToTop(revealFrame(zoomed, 200, 400, 320), 200.5)).toBeCloseTo(320, 9);
  });
});

describe('slopeOf', () => {
  it('is pixels a frame, either way', () => {
    expect(slopeOf({ frame: 100, along: 20 }, { frame: 150, along: 320 })).toBe(6);
    expect(slopeOf({ frame: 150, along: 320 }, { frame: 100, along: 20 })).toBe(6);
    expect(slopeOf({ frame: 5, along: 0 }, { frame: 5, along: 9 })).toBeNull();
  });
});

describe('spreadLabels', () => {
  it('leaves labels that do not meet where they are', () => {
    expect(spreadLabels([10, 50, 200], 18, 300)).toEqual([10, 50, 200]);
  });

  it('keeps the order and the spacing, whatever order they are given in', () => {
    expect(spreadLabels([54, 50, 52], 18, 300)).toEqual([86, 50, 68]);
  });

  it('stays above the bottom', () => {
    expect(spreadLabels([290, 295, 299], 18, 300)).toEqual([264, 282, 300]);
  });
});
