import type { RefObject } from 'preact';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { KeptRows } from '../../app/streakRows';
import type { Contrast } from '../film/picture';
import type { FilmTransform } from '../film/view';
import type { TimeScale } from './mapping';
import { deviceRows, paintRows, type Raster, rasterOf } from './paint';
import type { StreakGeometry, StreakRows } from './props';

interface Painted {
  readonly raster: Raster;
  readonly contrast: Contrast;
  readonly rows: ReadonlyMap<number, Float32Array>;
  readonly picture: ImageData;
  /** How many entries of the map have been painted; a map keeps its order. */
  seen: number;
}

/** Keeps the canvas painted: everything when the layout changes, only new lines when lines arrive. */
export function useStreakPainting(
  canvas: RefObject<HTMLCanvasElement | null>,
  geometry: StreakGeometry | null,
  streak: StreakRows,
  contrast: Contrast,
  view: FilmTransform,
  time: TimeScale,
  width: number,
  height: number,
): void {
  const ratio = Math.min(window.devicePixelRatio, 2);
  const { x0, scale } = view;
  const { rowHeight, topFrame } = time;
  const raster = useMemo(
    () =>
      geometry === null || width === 0 || scale === 0
        ? null
        : rasterOf(
            geometry,
            { x0, y0: 0, scale, fitted: false },
            { rowHeight, topFrame },
            width,
            height,
            ratio,
          ),
    [geometry, x0, scale, rowHeight, topFrame, width, height, ratio],
  );
  const painted = useRef<Painted | null>(null);
  const { rows, version } = streak;
  const { low, high } = contrast;

  // `version` tells that the map was filled further.
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context === null || context === undefined || raster === null) return;
    const last = painted.current;
    const same =
      last !== null &&
      last.raster === raster &&
      last.rows === rows &&
      last.contrast.low === low &&
      last.contrast.high === high;
    if (same) {
      paintNew(context, last);
      return;
    }
    const picture = last?.raster === raster ? last.picture : layOut(context, raster);
    const window = { low, high };
    paintRows(raster, rows, window, picture.data, 0, raster.height);
    context.putImageData(picture, 0, 0);
    painted.current = { raster, contrast: window, rows, picture, seen: rows.size };
  }, [canvas, raster, rows, version, low, high]);
}

/** Sizes the canvas: a size that is set anew, even the same, costs a new drawing surface. */
function layOut(context: CanvasRenderingContext2D, { width, height }: Raster): ImageData {
  context.canvas.width = width;
  context.canvas.height = height;
  return context.createImageData(width, height);
}

function paintNew(context: CanvasRenderingContext2D, painted: Painted): void {
  // Where only some rows are kept, each stands for the frames behind it.
  const step = painted.rows instanceof KeptRows ? painted.rows.step : 1;
  let first = Infinity;
  let last = -Infinity;
  let index = 0;
  for (const frame of painted.rows.keys()) {
    if (index++ < painted.seen) continue;
    first = Math.min(first, frame);
    last = Math.max(last, frame + step - 1);
  }
  painted.seen = painted.rows.size;
  if (first > last) return;
  const { raster, picture } = painted;
  const [from, to] = deviceRows(raster, first, last);
  if (from >= to) return;
  paintRows(raster, painted.rows, painted.contrast, picture.data, from, to);
  context.putImageData(picture, 0, 0, 0, from, raster.width, to - from);
}
