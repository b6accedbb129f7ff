import { leastSquares } from '../core/linalg';
import { failure, type Outcome, success } from '../core/reason';
import type { ImagePoint } from '../core/units';

/** A plane's picture on another plane: 3 x 3 row by row, acting on (x, y, 1); its size is free. */
export type Homography = readonly [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
];

type Four<T> = readonly [T, T, T, T];

/** The one homography that takes four points to four others; no three of either may lie on a line. */
export function homographyOf(from: Four<ImagePoint>, to: Four<ImagePoint>): Homography {
  const before = levelling(from);
  const after = levelling(to);
  const rows: number[][] = [];
  const rhs: number[] = [];
  for (let i = 0; i < 4; i++) {
    const [x, y] = through(before, from[i] as ImagePoint);
    const [u, v] = through(after, to[i] as ImagePoint);
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]);
    rhs.push(u, v);
  }
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = leastSquares(rows, rhs);
  return composed(inverted(after), composed([a, b, c, d, e, f, g, h, 1], before));
}

/** Image of a point; the point must not lie on the line that goes to infinity. */
export function through(h: Homography, [x, y]: ImagePoint): ImagePoint {
  const w = h[6] * x + h[7] * y + h[8];
  return [(h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w];
}

/** `first`, then `then`. */
function composed(then: Homography, first: Homography): Homography {
  const at = (row: number, column: number) =>
    (then[3 * row] as number) * (first[column] as number) +
    (then[3 * row + 1] as number) * (first[3 + column] as number) +
    (then[3 * row + 2] as number) * (first[6 + column] as number);
  return [at(0, 0), at(0, 1), at(0, 2), at(1, 0), at(1, 1), at(1, 2), at(2, 0), at(2, 1), at(2, 2)];
}

/** The way back (adjugate: a homography's size is free). */
export function inverted([a, b, c, d, e, f, g, h, i]: Homography): Homography {
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
}

/** Moves points about the origin, about one away from it: equations between such numbers stay well conditioned. */
function levelling(points: Four<ImagePoint>): Homography {
  const mx = points.reduce((sum, [x]) => sum + x, 0) / 4;
  const my = points.reduce((sum, [, y]) => sum + y, 0) / 4;
  const size = points.reduce((sum, [x, y]) => sum + Math.hypot(x - mx, y - my), 0) / 4;
  return [1 / size, 0, -mx / size, 0, 1 / size, -my / size, 0, 0, 1];
}

/**
 * Whether four points go round clockwise as seen (y down) and bulge outwards everywhere: the picture of a
 * rectangle's corners from top left on. Failure `planeCorners`.
 */
export function checkCorners(corners: Four<ImagePoint>): Outcome<true> {
  for (let i = 0; i < 4; i++) {
    const [a, b, c] = [0, 1, 2].map((k) => corners[(i + k) % 4]) as [
      ImagePoint,
      ImagePoint,
      ImagePoint,
    ];
    const turn = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
    const sides = Math.hypot(b[0] - a[0], b[1] - a[1]) * Math.hypot(c[0] - b[0], c[1] - b[1]);
    if (!(turn > FLATTEST_CORNER * sides)) {
      return failure(
        'planeCorners',
        'The four corners of the plane are not those of a rectangle from top left, top right, bottom right to bottom left.',
        'Mark the corners again in that order, each on its own corner.',
      );
    }
  }
  return success(true);
}

/** Sine of the angle by which the outline must at least turn at each corner. */
const FLATTEST_CORNER = 0.05;
