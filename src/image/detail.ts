import type { ImageRect } from '../core/units';
import { besideFault } from './faults';
import type { Background } from './types';

/** Which part of a picture is looked at. */
export interface Area {
  readonly inside?: ImageRect;
  readonly outside?: ImageRect;
}

/** Detail is taken from every part of the picture, in squares of this side. */
const TILE = 32;

/** Pixels of a picture that stand in steep slopes of brightness. */
export interface Detail {
  /** Indices into the picture, tile by tile. */
  readonly pixels: Uint32Array;
  /** Tile of each. */
  readonly tile: Uint16Array;
  readonly tiles: number;
  /** How many are steep each way, not by noise. */
  readonly steepAcross: number;
  readonly steepDown: number;
}

interface Steep {
  readonly p: number;
  /** Slopes, grey values a pixel. */
  readonly across: number;
  readonly down: number;
  /** Whether they stand out from the noise. */
  readonly steep: { readonly across: boolean; readonly down: boolean };
}

/** In each tile the pixels with the steepest slopes across and down, where those stand out from the noise. */
export function detailOf(
  background: Background,
  { inside, outside }: Area,
  { margin, most }: { readonly margin: number; readonly most: number },
): Detail {
  const { width, height } = background;
  const [left, top, w, h] = inside ?? [0, 0, width, height];
  const x0 = Math.max(margin, Math.ceil(left));
  const y0 = Math.max(margin, Math.ceil(top));
  const x1 = Math.min(width - margin, Math.floor(left + w));
  const y1 = Math.min(height - margin, Math.floor(top + h));
  const side = Math.min(TILE, Math.max(8, Math.floor(Math.min(x1 - x0, y1 - y0) / 3)));
  const columns = Math.ceil((x1 - x0) / side);
  const rows = Math.ceil((y1 - y0) / side);
  const chosen: number[] = [];
  const tileOf: number[] = [];
  let tiles = 0;
  let steepAcross = 0;
  let steepDown = 0;
  if (columns < 1 || rows < 1) {
    return { pixels: new Uint32Array(), tile: new Uint16Array(), tiles, steepAcross, steepDown };
  }
  const each = Math.max(2, Math.floor(most / (columns * rows) / 2));
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const found: Steep[] = [];
      for (let y = y0 + row * side; y < Math.min(y1, y0 + (row + 1) * side); y++) {
        const from = x0 + column * side;
        addSteep(background, from, Math.min(x1, from + side), y, outside, found);
      }
      if (found.length === 0) continue;
      const picked = new Set<Steep>();
      found.sort((a, b) => b.across - a.across);
      for (const one of found.slice(0, each)) picked.add(one);
      found.sort((a, b) => b.down - a.down);
      for (const one of found.slice(0, each)) picked.add(one);
      for (const { p, steep } of picked) {
        chosen.push(p);
        tileOf.push(tiles);
        if (steep.across) steepAcross++;
        if (steep.down) steepDown++;
      }
      tiles++;
    }
  }
  return {
    pixels: Uint32Array.from(chosen),
    tile: Uint16Array.from(tileOf),
    tiles,
    steepAcross,
    steepDown,
  };
}

/** Finds the steep pixels from x = `from` up to `to` of line y. */
function addSteep(
  background: Background,
  from: number,
  to: number,
  y: number,
  outside: ImageRect | undefined,
  found: Steep[],
): void {
  const { width, level, noise } = background;
  for (let x = from; x < to; x++) {
    if (outside !== undefined && within(x, y, outside)) continue;
    const p = y * width + x;
    if (besideFault(background, p)) continue;
    const across = Math.abs((level[p + 1] as number) - (level[p - 1] as number)) / 2;
    const down = Math.abs((level[p + width] as number) - (level[p - width] as number)) / 2;
    const variance = noise.readVariance + noise.gain * Math.max(0, level[p] as number);
    if (across * across <= variance && down * down <= variance) continue;
    const steep = { across: across * across > variance, down: down * down > variance };
    found.push({ p, across, down, steep });
  }
}

const within = (x: number, y: number, [left, top, w, h]: ImageRect): boolean =>
  x >= left && y >= top && x < left + w && y < top + h;
