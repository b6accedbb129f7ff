import { describe, expect, it } from 'vitest';
import {
  FIT,
  fitView,
  panBy,
  resizeView,
  revealPoint,
  toImage,
  toViewport,
  zoomAbout,
} from '../../../src/ui/film/view';

const image = { width: 1024, height: 256 };
const viewport = { width: 512, height: 200 };

describe('fitView', () => {
  it('fills the width, centres the height, and begins half a pixel before the first pixel centre', () => {
    const view = fitView(image, viewport);
    expect(view.scale).toBe(0.5);
    expect(toViewport(view, [-0.5, -0.5])).toEqual([0, 36]);
    expect(toViewport(view, [1023.5, 255.5])).toEqual([512, 164]);
  });

  it('fits an upright film by its height', () => {
    const view = fitView({ width: 100, height: 400 }, viewport);
    expect(view.scale).toBe(0.5);
    expect(toViewport(view, [-0.5, -0.5])).toEqual([231, 0]);
  });
});

describe('zoomAbout', () => {
  it('keeps the image point under the pointer and its neighbours `scale` apart', () => {
    const fitted = fitView(image, viewport);
    const under = toImage(fitted, 130, 90);
    const zoomed = zoomAbout(fitted, 5, 130, 90, image, viewport);
    expect(zoomed.scale).toBeCloseTo(2.5, 12);
    expect(toImage(zoomed, 130, 90)[0]).toBeCloseTo(under[0], 9);
    expect(toImage(zoomed, 130, 90)[1]).toBeCloseTo(under[1], 9);
    const next = toViewport(zoomed, [under[0] + 1, under[1]]);
    expect(next[0]).toBeCloseTo(132.5, 9);
    expect(zoomed.fitted).toBe(false);
  });

  it('stops at both ends', () => {
    const fitted = fitView(image, viewport);
    expect(zoomAbout(fitted, 1e9, 0, 0, image, viewport).scale).toBe(64);
    expect(zoomAbout(fitted, 1e-9, 0, 0, image, viewport).scale).toBe(0.25);
  });
});

describe('panBy', () => {
  it('moves what is seen by CSS pixels', () => {
    const zoomed = zoomAbout(fitView(image, viewport), 4, 256, 100, image, viewport);
    const before = toViewport(zoomed, [500, 120]);
    const after = toViewport(panBy(zoomed, 30, -12, image, viewport), [500, 120]);
    expect(after[0] - before[0]).toBeCloseTo(30, 9);
    expect(after[1] - before[1]).toBeCloseTo(-12, 9);
  });

  it('never loses the film: its edge stays short of the middle', () => {
    const lost = panBy(fitView(image, viewport), 1e6, 1e6, image, viewport);
    expect(toViewport(lost, [-0.5, -0.5])).toEqual([256, 100]);
  });
});

describe('resizeView', () => {
  const wider = { width: 1024, height: 300 };

  it('keeps a fitted view fitted', () => {
    expect(resizeView(fitView(image, viewport), image, viewport, wider)).toEqual(
      fitView(image, wider),
    );
    expect(resizeView(FIT, image, viewport, wider)).toEqual(fitView(image, wider));
  });

  it('keeps scale and middle of any other view', () => {
    const zoomed = zoomAbout(fitView(image, viewport), 6, 300, 100, image, viewport);
    const resized = resizeView(zoomed, image, viewport, wider);
    expect(resized.scale).toBe(zoomed.scale);
    expect(toImage(resized, 512, 150)[0]).toBeCloseTo(toImage(zoomed, 256, 100)[0], 9);
    expect(toImage(resized, 512, 150)[1]).toBeCloseTo(toImage(zoomed, 256, 100)[1], 9);
  });
});

describe('revealPoint', () => {
  const zoomed = zoomAbout(fitView(image, viewport), 16, 256, 100, image, viewport);

  it('leaves a view alone that shows the point', () => {
    expect(revealPoint(zoomed, toImage(zoomed, 3, 190), image, viewport)).toBe(zoomed);
  });

  it('brings a point out of sight to the middle', () => {
    const moved = revealPoint(zoomed, [900, 30], image, viewport);
    const [left, top] = toViewport(moved, [900, 30]);
    expect(left).toBeCloseTo(256, 9);
    expect(top).toBeCloseTo(100, 9);
  });
});
