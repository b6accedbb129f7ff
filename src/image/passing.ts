import { DEVIATION_OVER_MEDIAN, median } from '../core/statistics';
import type { Background } from './types';

/** Side of the blocks, px: smaller than a ball, and of enough pixels that a mean tells more than any of them. */
const SIDE = 8;
/** A block differs where its mean is off by this many standard deviations; its neighbours are taken with it. */
const OFF_SIGMAS = 4;

/** Blocks of the frames in which something stands before the scene. */
export interface Passing {
  /** Block of a pixel. */
  blockOf(p: number): number;
  /** Whether in any frame something passes a block. */
  any(block: number): boolean;
  /** Whether in the k-th frame something passes a block. */
  at(k: number, block: number): boolean;
}

/**
 * What passes before the scene and is too faint to stand out in single pixels: the dim side of a ball drags the mean
 * of the frames towards itself, and the outline is then fitted against a scene that was never there. The mean of a
 * block tells it. Where more than half of the frames differ it is the scene itself that does.
 */
export function findPassing(
  frames: readonly ArrayLike<number>[],
  { width, height, level, noise }: Pick<Background, 'width' | 'height' | 'level' | 'noise'>,
): Passing {
  const columns = Math.ceil(width / SIDE);
  const rows = Math.ceil(height / SIDE);
  const blocks = columns * rows;
  const blockAt = new Uint32Array(width * height);
  for (let p = 0; p < blockAt.length; p++) {
    const x = p % width;
    blockAt[p] = Math.floor((p - x) / width / SIDE) * columns + Math.floor(x / SIDE);
  }
  const sizes = new Float64Array(blocks);
  for (const block of blockAt) sizes[block] = (sizes[block] as number) + 1;
  const means = (data: ArrayLike<number>): Float64Array => {
    const sums = new Float64Array(blocks);
    for (let p = 0; p < blockAt.length; p++) {
      const block = blockAt[p] as number;
      sums[block] = (sums[block] as number) + (data[p] as number);
    }
    return sums.map((sum, block) => sum / (sizes[block] as number));
  };
  const still = means(level);
  const deviation = still.map((grey) => Math.sqrt(noise.readVariance + noise.gain * grey) / SIDE);
  const off = frames.map((data) => {
    const shown = means(data);
    // The lamp may flicker.
    const gain = median(shown.map((grey, block) => grey / Math.max(1, still[block] as number)));
    return shown.map(
      (grey, block) =>
        Math.abs(grey - gain * (still[block] as number)) / (deviation[block] as number),
    );
  });
  // Where neighbours err alike, as a codec's blocks do, means scatter more than independent noise has them.
  const scale = Math.max(1, DEVIATION_OVER_MEDIAN * median(off.map((of) => median(of))));
  const passed = off.map((of) =>
    dilate(
      of.map((z) => Number(z > OFF_SIGMAS * scale)),
      columns,
    ),
  );
  const counts = new Float64Array(blocks);
  for (const of of passed) {
    for (let block = 0; block < blocks; block++) {
      counts[block] = (counts[block] as number) + (of[block] as number);
    }
  }
  const passes = counts.map((count) => Number(count > 0 && count <= frames.length / 2));
  return {
    blockOf: (p) => blockAt[p] as number,
    any: (block) => passes[block] === 1,
    at: (k, block) => passes[block] === 1 && passed[k]?.[block] === 1,
  };
}

/** The blocks that differ, and those beside them. */
function dilate(differ: Float64Array, columns: number): Float64Array {
  const rows = differ.length / columns;
  return differ.map((_, block) => {
    const column = block % columns;
    const row = (block - column) / columns;
    for (let j = Math.max(0, row - 1); j <= Math.min(rows - 1, row + 1); j++) {
      for (let i = Math.max(0, column - 1); i <= Math.min(columns - 1, column + 1); i++) {
        if (differ[j * columns + i] === 1) return 1;
      }
    }
    return 0;
  });
}
