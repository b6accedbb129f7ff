import type { GreyFrame } from '../core/frame';
import type { Background } from '../image/types';
import type { SealPicture, SealView } from './types';
import { extentAlong } from './view';

/** A change counts from this many noise standard deviations, and from this share of the grey range. */
const NOISE_FACTOR = 5;
const GREY_SHARE = 0.015;
/** The half aperture spans this many cells of the picture kept, or fewer where pixels are coarser. */
const CELLS = 24;
/** The view begins this share of the half aperture inside the plane: film is joined to it that starts within as much outside. */
export const ROOT = 0.2;

/** The view of one frame resampled along the axis: columns run outwards (1 px apart, the plane at `zero`), rows across. */
export interface Straightened {
  readonly columns: number;
  readonly rows: number;
  readonly zero: number;
  /** Frame minus background, grey values. */
  readonly change: Float32Array;
  /** 1 where it counts as changed. */
  readonly mask: Uint8Array;
  /** Noise standard deviation, grey values. */
  readonly noise: number;
}

/** How a frame differs from the seal at rest, in the view's own axes. */
export function straighten(frame: GreyFrame, background: Background, view: SealView): Straightened {
  const { plane, axis, region, halfAperture } = view;
  const [from, to] = extentAlong(region, plane, axis);
  const first = Math.max(Math.ceil(from), -Math.ceil(ROOT * halfAperture));
  const columns = Math.max(1, Math.floor(to) - first + 1);
  const half = Math.floor(halfAperture);
  const rows = 2 * half + 1;
  const change = new Float32Array(columns * rows);
  const raw = new Uint8Array(columns * rows);
  const right = region[0] + region[2] - 1;
  const bottom = region[1] + region[3] - 1;
  const { width, data } = frame;
  const level = background.level;
  const floor = GREY_SHARE * background.white;
  let noiseSum = 0;
  let seen = 0;
  for (let row = 0; row < rows; row++) {
    const across = row - half;
    for (let column = 0; column < columns; column++) {
      const along = column + first;
      const x = plane[0] + along * axis[0] - across * axis[1];
      const y = plane[1] + along * axis[1] + across * axis[0];
      if (x < region[0] || y < region[1] || x > right || y > bottom) continue;
      const x0 = Math.min(Math.floor(x), right - 1);
      const y0 = Math.min(Math.floor(y), bottom - 1);
      const fx = x - x0;
      const fy = y - y0;
      const i = y0 * width + x0;
      const w00 = (1 - fx) * (1 - fy);
      const w10 = fx * (1 - fy);
      const w01 = (1 - fx) * fy;
      const w11 = fx * fy;
      const grey =
        w00 * (level[i] as number) +
        w10 * (level[i + 1] as number) +
        w01 * (level[i + width] as number) +
        w11 * (level[i + width + 1] as number);
      const difference =
        w00 * (data[i] as number) +
        w10 * (data[i + 1] as number) +
        w01 * (data[i + width] as number) +
        w11 * (data[i + width + 1] as number) -
        grey;
      const variance = background.noise.readVariance + background.noise.gain * Math.max(0, grey);
      const at = row * columns + column;
      change[at] = difference;
      noiseSum += variance;
      seen++;
      const threshold = Math.max(floor, NOISE_FACTOR * Math.sqrt(variance));
      if (Math.abs(difference) > threshold) raw[at] = 1;
    }
  }
  return {
    columns,
    rows,
    zero: Math.max(0, -first),
    change,
    mask: withoutSpecks(raw, columns, rows),
    noise: Math.sqrt(noiseSum / Math.max(1, seen)),
  };
}

/** Drops set pixels with fewer than three set neighbours. */
function withoutSpecks(mask: Uint8Array, columns: number, rows: number): Uint8Array {
  const kept = new Uint8Array(mask.length);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const at = row * columns + column;
      if (mask[at] !== 1) continue;
      let neighbours = -1;
      for (let r = Math.max(0, row - 1); r <= Math.min(rows - 1, row + 1); r++) {
        for (let c = Math.max(0, column - 1); c <= Math.min(columns - 1, column + 1); c++) {
          neighbours += mask[r * columns + c] as number;
        }
      }
      if (neighbours >= 3) kept[at] = 1;
    }
  }
  return kept;
}

/** Cells as means of square patches, from the plane outwards. */
export function pictureOf(
  { columns, rows, zero, change, noise }: Straightened,
  { halfAperture }: SealView,
  white: number,
): SealPicture {
  const cell = Math.max(1, Math.round(halfAperture / CELLS));
  const across = Math.floor(rows / cell);
  const along = Math.max(1, Math.floor((columns - zero) / cell));
  const skipped = Math.floor((rows - across * cell) / 2);
  const out = new Float32Array(across * along);
  for (let row = 0; row < across; row++) {
    for (let column = 0; column < along; column++) {
      let sum = 0;
      for (let dy = 0; dy < cell; dy++) {
        const start = (skipped + row * cell + dy) * columns + zero + column * cell;
        for (let dx = 0; dx < cell; dx++) sum += change[start + dx] as number;
      }
      out[row * along + column] = sum / (cell * cell);
    }
  }
  return {
    columns: along,
    rows: across,
    cell,
    change: out,
    noise: noise / cell,
    least: GREY_SHARE * white,
  };
}
