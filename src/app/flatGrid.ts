import type { FootageInfo } from '../core/film';
import type { ImagePoint, Pixels } from '../core/units';
import type { View } from '../geometry/view';

/** Evenly spaced straight lines of the flight plane, as the film shows them. */
export interface FlatGrid {
  readonly lines: readonly (readonly ImagePoint[])[];
  /** Between two lines, flat px. */
  readonly spacing: Pixels;
}

/** Fields along the picture's longer side, about. */
const FIELDS = 12;
/** Points between two crossings: enough for a bend to look smooth. */
const POINTS_A_FIELD = 4;
/** Lines outside the picture by more than this share of its longer side are cut off. */
const MARGIN = 0.05;

/** The grid over a picture; a line ends where the view shows nothing of it. */
export function flatGrid(
  view: Pick<View, 'flatten' | 'show'>,
  { width, height }: Pick<FootageInfo, 'width' | 'height'>,
): FlatGrid {
  const longer = Math.max(width, height);
  const spacing = Math.max(1, Math.round(longer / FIELDS));
  const bounds = flatBounds(view, width, height);
  const margin = MARGIN * longer;
  const isIn = ([x, y]: ImagePoint) =>
    x > -margin && y > -margin && x < width + margin && y < height + margin;
  const step = spacing / POINTS_A_FIELD;
  const lines: ImagePoint[][] = [];
  const trace = (from: number, to: number, at: (along: number) => ImagePoint) => {
    let line: ImagePoint[] = [];
    for (let along = from; along <= to + step / 2; along += step) {
      const shown = view.show(at(along));
      if (shown.ok && isIn(shown.value)) line.push(shown.value);
      else {
        if (line.length > 1) lines.push(line);
        line = [];
      }
    }
    if (line.length > 1) lines.push(line);
  };
  const { left, right, top, bottom } = bounds;
  const first = (low: number) => Math.ceil(low / spacing) * spacing;
  for (let x = first(left); x <= right; x += spacing) trace(top, bottom, (y) => [x, y]);
  for (let y = first(top); y <= bottom; y += spacing) trace(left, right, (x) => [x, y]);
  return { lines, spacing };
}

/** The flat rectangle around what the picture's border shows, no larger than a few pictures. */
function flatBounds(view: Pick<View, 'flatten'>, width: number, height: number) {
  const border: ImagePoint[] = [];
  for (let i = 0; i <= 8; i++) {
    const [x, y] = [((width - 1) * i) / 8, ((height - 1) * i) / 8];
    border.push([x, 0], [x, height - 1], [0, y], [width - 1, y]);
  }
  const seen = border.flatMap((at) => {
    const flat = view.flatten(at);
    return flat.ok ? [flat.value] : [];
  });
  const most = 2 * Math.max(width, height);
  const low = (values: number[]) => Math.max(-most, Math.min(...values, 0));
  const high = (values: number[], size: number) => Math.min(most + size, Math.max(...values, 0));
  const xs = seen.map(([x]) => x);
  const ys = seen.map(([, y]) => y);
  return { left: low(xs), right: high(xs, width), top: low(ys), bottom: high(ys, height) };
}
