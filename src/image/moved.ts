import type { GreyFrame } from '../core/frame';
import type { ImageRect, ImageVector } from '../core/units';
import { soundLevels } from './faults';
import { moveInto, splineCoefficients } from './resample';
import type { Background } from './types';

/** Less than this is left as it is, px: interpolating would cost more than it mends. */
const LEAST_MOVE = 0.03;
/** What the spline needs around a rectangle. */
const MARGIN = 16;

export const isMoved = ([x, y]: ImageVector): boolean => Math.hypot(x, y) > LEAST_MOVE;

/** The part of a rectangle that lies in a picture, in whole pixels. */
function wholeRect([x, y, w, h]: ImageRect, width: number, height: number): ImageRect {
  const left = Math.min(width, Math.max(0, Math.floor(x)));
  const top = Math.min(height, Math.max(0, Math.floor(y)));
  const right = Math.max(left, Math.min(width, Math.ceil(x + w)));
  const bottom = Math.max(top, Math.min(height, Math.ceil(y + h)));
  return [left, top, right - left, bottom - top];
}

/**
 * Gives the background as a frame shows it that stands `shift` off: moved inside a rectangle, as it was outside. The
 * background given serves until the next call.
 */
export function backgroundMover(
  background: Background,
): (shift: ImageVector, rect: ImageRect) => Background {
  const { width, height, level } = background;
  let coefficients: Float32Array | null = null;
  let moved: Background | null = null;
  let touched: ImageRect = [0, 0, 0, 0];
  return (shift, rect) => {
    if (!isMoved(shift)) return background;
    coefficients ??= splineCoefficients(soundLevels(background), width, height);
    moved ??= { ...background, level: level.slice() };
    const [left, top, columns, rows] = touched;
    for (let y = top; y < top + rows; y++) {
      const start = y * width + left;
      moved.level.set(level.subarray(start, start + columns), start);
    }
    touched = wholeRect(rect, width, height);
    moveInto(moved.level, coefficients, width, height, shift, touched);
    return moved;
  };
}

/** The frame put back to where the scene usually stands, inside a rectangle; rounded to whole grey values. */
export function frameBack(frame: GreyFrame, [x, y]: ImageVector, rect: ImageRect): GreyFrame {
  const { width, height, white } = frame;
  const [left, top, columns, rows] = wholeRect(rect, width, height);
  const [l, t, w, h] = wholeRect(
    [left - MARGIN, top - MARGIN, columns + 2 * MARGIN, rows + 2 * MARGIN],
    width,
    height,
  );
  const part = new Float32Array(w * h);
  for (let j = 0; j < h; j++) {
    const start = (t + j) * width + l;
    part.set(frame.data.subarray(start, start + w), j * w);
  }
  const back = new Float32Array(w * h);
  moveInto(
    back,
    splineCoefficients(part, w, h),
    w,
    h,
    [-x, -y],
    [left - l, top - t, columns, rows],
  );
  const data = frame.data.slice();
  for (let j = top; j < top + rows; j++) {
    for (let i = left; i < left + columns; i++) {
      const grey = Math.round(back[(j - t) * w + i - l] as number);
      data[j * width + i] = Math.min(white, Math.max(0, grey));
    }
  }
  return { ...frame, data };
}
