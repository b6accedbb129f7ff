import type { GreyFrame } from '../core/frame';
import type { ImagePoint, ImageVector, Pixels } from '../core/units';
import type { StreakLine } from './types';

/** Stands in a streak row where the band lies outside the frame; grey values are never negative. */
export const OUTSIDE = -1;

/**
 * Reads a streak line in frames of one size: the mean grey value across the band for each sample along the axis,
 * bilinear between pixels. Parts of the band outside the frame are left out; `OUTSIDE` where all of it is.
 */
export function streakReader(
  width: number,
  height: number,
  line: StreakLine,
): (frame: GreyFrame) => Float32Array {
  const { starts, pixels, weights } = bandOf(width, height, line);
  return ({ data }) => {
    const row = new Float32Array(line.length).fill(OUTSIDE);
    for (let i = 0; i < line.length; i++) {
      const [start, end] = [starts[i] as number, starts[i + 1] as number];
      if (start === end) continue;
      let sum = 0;
      for (let k = start; k < end; k++) {
        sum += (weights[k] as number) * (data[pixels[k] as number] as number);
      }
      row[i] = sum;
    }
    return row;
  };
}

/** Pixels that each sample is the weighted mean of: those of sample i from `starts[i]` to `starts[i + 1]`. */
function bandOf(width: number, height: number, line: StreakLine) {
  const reach = Math.max(0, Math.round(line.halfWidth));
  const [ax, ay] = line.axis;
  const starts = [0];
  const pixels: number[] = [];
  const weights: number[] = [];
  for (let i = 0; i < line.length; i++) {
    const along = line.from + i;
    const x0 = line.origin[0] + along * ax;
    const y0 = line.origin[1] + along * ay;
    // Neighbours across the band share pixels.
    const share = new Map<number, number>();
    const add = (pixel: number, weight: number) => {
      if (weight > 0) share.set(pixel, (share.get(pixel) ?? 0) + weight);
    };
    let n = 0;
    for (let k = -reach; k <= reach; k++) {
      const x = x0 - k * ay;
      const y = y0 + k * ax;
      if (!(x >= -0.5 && y >= -0.5 && x <= width - 0.5 && y <= height - 0.5)) continue;
      // Within half a pixel of the border the border pixel stands for what is beyond it.
      const cx = Math.min(Math.max(x, 0), width - 1);
      const cy = Math.min(Math.max(y, 0), height - 1);
      const ix = Math.min(Math.floor(cx), Math.max(0, width - 2));
      const iy = Math.min(Math.floor(cy), Math.max(0, height - 2));
      const [fx, fy] = [cx - ix, cy - iy];
      const p = iy * width + ix;
      add(p, (1 - fx) * (1 - fy));
      add(p + 1, fx * (1 - fy));
      add(p + width, (1 - fx) * fy);
      add(p + width + 1, fx * fy);
      n++;
    }
    for (const [pixel, weight] of share) {
      pixels.push(pixel);
      weights.push(weight / n);
    }
    starts.push(pixels.length);
  }
  return {
    starts: Uint32Array.from(starts),
    pixels: Uint32Array.from(pixels),
    weights: Float64Array.from(weights),
  };
}

/**
 * The longest streak line through `origin` along `axis` (any length) whose samples lie in the frame.
 * `length` 0 where the line misses the frame.
 */
export function streakLineFor(
  width: number,
  height: number,
  origin: ImagePoint,
  axis: ImageVector,
  halfWidth: Pixels,
): StreakLine {
  const norm = Math.hypot(axis[0], axis[1]);
  const unit: ImageVector = norm > 0 ? [axis[0] / norm, axis[1] / norm] : [1, 0];
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  const sides = [
    [origin[0], unit[0], width],
    [origin[1], unit[1], height],
  ] as const;
  for (const [start, slope, size] of sides) {
    if (Math.abs(slope) < 1e-12) {
      if (start < -0.5 || start > size - 0.5) high = Number.NEGATIVE_INFINITY;
      continue;
    }
    const a = (-0.5 - start) / slope;
    const b = (size - 0.5 - start) / slope;
    low = Math.max(low, Math.min(a, b));
    high = Math.min(high, Math.max(a, b));
  }
  const from = Number.isFinite(low) ? Math.ceil(low) : 0;
  const length = Number.isFinite(high) ? Math.max(0, Math.floor(high) - from + 1) : 0;
  return { origin, axis: unit, from, length, halfWidth };
}
