import { describe, expect, it } from 'vitest';
import { greyRange } from '../../../src/ui/streak/greyRange';
import { deviceRows, paintRows, rasterOf } from '../../../src/ui/streak/paint';

const geometry = { origin: [0, 0] as const, axis: [1, 0] as const, from: 0, length: 4 };
/** The four samples fill eight pixels. */
const view = { scale: 2, x0: -0.5, y0: -0.5, fitted: true };
const contrast = { low: 0, high: 255 };

const level = (rgba: Uint8ClampedArray, width: number, row: number, column: number) => {
  const [grey, , , alpha] = rgba.subarray(4 * (row * width + column));
  return alpha === 0 ? null : grey;
};

describe('paintRows', () => {
  it('shows every sample under its pixel and every frame in its rows', () => {
    const raster = rasterOf(geometry, view, { rowHeight: 3, topFrame: -0.5 }, 8, 6, 1);
    const rows = new Map([
      [0, Float32Array.of(10, 20, 30, 40)],
      [1, Float32Array.of(50, 60, 70, -1)],
    ]);
    const rgba = new Uint8ClampedArray(4 * 8 * 6);
    paintRows(raster, rows, contrast, rgba, 0, 6);
    const painted = Array.from({ length: 6 }, (_, row) =>
      Array.from({ length: 8 }, (_, column) => level(rgba, 8, row, column)),
    );
    const first = [10, 10, 20, 20, 30, 30, 40, 40];
    const second = [50, 50, 60, 60, 70, 70, null, null];
    expect(painted).toEqual([first, first, first, second, second, second]);
  });

  it('mirrors a flight to the left', () => {
    const leftwards = { ...geometry, origin: [3, 0] as const, axis: [-1, 0] as const };
    const raster = rasterOf(leftwards, view, { rowHeight: 1, topFrame: -0.5 }, 8, 1, 1);
    expect([...raster.columns]).toEqual([3, 3, 2, 2, 1, 1, 0, 0]);
  });

  it('averages the frames that share a row and leaves rows that have not come clear', () => {
    const raster = rasterOf(geometry, view, { rowHeight: 0.5, topFrame: -0.5 }, 8, 2, 1);
    const rows = new Map([
      [0, Float32Array.of(10, 10, 10, -1)],
      [1, Float32Array.of(30, 30, 30, 90)],
    ]);
    const rgba = new Uint8ClampedArray(4 * 8 * 2);
    paintRows(raster, rows, contrast, rgba, 0, 2);
    expect(level(rgba, 8, 0, 0)).toBe(20);
    expect(level(rgba, 8, 0, 7)).toBe(90);
    expect(level(rgba, 8, 1, 0)).toBeNull();
  });

  it('stretches the window of greys', () => {
    const raster = rasterOf(geometry, view, { rowHeight: 1, topFrame: -0.5 }, 8, 1, 1);
    const rows = new Map([[0, Float32Array.of(99, 100, 130, 200)]]);
    const rgba = new Uint8ClampedArray(4 * 8);
    paintRows(raster, rows, { low: 100, high: 150 }, rgba, 0, 1);
    expect([0, 2, 4, 6].map((column) => level(rgba, 8, 0, column))).toEqual([0, 0, 153, 255]);
  });
});

describe('deviceRows', () => {
  it('covers the frames that came and stays in the drawing', () => {
    const raster = rasterOf(geometry, view, { rowHeight: 3, topFrame: 9.5 }, 8, 60, 2);
    expect(deviceRows(raster, 10, 10)).toEqual([0, 6]);
    expect(deviceRows(raster, 12, 13)).toEqual([12, 24]);
    expect(deviceRows(raster, 0, 500)).toEqual([0, 120]);
  });
});

describe('greyRange', () => {
  it('keeps a window about the ordinary grey, whatever lies outside the film', () => {
    // Greys from 40 to 140, most of them 50: 30 of the 100 to each side, none below the darkest.
    const still = Float32Array.of(-1, 50, 50, 50, 60);
    expect(greyRange([still, Float32Array.of(140, 40, 50, -1)])).toEqual({ low: 40, high: 80 });
    // A dark ball before a bright wall.
    expect(greyRange([Float32Array.of(200, 200, 200), Float32Array.of(200, 100, 200)])).toEqual({
      low: 170,
      high: 200,
    });
    expect(greyRange([])).toEqual({ low: 0, high: 255 });
    expect(greyRange([Float32Array.of(-1, -1)])).toEqual({ low: 0, high: 255 });
  });
});
