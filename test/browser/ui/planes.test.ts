import { describe, expect, it } from 'vitest';
import {
  cropped,
  enlargement,
  frameOfModel,
  leftOutPath,
  outlinePaths,
  paintResidual,
} from '../../../src/ui/frames/planes';

/** Grey value 10 times the row plus the column. */
const frame = {
  index: 3,
  width: 10,
  height: 6,
  data: Uint8Array.from({ length: 60 }, (_, i) => i),
  white: 255,
};

describe('planes of a fit', () => {
  it('are cut out of the frame pixel by pixel', () => {
    const crop = cropped(frame, [2, 1, 3, 2]);
    expect([crop.width, crop.height, crop.index]).toEqual([3, 2, 3]);
    expect([...crop.data]).toEqual([12, 13, 14, 22, 23, 24]);
  });

  it('show a model within the format’s greys, deep formats kept deep', () => {
    const model = Float32Array.of(-3, 12.6, 300, 5);
    expect([...frameOfModel(model, [0, 0, 2, 2], frame).data]).toEqual([0, 13, 255, 5]);
    const deep = frameOfModel(model, [0, 0, 2, 2], { ...frame, white: 65535 });
    expect([...deep.data]).toEqual([0, 13, 300, 5]);
  });

  it('turn residuals into greys about the middle, cut at the span; what is no number is nothing', () => {
    const rgba = new Uint8ClampedArray(4 * 5);
    paintResidual(Float32Array.of(-9, -2.5, 0, 5, Number.NaN), 5, rgba);
    expect([0, 4, 8, 12, 16].map((i) => rgba[i])).toEqual([0, 64, 128, 255, 128]);
    expect(rgba[3]).toBe(255);
  });

  it('box pixels left out, a box for every run that stays in its row', () => {
    const weight = Float32Array.of(1, 0, 0, 0, 1, 0.5);
    expect(leftOutPath(weight, 3)).toBe('M1 0h2v1h-2zM0 1h1v1h-1z');
    // Neither weighed down nor beyond the fit's reach is left out.
    expect(leftOutPath(Float32Array.of(0.2, -1), 2)).toBe('');
  });

  it('enlarge by a round factor as far as there is room', () => {
    expect(enlargement(0.05, 3)).toBe(50);
    expect(enlargement(0.05, 2.4)).toBe(20);
    // Too large already: as it is.
    expect(enlargement(7, 3)).toBe(1);
  });

  it('close the outline, its unseen stretches apart from the seen ones', () => {
    const corner = (x: number, y: number, seen: boolean) => ({ at: [x, y] as const, seen });
    const square = [
      corner(0, 0, true),
      corner(4, 0, true),
      corner(4, 4, false),
      corner(0, 4, true),
    ];
    const { seen, unseen } = outlinePaths(square, ([x, y]) => [2 * x, 2 * y]);
    // Joined where stretches follow one another; the last leads back to the first.
    expect(unseen).toBe('M8 0L8 8L0 8');
    expect(seen).toBe('M0 0L8 0M0 8L0 0');
    expect(outlinePaths([], (at) => at)).toEqual({ seen: '', unseen: '' });
  });
});
