import { failure, type Outcome, success } from '../core/reason';
import { median, robustDeviation } from '../core/statistics';
import { type Shift, shiftFrom } from './registration';
import { createRobustFit } from './robustFit';
import type { Background } from './types';

/** A still scene boiled down to means over squares of pixels: enough to tell where it stands, small enough to keep. */
export interface SceneFingerprint {
  readonly width: number;
  readonly height: number;
  /** Side of a square, px. */
  readonly block: number;
  /** Mean of each square over the format's largest grey value, in tenths of a thousand; row by row. */
  readonly levels: readonly number[];
}

const BLOCK = 8;
const UNIT = 1e4;
/** Squares compared: those that differ most from their neighbours. */
const MOST_BLOCKS = 800;
const FEWEST_BLOCKS = 24;
/** A square's difference from its neighbours that is more than noise, as a share of the grey range. */
const LEAST_DETAIL = 0.004;
/** Farthest move looked for, px, and the steps of the first search. */
const REACH = 64;
const STRIDE = 4;
/** Moves compared must leave so much of the squares in view. */
const LEAST_IN_VIEW = 0.5;
/** Correlation below which it is another scene. */
const SAME_SCENE = 0.3;
/** It is another scene, too, where the comparison leaves more than this share of its contrast. */
const MOST_LEFT = 0.5;
const MOST_ROUNDS = 12;
/** Squares that hang together: this many to a group each way. */
const GROUP = 4;
/** Shift each way, brightness and a level added to it. */
const PARAMETERS = 4;

export function fingerprintOf(background: Background): SceneFingerprint {
  const { width, height, white } = background;
  const sums = summed(background);
  const columns = Math.floor(width / BLOCK);
  const rows = Math.floor(height / BLOCK);
  const levels = Array.from({ length: columns * rows }, (_, i) => {
    const mean = blockMean(sums, width, (i % columns) * BLOCK, Math.floor(i / columns) * BLOCK);
    return Math.round((UNIT * mean) / white);
  });
  return { width, height, block: BLOCK, levels };
}

/**
 * How far the scene stands from where it stood when the fingerprint was taken (positive: to the right, down).
 * Failures: `sceneSizeDiffers`, `sceneTooPlain`, `sceneDiffers`.
 */
export function sceneMove(background: Background, before: SceneFingerprint): Outcome<Shift> {
  const { width, height, white } = background;
  if (before.width !== width || before.height !== height || before.block !== BLOCK) {
    return failure(
      'sceneSizeDiffers',
      `The frames are ${width} x ${height} px, those before were ${before.width} x ${before.height} px.`,
      undefined,
      { width, height, widthBefore: before.width, heightBefore: before.height },
    );
  }
  const blocks = detailedBlocks(before);
  if (blocks.length < FEWEST_BLOCKS) {
    return failure('sceneTooPlain', 'The still scene holds too little detail to tell its place.');
  }
  const sums = summed(background);
  const wanted = Float64Array.from(blocks, ({ level }) => (level * white) / UNIT);
  const similar = (dx: number, dy: number) => correlation(sums, background, blocks, wanted, dx, dy);
  let best = { x: 0, y: 0, value: similar(0, 0) };
  const search = (x0: number, y0: number, reach: number, stride: number) => {
    for (let dy = -reach; dy <= reach; dy += stride) {
      for (let dx = -reach; dx <= reach; dx += stride) {
        const value = similar(x0 + dx, y0 + dy);
        if (value > best.value) best = { x: x0 + dx, y: y0 + dy, value };
      }
    }
  };
  search(0, 0, REACH, STRIDE);
  search(best.x, best.y, STRIDE - 1, 1);
  const placed =
    best.value < SAME_SCENE ? null : placeExactly(sums, background, blocks, wanted, best);
  return placed === null
    ? failure('sceneDiffers', 'The still scene does not look like the one before.')
    : success(placed);
}

interface Block {
  readonly x: number;
  readonly y: number;
  readonly level: number;
}

/** Squares with the most contrast to those beside and below, in reading order. */
function detailedBlocks({ width, height, block, levels }: SceneFingerprint): Block[] {
  const columns = Math.floor(width / block);
  const rows = Math.floor(height / block);
  const at = (column: number, row: number) => levels[row * columns + column] as number;
  const found: (Block & { readonly detail: number })[] = [];
  for (let row = 1; row < rows - 1; row++) {
    for (let column = 1; column < columns - 1; column++) {
      const level = at(column, row);
      const detail = Math.max(
        Math.abs(at(column + 1, row) - at(column - 1, row)),
        Math.abs(at(column, row + 1) - at(column, row - 1)),
      );
      if (detail > LEAST_DETAIL * UNIT) {
        found.push({ x: column * block, y: row * block, level, detail });
      }
    }
  }
  return found
    .sort((a, b) => b.detail - a.detail)
    .slice(0, MOST_BLOCKS)
    .sort((a, b) => a.y - b.y || a.x - b.x);
}

/** Sums over all pixels above and to the left, with a row and a column of zeros before them. */
function summed({ level, width, height }: Background): Float64Array {
  const sums = new Float64Array((width + 1) * (height + 1));
  for (let y = 0; y < height; y++) addRow(level, width, y, sums);
  return sums;
}

function addRow(level: Float32Array, width: number, y: number, sums: Float64Array): void {
  let row = 0;
  let p = (y + 1) * (width + 1) + 1;
  for (let at = y * width; at < (y + 1) * width; at++, p++) {
    row += level[at] as number;
    sums[p] = (sums[p - width - 1] as number) + row;
  }
}

/** Mean over the square whose corner is at (x, y), pixel edges at whole numbers; between them pixels count in part. */
function blockMean(sums: Float64Array, width: number, x: number, y: number): number {
  const x0 = Math.floor(x);
  const y0 = Math.floor(y);
  const fx = x - x0;
  const fy = y - y0;
  const stride = width + 1;
  const at = (column: number, row: number): number => {
    const p = row * stride + column;
    if (fx === 0 && fy === 0) return sums[p] as number;
    const right = fx === 0 ? 0 : 1;
    const down = fy === 0 ? 0 : stride;
    return (
      (1 - fy) * ((1 - fx) * (sums[p] as number) + fx * (sums[p + right] as number)) +
      fy * ((1 - fx) * (sums[p + down] as number) + fx * (sums[p + down + right] as number))
    );
  };
  const sum = at(x0 + BLOCK, y0 + BLOCK) - at(x0, y0 + BLOCK) - at(x0 + BLOCK, y0) + at(x0, y0);
  return sum / (BLOCK * BLOCK);
}

/** Correlation of the squares with the picture moved by whole pixels; -1 where too few are in view. */
function correlation(
  sums: Float64Array,
  { width, height }: Background,
  blocks: readonly Block[],
  wanted: Float64Array,
  dx: number,
  dy: number,
): number {
  let n = 0;
  let sa = 0;
  let sb = 0;
  let saa = 0;
  let sbb = 0;
  let sab = 0;
  for (let i = 0; i < blocks.length; i++) {
    const block = blocks[i] as Block;
    const x = block.x + dx;
    const y = block.y + dy;
    if (x < 0 || y < 0 || x + BLOCK > width || y + BLOCK > height) continue;
    const a = blockMean(sums, width, x, y);
    const b = wanted[i] as number;
    n++;
    sa += a;
    sb += b;
    saa += a * a;
    sbb += b * b;
    sab += a * b;
  }
  if (n < LEAST_IN_VIEW * blocks.length) return -1;
  const product = (saa - (sa * sa) / n) * (sbb - (sb * sb) / n);
  return product > 0 ? (sab - (sa * sb) / n) / Math.sqrt(product) : -1;
}

/** Robust Gauss-Newton on the squares, from a move good to a pixel. */
function placeExactly(
  sums: Float64Array,
  { width, height, noise }: Background,
  all: readonly Block[],
  wanted: Float64Array,
  start: { readonly x: number; readonly y: number },
): Shift | null {
  const inView = (block: Block) => {
    const x = block.x + start.x;
    const y = block.y + start.y;
    return x >= 2 && y >= 2 && x + BLOCK + 2 < width && y + BLOCK + 2 < height;
  };
  const used = [...all.keys()].filter((i) => inView(all[i] as Block));
  const side = BLOCK * GROUP;
  const across = Math.ceil(width / side);
  const names = used.map((i) => {
    const { x, y } = all[i] as Block;
    return Math.floor(y / side) * across + Math.floor(x / side);
  });
  const numbers = new Map([...new Set(names)].map((name, number) => [name, number]));
  const group = names.map((name) => numbers.get(name) as number);
  const fit = createRobustFit(
    PARAMETERS,
    Math.sqrt(noise.readVariance) / BLOCK,
    group,
    numbers.size,
  );
  let { x, y } = start;
  let gain = 1;
  let added = 0;
  const compare = () => {
    for (const [n, i] of used.entries()) {
      const block = all[i] as Block;
      const mean = (dx: number, dy: number) =>
        blockMean(sums, width, block.x + x + dx, block.y + y + dy);
      const at = PARAMETERS * n;
      fit.residual[n] = (wanted[i] as number) - gain * mean(0, 0) - added;
      fit.derivatives[at] = gain * (mean(0.5, 0) - mean(-0.5, 0));
      fit.derivatives[at + 1] = gain * (mean(0, 0.5) - mean(0, -0.5));
      fit.derivatives[at + 2] = mean(0, 0);
      fit.derivatives[at + 3] = 1;
    }
  };
  for (let round = 0; round < MOST_ROUNDS; round++) {
    compare();
    const step = fit.step();
    if (step === null) return null;
    const [dx, dy, dGain, dAdded] = step as unknown as readonly [number, number, number, number];
    x += Math.min(0.5, Math.max(-0.5, dx));
    y += Math.min(0.5, Math.max(-0.5, dy));
    gain += dGain;
    added += dAdded;
    if (!(Math.abs(x - start.x) < 1.5 && Math.abs(y - start.y) < 1.5)) return null;
    if (Math.abs(dx) < 1e-4 && Math.abs(dy) < 1e-4) break;
  }
  compare();
  const covariance = fit.covariance();
  const contrast = robustDeviation([...wanted], median(wanted));
  if (covariance === null || covariance.deviation > MOST_LEFT * contrast) return null;
  return shiftFrom(x, y, covariance.matrix, PARAMETERS, 1);
}
