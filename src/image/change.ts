import type { GreyFrame } from '../core/frame';
import type { Plane } from './opencv/pictures';
import type { Background, BallModel } from './types';

/** Change, in standard deviations of the reduced picture's noise, from which a block counts in full. */
const FULL_CHANGE = 8;
const NO_CHANGE = 3;
/** Compression leaves changes of about this many grey values of 255 that the noise does not tell of. */
const LEAST_CHANGE = 4 / 255;
/** A block changed by this share is surely a thing. */
const SURE_CHANGE = 0.5;

/** How blocks of a frame differ from the background. */
export interface ChangeMap {
  /** How surely each is another than the background's, 0..1. */
  readonly changed: Plane;
  /** By how much, grey values. */
  readonly difference: Plane;
  /** Image position of the middle of the plane's first block, and the size of a block, px. */
  readonly left: number;
  readonly top: number;
  readonly block: number;
}

/**
 * Changes of the part of the ball's region in which anything changed, in blocks of `block` x `block` pixels, with a
 * margin of `marginX`, `marginY` blocks; null where nothing did. Beyond the region nothing changes. `gain`: the frame's
 * light over the background's.
 */
export function changeMap(
  frame: GreyFrame,
  background: Background,
  { region, radius }: BallModel,
  gain: number,
  block: number,
  marginX: number,
  marginY: number,
): ChangeMap | null {
  const { noise, white } = background;
  const left = Math.max(0, Math.floor(region[0]));
  const top = Math.max(0, Math.floor(region[1]));
  const columns = Math.floor(
    (Math.min(frame.width, Math.ceil(region[0] + region[2])) - left) / block,
  );
  const rows = Math.floor((Math.min(frame.height, Math.ceil(region[1] + region[3])) - top) / block);
  if (columns < 1 || rows < 1) return null;
  const changes = new Float32Array(columns * rows);
  const differences = new Float32Array(columns * rows);
  const area = block * block;
  const floor = LEAST_CHANGE * white;
  let [x0, y0, x1, y1] = [columns, rows, -1, -1];
  const sums = new Float64Array(columns);
  const bases = new Float64Array(columns);
  for (let row = 0; row < rows; row++) {
    sumBlocks(frame, background, gain, block, left, top + row * block, sums, bases);
    for (let column = 0; column < columns; column++) {
      const difference = sums[column] as number;
      const base = bases[column] as number;
      const sigma = Math.sqrt(
        Math.max(1e-12, noise.readVariance + (noise.gain * base) / area) / area,
      );
      const none = Math.max(NO_CHANGE * sigma, floor);
      const full = Math.max(FULL_CHANGE * sigma, 2.5 * floor);
      const share = (Math.abs(difference) / area - none) / (full - none);
      differences[row * columns + column] = difference / area;
      if (share <= 0) continue;
      changes[row * columns + column] = Math.min(1, share);
      if (share < SURE_CHANGE) continue;
      x0 = Math.min(x0, column);
      x1 = Math.max(x1, column);
      y0 = Math.min(y0, row);
      y1 = Math.max(y1, row);
    }
  }
  if (x1 < 0) return null;
  // The middle of a half-hidden ball lies beside what shows of it.
  const beside = Math.ceil(radius / block / 2);
  x0 = Math.max(0, x0 - beside);
  y0 = Math.max(0, y0 - beside);
  x1 = Math.min(columns - 1, x1 + beside);
  y1 = Math.min(rows - 1, y1 + beside);
  const cut = (blocks: Float32Array): Plane => {
    const width = x1 - x0 + 1 + 2 * marginX;
    const height = y1 - y0 + 1 + 2 * marginY;
    const data = new Float32Array(width * height);
    const first = Math.max(0, x0 - marginX);
    const end = Math.min(columns, x1 + 1 + marginX);
    for (let y = 0; y < height; y++) {
      const row = y + y0 - marginY;
      if (row < 0 || row >= rows) continue;
      data.set(
        blocks.subarray(row * columns + first, row * columns + end),
        y * width + first - x0 + marginX,
      );
    }
    return { data, width, height };
  };
  return {
    changed: cut(changes),
    difference: cut(differences),
    left: left + (x0 - marginX + 0.5) * block - 0.5,
    top: top + (y0 - marginY + 0.5) * block - 0.5,
    block,
  };
}

/** Sums over a row of blocks: of what the frame has more than the background, and of the background. */
function sumBlocks(
  { data, width }: GreyFrame,
  { level }: Background,
  gain: number,
  block: number,
  left: number,
  top: number,
  sums: Float64Array,
  bases: Float64Array,
): void {
  for (let column = 0; column < sums.length; column++) {
    let difference = 0;
    let base = 0;
    for (let dy = 0; dy < block; dy++) {
      let p = (top + dy) * width + left + column * block;
      for (const end = p + block; p < end; p++) {
        const b = level[p] as number;
        difference += (data[p] as number) - gain * b;
        base += b;
      }
    }
    sums[column] = difference;
    bases[column] = base;
  }
}
