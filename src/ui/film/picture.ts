import type { GreyFrame } from '../../core/frame';
import type { ImagePoint, ImageVector } from '../../core/units';

/** Grey values shown as black and as white. */
export interface Contrast {
  readonly low: number;
  readonly high: number;
}

const OPAQUE = 0xff000000;
/** A grey level in all three colour bytes. */
const SPREAD = 0x010101;

/**
 * Writes a frame as opaque 8-bit grey RGBA, `low` and below black, `high` and above white.
 * `rgba` holds `4 * width * height` bytes. A window without width shows a step at `low`.
 */
export function paintFrame(frame: GreyFrame, contrast: Contrast, rgba: Uint8ClampedArray): void {
  const pixels = new Uint32Array(rgba.buffer, rgba.byteOffset, frame.data.length);
  const gain = 255 / Math.max(contrast.high - contrast.low, Number.EPSILON);
  const shade = (grey: number) => {
    const level = Math.min(Math.max((grey - contrast.low) * gain, 0), 255);
    return (OPAQUE | (Math.round(level) * SPREAD)) >>> 0;
  };
  const { data } = frame;
  if (frame.white <= 0xfff) {
    const table = Uint32Array.from({ length: frame.white + 1 }, (_, grey) => shade(grey));
    for (let i = 0; i < data.length; i++) pixels[i] = table[data[i] as number] as number;
  } else {
    for (let i = 0; i < data.length; i++) pixels[i] = shade(data[i] as number);
  }
}

/** Grey values that a frame is held against, pixel by pixel. */
export type Reference = Pick<Float32Array, 'length'> & { readonly [pixel: number]: number };

/**
 * Writes what a frame differs by from a reference as opaque grey RGBA: none is mid grey, `reach` and more brighter is
 * white, as much darker black.
 */
export function paintChange(
  frame: GreyFrame,
  against: Reference,
  reach: number,
  rgba: Uint8ClampedArray,
): void {
  const { data } = frame;
  const pixels = new Uint32Array(rgba.buffer, rgba.byteOffset, data.length);
  const gain = 127.5 / Math.max(reach, Number.EPSILON);
  for (let i = 0; i < data.length; i++) {
    const level = 127.5 + ((data[i] as number) - (against[i] as number)) * gain;
    const shade = level < 0 ? 0 : level > 255 ? 255 : level | 0;
    pixels[i] = OPAQUE | (shade * SPREAD);
  }
}

/** Index of the pixel an image point lies in; null outside the image. */
export function pixelAt(
  { width, height }: Pick<GreyFrame, 'width' | 'height'>,
  [x, y]: ImagePoint,
): number | null {
  const column = Math.round(x);
  const row = Math.round(y);
  return column < 0 || row < 0 || column >= width || row >= height ? null : row * width + column;
}

/** What a pixel's frame differs by from the reference, rounded; null: nothing to hold it against. */
export const changeAt = (
  frame: GreyFrame,
  against: Reference | null,
  pixel: number,
): number | null =>
  against === null ? null : Math.round((frame.data[pixel] as number) - (against[pixel] as number));

/** Grey value of the pixel an image point lies in; null outside the image. */
export function greyAt(frame: GreyFrame, at: ImagePoint): number | null {
  const pixel = pixelAt(frame, at);
  return pixel === null ? null : (frame.data[pixel] ?? null);
}

/** Grey value between pixel centres, bilinear; null where a neighbour lies outside the image. */
function greyBetween(frame: GreyFrame, x: number, y: number): number | null {
  const left = Math.floor(x);
  const top = Math.floor(y);
  const right = x - left;
  const down = y - top;
  const corners = [
    greyAt(frame, [left, top]),
    greyAt(frame, [left + 1, top]),
    greyAt(frame, [left, top + 1]),
    greyAt(frame, [left + 1, top + 1]),
  ] as const;
  const [a, b, c, d] = corners;
  if (a === null || b === null || c === null || d === null) return null;
  return (a * (1 - right) + b * right) * (1 - down) + (c * (1 - right) + d * right) * down;
}

/** Grey values along a unit direction through a point, from `-reach` to `reach` px, `perPixel` samples a pixel. */
export function profileThrough(
  frame: GreyFrame,
  [x, y]: ImagePoint,
  [dx, dy]: ImageVector,
  reach: number,
  perPixel: number,
): { readonly offset: number; readonly grey: number }[] {
  const samples: { offset: number; grey: number }[] = [];
  const half = Math.round(reach * perPixel);
  for (let i = -half; i <= half; i++) {
    const offset = i / perPixel;
    const grey = greyBetween(frame, x + offset * dx, y + offset * dy);
    if (grey !== null) samples.push({ offset, grey });
  }
  return samples;
}
