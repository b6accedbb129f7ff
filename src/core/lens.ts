import type { Estimate } from './estimate';
import { failure, type Outcome, success } from './reason';
import type { ImagePoint, Pixels } from './units';

/**
 * Radial distortion about a centre: a point that a perfect lens shows at `x_u` is shown at
 * `x_d = c + (x_u - c) (1 + k1 r^2 + k2 r^4)`, r the distance of `x_u` from the centre over the focal length.
 */
export interface RadialLens {
  readonly k1: number;
  readonly k2: number;
  readonly centre: ImagePoint;
  /** Length that makes r a pure number: the focal length, px. */
  readonly focal: Pixels;
}

/** A lens as calibrated, in the terms of a shot file's `scale.lens`. */
export interface LensCalibration {
  readonly k1: Estimate;
  readonly k2: Estimate;
  /** Correlation coefficient of k1 and k2. */
  readonly correlation: number;
  readonly centre: ImagePoint;
  /** Standard uncertainty of the centre, px each way. */
  readonly centreU: Pixels;
  readonly focal: Estimate;
  /** Root-mean-square distance of the points used from where the calibrated lens puts them, px. */
  readonly rms: Pixels;
  /** The same for each view or edge, in the order given. */
  readonly parts: readonly {
    readonly name: string;
    readonly points: number;
    readonly rms: Pixels;
  }[];
}

/** No picture reaches so many focal lengths from its middle. */
const FARTHEST = 100;
const STEPS = 60;
/** Ends the search for the undistorted radius, in focal lengths: far below any pixel. */
const SETTLED = 1e-14;

/** Where the lens shows the point that a perfect one shows at `at`. */
export function distort({ k1, k2, centre, focal }: RadialLens, at: ImagePoint): ImagePoint {
  const dx = at[0] - centre[0];
  const dy = at[1] - centre[1];
  const r2 = (dx * dx + dy * dy) / focal ** 2;
  const factor = 1 + r2 * (k1 + k2 * r2);
  return [centre[0] + dx * factor, centre[1] + dy * factor];
}

/** The same for points that may lie anywhere. Failure `outsideLens` beyond the fold, where nothing is shown. */
export function distortWithin(lens: RadialLens, at: ImagePoint): Outcome<ImagePoint> {
  const r = Math.hypot(at[0] - lens.centre[0], at[1] - lens.centre[1]) / lens.focal;
  return r < (foldRadius(lens) ?? Number.POSITIVE_INFINITY)
    ? success(distort(lens, at))
    : failure(
        'outsideLens',
        `The lens as stated shows nothing of what lies ${(r * lens.focal).toFixed(0)} px from its centre.`,
        'Calibrate the lens with views that reach into the corners.',
        { form: 'nothing', distance: (r * lens.focal).toFixed(0) },
      );
}

/**
 * Where a perfect lens would show what this one shows at `at`: Newton's method on the radius, held between
 * bounds. Failure `outsideLens` beyond the radius at which the distortion folds back, where it has no inverse.
 */
export function undistort(lens: RadialLens, at: ImagePoint): Outcome<ImagePoint> {
  const { k1, k2, centre, focal } = lens;
  const dx = at[0] - centre[0];
  const dy = at[1] - centre[1];
  const seen = Math.hypot(dx, dy) / focal;
  if (seen === 0) return success(at);
  const shown = (r: number) => r * (1 + r * r * (k1 + k2 * r * r));
  let low = 0;
  let high = foldRadius(lens);
  if (high === null) {
    high = Math.max(1, seen);
    while (shown(high) < seen) high *= 2;
  } else if (!(shown(high) > seen)) {
    return failure(
      'outsideLens',
      `The point (${at[0].toFixed(1)}, ${at[1].toFixed(1)}) lies ${(seen * focal).toFixed(0)} px from the lens centre, where the stated distortion folds the picture back on itself.`,
      'Calibrate the lens with views that reach into the corners, or keep marks and flight nearer the middle.',
      {
        ...{ form: 'folded', distance: (seen * focal).toFixed(0) },
        ...{ x: at[0].toFixed(1), y: at[1].toFixed(1) },
      },
    );
  }
  let r = Math.min(seen, (low + high) / 2);
  for (let i = 0; i < STEPS; i++) {
    const off = shown(r) - seen;
    if (off > 0) high = r;
    else low = r;
    const step = off / (1 + r * r * (3 * k1 + 5 * k2 * r * r));
    let next = r - step;
    if (!(next > low && next < high)) next = (low + high) / 2;
    const moved = Math.abs(next - r);
    r = next;
    if (moved < SETTLED * Math.max(1, r)) break;
  }
  const factor = r / seen;
  return success([centre[0] + dx * factor, centre[1] + dy * factor]);
}

/** Smallest radius, in focal lengths, at which the shown radius stops growing; null: it always grows. */
export function foldRadius({ k1, k2 }: Pick<RadialLens, 'k1' | 'k2'>): number | null {
  // 1 + 3 k1 q + 5 k2 q^2 = 0 for q = r^2, solved so that a vanishing k2 does no harm.
  const discriminant = 9 * k1 * k1 - 20 * k2;
  if (discriminant < 0) return null;
  const half = -(3 * k1 + (k1 < 0 ? -1 : 1) * Math.sqrt(discriminant)) / 2;
  const roots = half === 0 ? [] : [half / (5 * k2), 1 / half];
  const near = roots.filter((q) => q > 0 && q < FARTHEST ** 2);
  return near.length > 0 ? Math.sqrt(Math.min(...near)) : null;
}
