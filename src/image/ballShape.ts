import type { ImagePoint } from '../core/units';
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
  if (ball.camera !== undefined) {
    // A sphere seen at the angle theta off the camera's axis fills an ellipse 1 / cos(theta) longer
    // away from the axis than across (exact to the fourth order of its angular size).
    const dx = at[0] - ball.camera.centre[0];
    const dy = at[1] - ball.camera.centre[1];
    const off = Math.hypot(dx, dy);
    if (off > 0) {
      const shrink = Math.cos(Math.atan(off / ball.camera.distance)) - 1;
      const ux = dx / off;
      const uy = dy / off;
      shape = [1 + shrink * ux * ux, shrink * ux * uy, shrink * ux * uy, 1 + shrink * uy * uy];
    }
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

/**
 * Image of the ball's centre from the middle of its outline. Seen at a finite distance D the outline's
 * middle lies farther from the camera's axis by the share (radius / D)^2 / cos^2(theta).
 */
export function centreFromMiddle(ball: BallModel, middle: ImagePoint): ImagePoint {
  if (ball.camera === undefined) return middle;
  const { centre, distance } = ball.camera;
  const dx = middle[0] - centre[0];
  const dy = middle[1] - centre[1];
  const tangent2 = (dx * dx + dy * dy) / distance ** 2;
  const share = 1 / (1 + (ball.radius / distance) ** 2 * (1 + tangent2));
  return [centre[0] + dx * share, centre[1] + dy * share];
}

function product([a, b, c, d]: Shape, [e, f, g, h]: Shape): Shape {
  return [a * e + b * g, a * f + b * h, c * e + d * g, c * f + d * h];
}
