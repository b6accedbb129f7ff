import type { GreyFrame } from '../core/frame';
import type { ImagePoint, ImageVector, Pixels } from '../core/units';
import type { StreakLine } from './types';

/** Stands in a streak row where the band lies outside the frame; grey values are never negative. */
export const OUTSIDE = -1;

/**
 * Mean grey value across the band for each sample along the axis, bilinear between pixels.
 * Parts of the band outside the frame are left out; `OUTSIDE` where all of it is.
 */
export function readStreak(frame: GreyFrame, line: StreakLine): Float32Array {
  const { data, width, height } = frame;
  const row = new Float32Array(line.length);
  const reach = Math.max(0, Math.round(line.halfWidth));
  const [ax, ay] = line.axis;
  for (let i = 0; i < line.length; i++) {
    const along = line.from + i;
    const x0 = line.origin[0] + along * ax;
    const y0 = line.origin[1] + along * ay;
    let sum = 0;
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
      const fx = cx - ix;
      const fy = cy - iy;
      const right = width > 1 ? 1 : 0;
      const down = height > 1 ? width : 0;
      const p = iy * width + ix;
      const top = (data[p] as number) * (1 - fx) + (data[p + right] as number) * fx;
      const bottom =
        (data[p + down] as number) * (1 - fx) + (data[p + down + right] as number) * fx;
      sum += top * (1 - fy) + bottom * fy;
      n++;
    }
    row[i] = n > 0 ? sum / n : OUTSIDE;
  }
  return row;
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
