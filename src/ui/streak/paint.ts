import type { Contrast } from '../film/picture';
import type { FilmTransform } from '../film/view';
import { leftToAlong, type TimeScale } from './mapping';
import type { StreakGeometry } from './props';

/** Where the pixels of the drawing come from. Sizes in device pixels, `ratio` of them a CSS pixel. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly ratio: number;
  readonly time: TimeScale;
  /** For each column the sample it shows; -1: none. */
  readonly columns: Int32Array;
}

/** More frames than this in one device row add nothing that can be seen. */
const MOST_FRAMES_AVERAGED = 8;
const OPAQUE = 0xff000000;
const SPREAD = 0x010101;

/** Lays the samples out under the film's pixels. `width` and `height` in CSS px. */
export function rasterOf(
  geometry: StreakGeometry,
  view: FilmTransform,
  time: TimeScale,
  width: number,
  height: number,
  ratio: number,
): Raster {
  const deviceWidth = Math.max(1, Math.round(width * ratio));
  const columns = new Int32Array(deviceWidth).fill(-1);
  for (let column = 0; column < deviceWidth; column++) {
    const along = leftToAlong(geometry, view, width, (column + 0.5) / ratio);
    const sample = Math.round(along - geometry.from);
    if (sample >= 0 && sample < geometry.length) columns[column] = sample;
  }
  return {
    width: deviceWidth,
    height: Math.max(1, Math.round(height * ratio)),
    ratio,
    time,
    columns,
  };
}

/** Device rows that show any of the frames from `first` to `last`, half open. */
export function deviceRows(raster: Raster, first: number, last: number): readonly [number, number] {
  const pitch = raster.time.rowHeight * raster.ratio;
  const from = Math.floor((first - 0.5 - raster.time.topFrame) * pitch);
  const to = Math.ceil((last + 0.5 - raster.time.topFrame) * pitch);
  return [Math.max(from, 0), Math.min(to, raster.height)];
}

/** Frames a device row shows, both included: the one it lies in, or all whose middles it covers. */
function framesOf(raster: Raster, row: number): readonly [number, number] {
  const pitch = raster.time.rowHeight * raster.ratio;
  if (pitch >= 1) {
    const frame = Math.round(raster.time.topFrame + (row + 0.5) / pitch);
    return [frame, frame];
  }
  const first = Math.ceil(raster.time.topFrame + row / pitch);
  const end = Math.ceil(raster.time.topFrame + (row + 1) / pitch);
  return [first, Math.max(end - 1, first)];
}

/**
 * Paints device rows `fromRow` up to `toRow` as grey RGBA into `rgba` (the whole drawing). Where several
 * frames share a row their mean is shown; what has not come or lies outside the film stays transparent.
 */
export function paintRows(
  raster: Raster,
  rows: ReadonlyMap<number, Float32Array>,
  contrast: Contrast,
  rgba: Uint8ClampedArray,
  fromRow: number,
  toRow: number,
): void {
  const { width, columns } = raster;
  const pixels = new Uint32Array(rgba.buffer, rgba.byteOffset, width * raster.height);
  const gain = 255 / Math.max(contrast.high - contrast.low, Number.EPSILON);
  const sum = new Float32Array(width);
  const count = new Uint8Array(width);
  for (let row = fromRow; row < toRow; row++) {
    sum.fill(0);
    count.fill(0);
    const [first, last] = framesOf(raster, row);
    const stride = Math.max(1, Math.ceil((last - first + 1) / MOST_FRAMES_AVERAGED));
    for (let frame = first; frame <= last; frame += stride) {
      const samples = rows.get(frame);
      if (samples === undefined) continue;
      for (let column = 0; column < width; column++) {
        const sample = columns[column] as number;
        if (sample < 0) continue;
        const grey = samples[sample] as number;
        if (grey < 0) continue;
        sum[column] = (sum[column] as number) + grey;
        count[column] = (count[column] as number) + 1;
      }
    }
    const start = row * width;
    for (let column = 0; column < width; column++) {
      const n = count[column] as number;
      if (n === 0) {
        pixels[start + column] = 0;
        continue;
      }
      const level = ((sum[column] as number) / n - contrast.low) * gain;
      const shade = Math.round(Math.min(Math.max(level, 0), 255));
      pixels[start + column] = (OPAQUE | (shade * SPREAD)) >>> 0;
    }
  }
}
