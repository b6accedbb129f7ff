import { failure, type Outcome, success } from '../core/reason';
import type { ImagePoint, ImageRect, ImageVector, Pixels } from '../core/units';
import type { SealView } from './types';

/** The view reaches this many ball radii out of the seal plane, into the tube, and to either side. */
const OUTWARD = 3.5;
const INWARD = 0.25;
const SIDEWAYS = 1.3;
/** With less than this many pixels outside the plane a bulge cannot be told from a burst. */
const SMALLEST_REACH: Pixels = 6;

export interface SealViewParams {
  /** A point on the seal's plane, where the flight line passes. */
  readonly plane: ImagePoint;
  /** Direction of travel; any length. */
  readonly axis: ImageVector;
  readonly ballRadius: Pixels;
  /** Given by a person; null: laid out from the plane. */
  readonly region: ImageRect | null;
  readonly frameWidth: number;
  readonly frameHeight: number;
}

/**
 * Lays out where the seal is watched: a box along the axis from a little inside the plane to nearly two
 * ball diameters outside it, clipped to the frame.
 * Failures: `sealRegionOutside`.
 */
export function sealView(params: SealViewParams): Outcome<SealView> {
  const { plane, ballRadius, frameWidth, frameHeight } = params;
  const length = Math.hypot(params.axis[0], params.axis[1]);
  if (!(length > 0) || !(ballRadius > 0)) {
    return failure(
      'sealRegionOutside',
      'The seal has no direction of travel or no ball size to be laid out with.',
      "Set the direction of travel and the ball's diameter.",
      { form: 'unset' },
    );
  }
  const axis: ImageVector = [params.axis[0] / length, params.axis[1] / length];
  const box = params.region ?? boxAround(plane, axis, ballRadius);
  const left = Math.max(0, Math.floor(box[0]));
  const top = Math.max(0, Math.floor(box[1]));
  const right = Math.min(frameWidth, Math.ceil(box[0] + box[2]));
  const bottom = Math.min(frameHeight, Math.ceil(box[1] + box[3]));
  const region: ImageRect = [left, top, right - left, bottom - top];
  const [from, to] = extentAlong(region, plane, axis);
  if (region[2] < 3 || region[3] < 3 || to < SMALLEST_REACH || from > ballRadius) {
    return failure(
      'sealRegionOutside',
      `The seal's region leaves no room to watch the film outside the seal plane in the ${frameWidth} x ${frameHeight} frame.`,
      'Move the muzzle plane or draw the seal region so that it holds the plane and some space outside it.',
      { form: 'room', width: frameWidth, height: frameHeight },
    );
  }
  return success({ plane, axis, region, halfAperture: SIDEWAYS * ballRadius });
}

function boxAround(plane: ImagePoint, axis: ImageVector, radius: Pixels): ImageRect {
  const xs: number[] = [];
  const ys: number[] = [];
  for (const along of [-INWARD * radius, OUTWARD * radius]) {
    for (const across of [-SIDEWAYS * radius, SIDEWAYS * radius]) {
      xs.push(plane[0] + along * axis[0] - across * axis[1]);
      ys.push(plane[1] + along * axis[1] + across * axis[0]);
    }
  }
  const left = Math.min(...xs);
  const top = Math.min(...ys);
  return [left, top, Math.max(...xs) - left, Math.max(...ys) - top];
}

/** Smallest and largest distance from the plane, along the axis, of the region's pixel centres. */
export function extentAlong(
  region: ImageRect,
  plane: ImagePoint,
  axis: ImageVector,
): readonly [from: Pixels, to: Pixels] {
  const right = region[0] + region[2] - 1;
  const bottom = region[1] + region[3] - 1;
  const along = [region[0], right].flatMap((x) =>
    [region[1], bottom].map((y) => (x - plane[0]) * axis[0] + (y - plane[1]) * axis[1]),
  );
  return [Math.min(...along), Math.max(...along)];
}
