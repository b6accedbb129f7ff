import type { ImagePoint } from '../core/units';
import { sphereOutline } from './sphereOutline';
import type { BallModel } from './types';

/**
 * How the ball's image at one place differs from a circle: offsets p from its middle go to ball
 * coordinates q = A p, in which the outline is the circle |q| = radius and the blur moves it as
 * `BallModel.blur` says. Row by row: [a, b, c, d].
 */
export type Shape = readonly [a: number, b: number, c: number, d: number];

/** Shape of the ball's image around a point. */
export function shapeAt(ball: BallModel, at: ImagePoint): Shape {
  let shape: Shape = [1, 0, 0, 1];
  const outline = sphereOutline(ball, at);
  if (outline !== null) {
    const [xx, xy, yy] = outline.half;
    const [a, b, c, d] = inverseOf([xx, xy, xy, yy]);
    shape = [a * ball.radius, b * ball.radius, c * ball.radius, d * ball.radius];
  }
  if (ball.readout !== undefined) {
    // The line at p is read p . direction lines after the middle's, and the ball has moved on by then.
    const [rx, ry] = ball.readout.direction;
    const [mx, my] = ball.readout.motionPerLine;
    shape = product(shape, [1 - mx * rx, -mx * ry, -my * rx, 1 - my * ry]);
  }
  return shape;
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
