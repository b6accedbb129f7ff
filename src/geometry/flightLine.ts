import { failure, type Outcome, success } from '../core/reason';
import type { ImagePoint, ImageVector, Pixels, Radians } from '../core/units';
import { unitVector } from '../core/vector';

/** The flight axis through the muzzle point: distances along and across it, in pixels. */
export interface FlightLine {
  readonly muzzle: ImagePoint;
  /** Unit vector, direction of travel. */
  readonly axis: ImageVector;
  along(x: Pixels, y: Pixels): Pixels;
  across(x: Pixels, y: Pixels): Pixels;
  /** Standard uncertainty along the axis of a point with the given covariance. */
  alongU(varX: number, varY: number, covXY: number): Pixels;
  pointAt(along: Pixels): ImagePoint;
}

export function flightLine(muzzle: ImagePoint, direction: ImageVector): FlightLine {
  const axis = unitVector(direction);
  const [ax, ay] = axis;
  return {
    muzzle,
    axis,
    along: (x, y) => (x - muzzle[0]) * ax + (y - muzzle[1]) * ay,
    across: (x, y) => (y - muzzle[1]) * ax - (x - muzzle[0]) * ay,
    alongU: (varX, varY, covXY) =>
      Math.sqrt(Math.max(0, ax * ax * varX + ay * ay * varY + 2 * ax * ay * covXY)),
    pointAt: (along) => [muzzle[0] + along * ax, muzzle[1] + along * ay],
  };
}

/**
 * The direction assumed before the ball has been found: along the image's longer side, towards the farther edge.
 * Only the streak image and the search start from it; the path's own direction replaces it.
 */
export function provisionalAxis(muzzle: ImagePoint, width: Pixels, height: Pixels): ImageVector {
  const right = width - 1 - muzzle[0];
  const down = height - 1 - muzzle[1];
  const reaches: readonly (readonly [Pixels, ImageVector])[] = [
    [right, [1, 0]],
    [muzzle[0], [-1, 0]],
    [down, [0, 1]],
    [muzzle[1], [0, -1]],
  ];
  return reaches.reduce((best, next) => (next[0] > best[0] ? next : best))[1];
}

export interface AxisFit {
  /** Unit vector, direction of travel. */
  readonly axis: ImageVector;
  /** Standard uncertainty of its direction. */
  readonly angleU: Radians;
}

/**
 * Direction of a straight path from points in time order: total least squares (principal axis of the scatter),
 * weighted by the points' mean variance. The uncertainty is the scatter across the axis over the spread along it.
 * Failure: `axisUndetermined` for fewer than two distinct points.
 */
export function fitAxis(
  points: readonly { readonly x: Pixels; readonly y: Pixels; readonly variance: number }[],
): Outcome<AxisFit> {
  let w = 0;
  let mx = 0;
  let my = 0;
  for (const point of points) {
    const weight = 1 / point.variance;
    w += weight;
    mx += weight * point.x;
    my += weight * point.y;
  }
  mx /= w;
  my /= w;
  let xx = 0;
  let yy = 0;
  let xy = 0;
  for (const point of points) {
    const weight = 1 / point.variance;
    xx += weight * (point.x - mx) ** 2;
    yy += weight * (point.y - my) ** 2;
    xy += weight * (point.x - mx) * (point.y - my);
  }
  const first = points[0];
  const last = points.at(-1);
  const spread = xx + yy;
  if (first === undefined || last === undefined || !(spread > 0)) {
    return failure('axisUndetermined', 'The path is too short to give a direction.');
  }
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  const sense =
    (last.x - first.x) * Math.cos(angle) + (last.y - first.y) * Math.sin(angle) < 0 ? -1 : 1;
  const major = (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy);
  const minor = Math.max(0, spread - major);
  // With unit-variance weights the scatter across is about one a point; more than that widens the interval.
  const excess = points.length > 2 ? Math.max(1, minor / (points.length - 2)) : 1;
  return success({
    axis: [sense * Math.cos(angle), sense * Math.sin(angle)],
    angleU: Math.sqrt(excess / major),
  });
}
