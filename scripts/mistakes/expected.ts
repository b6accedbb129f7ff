/** The size of each mistake in closed form. All derived here; SI units and pixels. */

/** A rate typed for another: every speed goes with it. Share of the speed. */
export const wrongRate = (typed: number, real: number): number => typed / real - 1;

/** A length that lies `depth` behind the flight, seen from `distance`, taken as if it lay in it. Share of the speed. */
export const wrongPlane = (depth: number, distance: number): number => depth / distance;

/**
 * A mark `depth` behind the flight, seen `aside` of the point straight before the camera, taken for the place in the
 * flight plane that is level with it: so far off it stands, in m, towards the middle of the picture.
 */
export const parallax = (aside: number, depth: number, distance: number): number =>
  (aside * depth) / (distance + depth);

/**
 * A sensor that reads line after line along the flight, `lineTime` apart, taken as if it read all at once: with `v`
 * over the scale in px/s, a frame interval is short by the lines that the ball has gone. Against the flight as here
 * the speed comes out low. Share of the speed.
 */
export const rollingShutter = (pixelsPerSecond: number, lineTime: number): number =>
  1 / (1 + pixelsPerSecond * lineTime) - 1;

/**
 * `lost` frames between the first `before` and the last `after` centres of a straight line fitted to even times: the
 * slope of a step of that many intervals. Share of the speed.
 */
export function lostFrames(before: number, after: number, lost: number): number {
  const n = before + after;
  return (6 * before * after * lost) / (n * (n * n - 1));
}

/**
 * A centre's uncertainty along the flight, blurred over `length` px, over the same with none: an edge of the optics'
 * width `sigma` spread by it tells the less, by the integral of its squared slope. Pixel noise alone.
 */
export function blurGrowth(length: number, sigma: number): number {
  const still = 1 / (2 * sigma * Math.sqrt(Math.PI));
  const wide = length / (2 * sigma);
  const moved =
    (erf(wide) - ((2 * sigma) / (length * Math.sqrt(Math.PI))) * (1 - Math.exp(-wide * wide))) /
    length;
  return Math.sqrt(still / moved);
}

/** Error function by Simpson's rule over its own integral: exact to 1e-9 for what is asked here. */
function erf(x: number): number {
  const end = Math.min(x, 6);
  const steps = 2000;
  const h = end / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * Math.exp(-((i * h) ** 2));
  }
  return ((2 / Math.sqrt(Math.PI)) * sum * h) / 3;
}
