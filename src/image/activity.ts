import type { GreyFrame } from '../core/frame';
import { DEVIATION_OVER_MEDIAN } from '../core/statistics';
import type { Pixels } from '../core/units';
import { medianInPlace } from './median';

/**
 * Frames apart that are compared: a slow ball has moved by more than noise by then. Even: of interlaced film fields of
 * the same lines are compared.
 */
const LAG = 8;
/**
 * A block's mean has changed beyond noise: in standard deviations of the usual block's change, and as a share of the
 * grey scale. Half of what `findCandidates` needs of a block to see a thing there at all.
 */
const CHANGED = 5;
const LEAST_CHANGE = 3 / 255;
/** Blocks looked at for the usual change; more only cost time. */
const SAMPLES = 1024;
/** Blocks of one frame's light over another's. */
const GAIN_SAMPLES = 512;
/** Darker blocks than this share of the grey scale tell nothing of the light. */
const DARK = 0.02;
/** Blocks as large as the candidates' search has them, but no larger: a smaller thing would drown in them. */
const RADII_A_BLOCK = 1 / 6;
const [SMALLEST_BLOCK, LARGEST_BLOCK] = [2, 8] as const;

/** Tells frame by frame, in order, whether anything changed in the picture since some frames before. */
export interface ActivityMeter {
  /** Whether something moves in this frame, and its light over that of the first. */
  read(frame: GreyFrame): { readonly isActive: boolean; readonly gain: number };
}

/**
 * A cheap look for frames in which anything moves, by the means of blocks (every other line of them), the light of both
 * frames made even. Two neighbouring blocks must have changed the same way: of thousands of blocks, one is beyond noise
 * by chance in most frames. It takes the whole picture for motion where the camera shakes, which costs time only; it
 * misses what moves less than a grey value or two within `LAG` frames.
 */
export function createActivityMeter(width: Pixels, height: Pixels, radius: Pixels): ActivityMeter {
  const block = Math.min(
    LARGEST_BLOCK,
    Math.max(SMALLEST_BLOCK, Math.round(RADII_A_BLOCK * radius)),
  );
  const columns = Math.max(1, Math.floor(width / block));
  const rows = Math.max(1, Math.floor(height / block));
  const count = columns * rows;
  const past: { readonly means: Float32Array; readonly gain: number }[] = [];
  let spare: Float32Array = new Float32Array(count);
  const changes = new Float64Array(Math.min(count, SAMPLES));
  const ratios = new Float64Array(Math.min(count, GAIN_SAMPLES));
  /** Of each block: brighter (1) or darker (-1) than noise explains. */
  const ways = new Int8Array(count);
  let first: Float32Array | null = null;
  let seen = 0;

  /** Median of the ratios of two frames' blocks, those too dark to tell left out; 1 where all are. */
  const gainOver = (means: Float32Array, base: Float32Array, floor: number): number => {
    const stride = Math.max(1, Math.floor(count / ratios.length));
    let n = 0;
    for (let i = 0; i < count && n < ratios.length; i += stride) {
      const b = base[i] as number;
      if (b > floor) ratios[n++] = (means[i] as number) / b;
    }
    return n < 16 ? 1 : medianInPlace(ratios, n);
  };
  const hasChanged = (means: Float32Array, before: Float32Array, gain: number, white: number) => {
    const stride = Math.max(1, Math.floor(count / changes.length));
    let n = 0;
    for (let i = 0; i < count && n < changes.length; i += stride) {
      changes[n++] = Math.abs((means[i] as number) - gain * (before[i] as number));
    }
    const usual = DEVIATION_OVER_MEDIAN * medianInPlace(changes, n);
    const most = Math.max(CHANGED * usual, LEAST_CHANGE * white);
    for (let i = 0; i < count; i++) {
      const change = (means[i] as number) - gain * (before[i] as number);
      const way = change > most ? 1 : change < -most ? -1 : 0;
      ways[i] = way;
      if (way === 0) continue;
      if (i % columns > 0 && ways[i - 1] === way) return true;
      if (i >= columns && ways[i - columns] === way) return true;
    }
    return false;
  };
  return {
    read(frame) {
      const means = spare;
      blockMeans(frame, block, columns, rows, means);
      first ??= means.slice();
      const gain = gainOver(means, first, DARK * frame.white);
      const before = past[seen % LAG] ?? { means: first, gain: 1 };
      const isActive = hasChanged(means, before.means, gain / before.gain, frame.white);
      spare = seen < LAG ? new Float32Array(count) : before.means;
      past[seen % LAG] = { means, gain };
      seen += 1;
      return { isActive, gain };
    },
  };
}

/** Means over every other line of each block. */
function blockMeans(
  { data, width }: GreyFrame,
  block: number,
  columns: number,
  rows: number,
  means: Float32Array,
): void {
  const area = Math.ceil(block / 2) * block;
  means.fill(0);
  for (let row = 0; row < rows; row++) {
    for (let dy = 0; dy < block; dy += 2) {
      addLine(data, (row * block + dy) * width, block, means, row * columns, columns);
    }
  }
  for (let i = 0; i < means.length; i++) means[i] = (means[i] as number) / area;
}

/** Adds one line's pixels from p on to the blocks from `out` on. */
function addLine(
  data: GreyFrame['data'],
  p: number,
  block: number,
  means: Float32Array,
  out: number,
  columns: number,
): void {
  for (let column = out; column < out + columns; column++) {
    let sum = 0;
    for (const end = p + block; p < end; p++) sum += data[p] as number;
    means[column] = (means[column] as number) + sum;
  }
}
