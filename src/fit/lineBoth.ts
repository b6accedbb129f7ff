import { failure, type Outcome, success } from '../core/reason';

/** A point with errors in both coordinates. */
export interface UncertainPoint {
  readonly x: number;
  readonly y: number;
  readonly varX: number;
  readonly varY: number;
  readonly covXY: number;
}

/** y = intercept + slope x, with the covariance of the two for the errors as stated (not scaled by chi-square). */
export interface LineFit {
  readonly slope: number;
  readonly intercept: number;
  readonly slopeU: number;
  readonly interceptU: number;
  readonly covariance: number;
  readonly chiSquare: number;
  readonly dof: number;
}

const MOST_ROUNDS = 100;
const SETTLED = 1e-14;

/**
 * Straight line through points with errors in both coordinates, correlated or not, by York's iteration from `start` as its
 * slope (York, Evensen, Lopez Martinez and De Basabe Delgado, Am. J. Phys. 72 (2004) 367). Every point needs an error across
 * the line. Failure: `lineUndetermined`.
 */
export function fitLineBoth(points: readonly UncertainPoint[], start: number): Outcome<LineFit> {
  let slope = start;
  for (let round = 0; round < MOST_ROUNDS && points.length > 1; round++) {
    const { weights, meanX, meanY } = centred(points, slope);
    let up = 0;
    let along = 0;
    points.forEach((point, i) => {
      const [u, v] = [point.x - meanX, point.y - meanY];
      const weight = weights[i] as number;
      const beta = weight * adjusted(point, slope, u, v);
      up += weight * beta * v;
      along += weight * beta * u;
    });
    const next = up / along;
    if (!Number.isFinite(next)) break;
    const change = Math.abs(next - slope);
    slope = next;
    if (change <= SETTLED * Math.max(1, Math.abs(slope))) return success(concluded(points, slope));
  }
  return failure('lineUndetermined', 'The points do not determine a straight line.');
}

/** Weight of each point across a line of this slope, and the mean point. */
function centred(points: readonly UncertainPoint[], slope: number) {
  let sum = 0;
  let meanX = 0;
  let meanY = 0;
  const weights = points.map(({ x, y, varX, varY, covXY }) => {
    const weight = 1 / (varY + slope * (slope * varX - 2 * covXY));
    sum += weight;
    meanX += weight * x;
    meanY += weight * y;
    return weight;
  });
  return { weights, sum, meanX: meanX / sum, meanY: meanY / sum };
}

/** Place along x, from the mean, of the point on the line that belongs to a measured one, over its weight. */
const adjusted = (
  { varX, varY, covXY }: UncertainPoint,
  slope: number,
  u: number,
  v: number,
): number => u * varY + slope * v * varX - (slope * u + v) * covXY;

function concluded(points: readonly UncertainPoint[], slope: number): LineFit {
  const { weights, sum, meanX, meanY } = centred(points, slope);
  const intercept = meanY - slope * meanX;
  const places = points.map(
    (point, i) =>
      meanX + (weights[i] as number) * adjusted(point, slope, point.x - meanX, point.y - meanY),
  );
  const middle = places.reduce((total, x, i) => total + (weights[i] as number) * x, 0) / sum;
  let spread = 0;
  let chiSquare = 0;
  points.forEach(({ x, y }, i) => {
    const weight = weights[i] as number;
    spread += weight * ((places[i] as number) - middle) ** 2;
    chiSquare += weight * (y - intercept - slope * x) ** 2;
  });
  return {
    slope,
    intercept,
    slopeU: Math.sqrt(1 / spread),
    interceptU: Math.sqrt(1 / sum + middle ** 2 / spread),
    covariance: -middle / spread,
    chiSquare,
    dof: points.length - 2,
  };
}
