import { coverageFactor } from '../core/statistics';
import { uniformU } from '../uncertainty/quantity';

/** Rectangles this much narrower than the normal part leave a normal distribution (kurtosis off by 1e-6). */
const NARROW = 0.1;

/**
 * Half-width of the shortest interval that holds `coverage` of the sum of two centred rectangular quantities
 * (half-widths `a` and `b`, either may be 0) and a centred normal one (standard deviation `sigma`):
 * the distributions are convolved, not replaced by a normal one (JCGM 101:2008, 5.2 and 7.7).
 * Relative error below 1e-4.
 */
export function coverageHalfWidth(a: number, b: number, sigma: number, coverage: number): number {
  const wide = Math.max(a, b);
  const narrow = Math.min(a, b);
  if (wide < NARROW * sigma) {
    return coverageFactor(coverage, null) * Math.hypot(sigma, uniformU(a), uniformU(b));
  }
  const within = (half: number): number =>
    sigma === 0
      ? 2 * trapezoidCdf(half, wide, narrow) - 1
      : 2 * smoothedCdf(half, wide, narrow, sigma) - 1;
  let low = 0;
  let high = wide + narrow + 8 * sigma;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (within(middle) < coverage) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Distribution function of the sum of two centred rectangular quantities, `wide >= narrow`. */
function trapezoidCdf(x: number, wide: number, narrow: number): number {
  if (x < 0) return 1 - trapezoidCdf(-x, wide, narrow);
  if (x >= wide + narrow) return 1;
  if (x <= wide - narrow) return wide === 0 ? 0.5 : 0.5 + x / (2 * wide);
  return 1 - (wide + narrow - x) ** 2 / (8 * wide * narrow);
}

/** The same, convolved with a normal density by Simpson's rule over 6.5 standard deviations either side. */
function smoothedCdf(x: number, wide: number, narrow: number, sigma: number): number {
  const steps = 200;
  const reach = 6.5;
  const step = (2 * reach) / steps;
  let sum = 0;
  let weights = 0;
  for (let i = 0; i <= steps; i++) {
    const z = i * step - reach;
    const weight = (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * Math.exp(-0.5 * z * z);
    sum += weight * trapezoidCdf(x - sigma * z, wide, narrow);
    weights += weight;
  }
  return sum / weights;
}
