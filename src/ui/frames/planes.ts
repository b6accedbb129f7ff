import type { GreyFrame } from '../../core/frame';
import type { ImageRect } from '../../core/units';

/** The part of a frame that lies in a rectangle of whole pixels inside it. */
export function cropped(frame: GreyFrame, [x, y, width, height]: ImageRect): GreyFrame {
  const data = frame.data.slice(0, width * height);
  for (let row = 0; row < height; row++) {
    const start = (y + row) * frame.width + x;
    data.set(frame.data.subarray(start, start + width), row * width);
  }
  return { index: frame.index, width, height, data, white: frame.white };
}

/** A fitted picture as a frame of whole grey values, to be painted like film. */
export function frameOfModel(
  model: Float32Array,
  [, , width, height]: ImageRect,
  { index, white }: GreyFrame,
): GreyFrame {
  const data = white > 255 ? new Uint16Array(model.length) : new Uint8Array(model.length);
  for (let i = 0; i < model.length; i++) {
    data[i] = Math.min(Math.max(Math.round(model[i] as number), 0), white);
  }
  return { index, width, height, data, white };
}

const MIDDLE = 127.5;
const OPAQUE = 0xff000000;
const SPREAD = 0x010101;

/** Writes residuals as opaque greys: nothing left over is middle grey, `span` and more white, `-span` black. */
export function paintResidual(residual: Float32Array, span: number, rgba: Uint8ClampedArray): void {
  const pixels = new Uint32Array(rgba.buffer, rgba.byteOffset, residual.length);
  for (let i = 0; i < residual.length; i++) {
    const value = residual[i] as number;
    const share = Number.isFinite(value) ? Math.min(Math.max(value / span, -1), 1) : 0;
    pixels[i] = (OPAQUE | (Math.round(MIDDLE + share * MIDDLE) * SPREAD)) >>> 0;
  }
}

/** The pixels of zero weight as one path in pixels of the rectangle, a box for every run along a row. */
export function leftOutPath(weight: Float32Array, width: number): string {
  let path = '';
  for (let start = 0; start < weight.length; start++) {
    if ((weight[start] as number) !== 0) continue;
    const rowEnd = (Math.floor(start / width) + 1) * width;
    let end = start + 1;
    while (end < rowEnd && (weight[end] as number) === 0) end++;
    path += `M${start % width} ${Math.floor(start / width)}h${end - start}v1h${start - end}z`;
    start = end - 1;
  }
  return path;
}

const FACTORS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000] as const;

/** How many times to enlarge something of `size` so that it is as large as possible, but not larger than `room`. */
export function enlargement(size: number, room: number): number {
  const fitting = FACTORS.filter((factor) => factor * size <= room);
  return fitting.at(-1) ?? 1;
}

interface OutlinePoint {
  readonly at: readonly [number, number];
  readonly seen: boolean;
}

/** A closed outline as two paths, the parts that were seen and those that were not. */
export function outlinePaths(
  outline: readonly OutlinePoint[],
  place: (at: readonly [number, number]) => readonly [number, number],
): { readonly seen: string; readonly unseen: string } {
  const paths = { seen: '', unseen: '' };
  outline.forEach((point, i) => {
    const next = outline[(i + 1) % outline.length] ?? point;
    const side = point.seen && next.seen ? 'seen' : 'unseen';
    const before = outline[(i + outline.length - 1) % outline.length] ?? point;
    const joins = i > 0 && (before.seen && point.seen ? 'seen' : 'unseen') === side;
    const [x, y] = place(point.at);
    const [nextX, nextY] = place(next.at);
    paths[side] += `${joins ? '' : `M${round(x)} ${round(y)}`}L${round(nextX)} ${round(nextY)}`;
  });
  return paths;
}

const round = (place: number) => Math.round(place * 100) / 100;
