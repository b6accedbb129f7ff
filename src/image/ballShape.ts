import type { ImagePoint, ImageVector } from '../core/units';
import { centreInSpace, shownAt, sphereOutline } from './sphereOutline';
import type { BallModel } from './types';

/**
 * How the ball's image at one place differs from a circle: offsets p from its middle go to ball
 * coordinates q = A p, in which the outline is the circle |q| = radius and the blur moves it as
 * `BallModel.blur` says. Row by row: [a, b, c, d].
 */
export type Shape = readonly [a: number, b: number, c: number, d: number];

/** What perspective, tilt and lens make of it. */
function stretchAt(ball: BallModel, at: ImagePoint): Shape {
  const outline = sphereOutline(ball, at);
  if (outline === null) return [1, 0, 0, 1];
  const [xx, xy, yy] = outline.half;
  const [a, b, c, d] = inverseOf([xx, xy, xy, yy]);
  return [a * ball.radius, b * ball.radius, c * ball.radius, d * ball.radius];
}

/** Shape of the ball's image around a point. */
export function shapeAt(ball: BallModel, at: ImagePoint): Shape {
  let shape = stretchAt(ball, at);
  if (ball.readout !== undefined) {
    // The line at p is read p . direction lines after the middle's, and the ball has moved on by then.
    const [rx, ry] = ball.readout.direction;
    const [mx, my] = ball.readout.motionPerLine;
    shape = product(shape, [1 - mx * rx, -mx * ry, -my * rx, 1 - my * ry]);
  }
  return shape;
}

/** The ball's displacement during the exposure in ball coordinates, for a ball seen around a point. */
export function blurAt(ball: BallModel, at: ImagePoint): ImageVector {
  const { blur, camera } = ball;
  const plane = camera?.plane;
  const centre = centreInSpace(ball, at);
  if (plane === undefined || centre === null || Math.hypot(...blur) === 0) return blur;
  const [nx, ny, nz] = plane.normal;
  const [ax, ay, az] = plane.across;
  const down = [ny * az - nz * ay, nz * ax - nx * az, nx * ay - ny * ax] as const;
  const half = [0, 1, 2].map(
    (i) => (blur[0] * (plane.across[i] as number) + blur[1] * (down[i] as number)) / 2,
  ) as [number, number, number];
  const [x, y, z] = centre;
  const end = shownAt(ball, [x + half[0], y + half[1], z + half[2]]);
  const start = shownAt(ball, [x - half[0], y - half[1], z - half[2]]);
  if (end === null || start === null) return blur;
  const [a, b, c, d] = stretchAt(ball, at);
  const dx = end[0] - start[0];
  const dy = end[1] - start[1];
  return [a * dx + b * dy, c * dx + d * dy];
}

/** Inverse of a shape: ball coordinates to image offsets. */
export function inverseOf([a, b, c, d]: Shape): Shape {
  const det = a * d - b * c;
  return [d / det, -b / det, -c / det, a / det];
}

const ROUNDS = 4;

/** Image of the ball's centre from the middle of its outline, which perspective, tilt and lens set apart. */
export function centreFromMiddle(ball: BallModel, middle: ImagePoint): ImagePoint {
  let centre = middle;
  for (let i = 0; i < ROUNDS; i++) {
    const outline = sphereOutline(ball, centre);
    if (outline === null) return middle;
    centre = [centre[0] + middle[0] - outline.middle[0], centre[1] + middle[1] - outline.middle[1]];
  }
  return centre;
}

function product([a, b, c, d]: Shape, [e, f, g, h]: Shape): Shape {
  return [a * e + b * g, a * f + b * h, c * e + d * g, c * f + d * h];
}
