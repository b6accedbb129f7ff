import type { FootageInfo } from '../core/film';
import { distortWithin, type RadialLens, undistort } from '../core/lens';
import { ExitframeError, failure, type Outcome, success } from '../core/reason';
import type { ImagePoint, ImageVector, Metres, MetresPerPixel, Pixels } from '../core/units';
import type { Scale } from '../shot/schema';
import { fitPose, focalFromDistance, planeBefore, poseOf, type Vector3 } from './camera';
import { checkCorners, type Homography, homographyOf, inverted, through } from './homography';

/** The part of a film that a view depends on. */
export type FrameShape = Pick<FootageInfo, 'width' | 'height' | 'pixelAspect'>;

/** Derivatives of flat by image coordinates, row by row. */
export type Jacobian = readonly [xx: number, xy: number, yx: number, yy: number];

/** A point with the covariance of x and y. */
export interface MeasuredPoint {
  readonly x: Pixels;
  readonly y: Pixels;
  readonly varX: number;
  readonly varY: number;
  readonly covXY: number;
}

/** A pinhole camera before the flight plane; axes x right, y down, z away from it. */
export interface ViewCamera {
  /** Where its axis meets the picture, and its focal length, in image pixels freed of distortion and square. */
  readonly principal: ImagePoint;
  readonly focal: Pixels;
  /** Flight plane: `normal . X = offset`, unit vector away from the camera, offset in flat pixels. */
  readonly normal: Vector3;
  readonly offset: Pixels;
  /** Direction of flat x, unit vector. */
  readonly across: Vector3;
}

/**
 * How image points lie on the flight plane. Flat coordinates are pixels on that plane, freed of lens distortion,
 * tilt and unequal pixel sides; at the muzzle they and the image's have one origin and one area.
 */
export interface View {
  /** Failures: `outsideLens`, `beyondHorizon`. */
  flatten(at: ImagePoint): Outcome<ImagePoint>;
  /** The way back. Failures: `outsideLens`, `beyondHorizon`. */
  show(flat: ImagePoint): Outcome<ImagePoint>;
  /** The same with its covariance carried along (first order). */
  flattenMeasured(point: MeasuredPoint): Outcome<MeasuredPoint>;
  jacobianAt(at: ImagePoint): Outcome<Jacobian>;
  /** Metres per flat pixel where a plane of known size says so. */
  readonly metresPerPixel: MetresPerPixel | null;
  /** Where focal length and plane are known well enough to tell; null: see `lookingSquarely`. */
  readonly camera: ViewCamera | null;
  /** The camera taken to look squarely at the flight plane from this distance, flat pixels. */
  lookingSquarely(distance: Pixels): ViewCamera;
  readonly lens: RadialLens | null;
  readonly pixelAspect: number;
  /** Sum of squared distances of the plane's corners from where a rectangle has them, px^2, two degrees of freedom; null: not told. */
  readonly planeMisfit: number | null;
}

/** Step of the differences that derivatives are taken by, px. */
const STEP = 0.05;

/**
 * The view that a shot's scale states for a film. The muzzle sets origin and size of a flat pixel.
 * Failures: `planeCorners`, `planeDistance`, `outsideLens`, `beyondHorizon`.
 */
export function buildView(scale: Scale, frame: FrameShape, muzzle: ImagePoint): Outcome<View> {
  const { pixelAspect } = frame;
  const square = ([x, y]: ImagePoint): ImagePoint => [x * pixelAspect, y];
  const lens: RadialLens | null = scale.lens === null ? null : lensOf(scale.lens, pixelAspect);
  const straighten = (at: ImagePoint): Outcome<ImagePoint> =>
    lens === null ? success(square(at)) : undistort(lens, square(at));
  const principal = lens?.centre ?? square([(frame.width - 1) / 2, (frame.height - 1) / 2]);
  const focal = scale.lens !== null && focalIsBetter(scale) ? scale.lens.focal.value : null;

  const plane = scale.plane === null ? null : onPlane(scale, principal, focal, straighten);
  if (plane !== null && !plane.ok) return plane;
  const toPlane = plane?.value.toPlane;
  const lay = (at: ImagePoint): Outcome<ImagePoint> => {
    const straight = straighten(at);
    return straight.ok && toPlane !== undefined ? toPlane(straight.value) : straight;
  };

  const origin = lay(muzzle);
  if (!origin.ok) return origin;
  const local = derivatives(lay, muzzle);
  if (!local.ok) return local;
  const perPixel = Math.sqrt(Math.abs(determinant(local.value)));
  const flatten = (at: ImagePoint): Outcome<ImagePoint> => {
    const laid = lay(at);
    if (!laid.ok) return laid;
    return success([
      muzzle[0] + (laid.value[0] - origin.value[0]) / perPixel,
      muzzle[1] + (laid.value[1] - origin.value[1]) / perPixel,
    ]);
  };
  const lookingSquarely = (distance: Pixels): ViewCamera => ({
    principal,
    focal: distance * perPixel,
    normal: [0, 0, 1],
    offset: distance,
    across: [1, 0, 0],
  });
  const show = (flat: ImagePoint): Outcome<ImagePoint> => {
    const laid: ImagePoint = [
      origin.value[0] + (flat[0] - muzzle[0]) * perPixel,
      origin.value[1] + (flat[1] - muzzle[1]) * perPixel,
    ];
    const straight = plane === null ? success(laid) : plane.value.toPicture(laid);
    if (!straight.ok) return straight;
    const bent = lens === null ? straight : distortWithin(lens, straight.value);
    return bent.ok ? success([bent.value[0] / pixelAspect, bent.value[1]]) : bent;
  };
  const seen = plane?.value.camera ?? null;
  return success({
    flatten,
    show,
    flattenMeasured: (point) => carry(flatten, point),
    jacobianAt: (at) => derivatives(flatten, at),
    metresPerPixel: plane === null ? null : perPixel,
    camera:
      plane !== null
        ? seen && { ...seen, offset: seen.offset / perPixel }
        : focal === null
          ? null
          : lookingSquarely(focal / perPixel),
    lookingSquarely,
    lens,
    pixelAspect,
    planeMisfit: plane?.value.misfit ?? null,
  });
}

/** A lens as stated, in square pixels. */
export const lensOf = ({ k1, k2, centre, focal }: NonNullable<Scale['lens']>, aspect: number) => ({
  k1: k1.value,
  k2: k2.value,
  centre: [centre[0] * aspect, centre[1]] as const,
  focal: focal.value,
});

/** Focal length and camera distance tell the same; the one known better is used. */
export function focalIsBetter({ lens, cameraDistance }: Scale): boolean {
  if (lens === null) return false;
  if (cameraDistance === null) return true;
  return lens.focal.u / lens.focal.value <= cameraDistance.u / cameraDistance.value;
}

/** The flight plane in metres, parallel to the rectangle marked, and the camera where it is known. */
function onPlane(
  scale: Scale,
  principal: ImagePoint,
  focal: Pixels | null,
  straighten: (at: ImagePoint) => Outcome<ImagePoint>,
) {
  const { plane, cameraDistance } = scale;
  if (plane === null) throw new ExitframeError('noPlane', 'No plane is stated.');
  const corners: ImagePoint[] = [];
  for (const corner of plane.corners) {
    const straight = straighten(corner);
    if (!straight.ok) return straight;
    corners.push(straight.value);
  }
  const seen = corners as unknown as readonly [ImagePoint, ImagePoint, ImagePoint, ImagePoint];
  const proper = checkCorners(seen);
  if (!proper.ok) return proper;
  const { width, height, depthOffset } = plane;
  const rectangle = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ] as const;
  const picture = homographyOf(rectangle, seen);
  const lens = focal ?? lensFromDistance(picture, principal, depthOffset, cameraDistance?.value);
  if (lens !== null && typeof lens !== 'number' && !lens.ok) return lens;
  const known = lens === null || typeof lens === 'number' ? lens : lens.value;
  const fitted =
    known === null
      ? null
      : fitPose(poseOf(picture, principal, known), rectangle, seen, principal, known);
  const flight =
    fitted === null || known === null
      ? null
      : planeBefore(fitted.pose, principal, known, depthOffset);
  const flown = flight?.picture ?? picture;
  const onIt = through(inverted(flown), seen[0]);
  return success({
    toPlane: acrossHorizon(inverted(flown), seen[0]),
    toPicture: acrossHorizon(flown, onIt),
    camera: flight?.camera ?? null,
    misfit: fitted?.misfit ?? null,
  });
}

const lensFromDistance = (
  picture: Homography,
  principal: ImagePoint,
  nearer: Metres,
  distance: Metres | undefined,
): Outcome<Pixels> | null =>
  distance === undefined ? null : focalFromDistance(picture, principal, nearer, distance);

/** A homography that refuses what lies on the other side of its horizon than a point known to lie on this one. */
function acrossHorizon(h: Homography, known: ImagePoint) {
  const side = (at: ImagePoint) => h[6] * at[0] + h[7] * at[1] + h[8];
  const reference = side(known);
  return (at: ImagePoint): Outcome<ImagePoint> =>
    side(at) / reference > NEAREST_HORIZON
      ? success(through(h, at))
      : failure(
          'beyondHorizon',
          `The point (${at[0].toFixed(0)}, ${at[1].toFixed(0)}) lies at or beyond the horizon of the plane that was marked.`,
          'Check the four corners of the plane and their order.',
          { x: at[0].toFixed(0), y: at[1].toFixed(0) },
        );
}

/** Depth of a corner of the plane over that of a point: farther than this is as good as endless. */
const NEAREST_HORIZON = 0.02;

function derivatives(
  map: (at: ImagePoint) => Outcome<ImagePoint>,
  [x, y]: ImagePoint,
): Outcome<Jacobian> {
  const right = map([x + STEP, y]);
  if (!right.ok) return right;
  const left = map([x - STEP, y]);
  if (!left.ok) return left;
  const below = map([x, y + STEP]);
  if (!below.ok) return below;
  const above = map([x, y - STEP]);
  if (!above.ok) return above;
  const slope = (plus: ImagePoint, minus: ImagePoint, i: 0 | 1) =>
    (plus[i] - minus[i]) / (2 * STEP);
  return success([
    slope(right.value, left.value, 0),
    slope(below.value, above.value, 0),
    slope(right.value, left.value, 1),
    slope(below.value, above.value, 1),
  ]);
}

const determinant = ([a, b, c, d]: Jacobian): number => a * d - b * c;

function carry(
  flatten: (at: ImagePoint) => Outcome<ImagePoint>,
  { x, y, varX, varY, covXY }: MeasuredPoint,
): Outcome<MeasuredPoint> {
  const flat = flatten([x, y]);
  if (!flat.ok) return flat;
  const jacobian = derivatives(flatten, [x, y]);
  if (!jacobian.ok) return jacobian;
  const [a, b, c, d] = jacobian.value;
  return success({
    x: flat.value[0],
    y: flat.value[1],
    varX: a * a * varX + 2 * a * b * covXY + b * b * varY,
    varY: c * c * varX + 2 * c * d * covXY + d * d * varY,
    covXY: a * c * varX + (a * d + b * c) * covXY + b * d * varY,
  });
}

/** A direction in the image as one on the flight plane. */
export const flatDirection = ([a, b, c, d]: Jacobian, [x, y]: ImageVector): ImageVector => [
  a * x + b * y,
  c * x + d * y,
];

/** A direction on the flight plane as one in the image. */
export function imageDirection([a, b, c, d]: Jacobian, [x, y]: ImageVector): ImageVector {
  const size = a * d - b * c;
  return [(d * x - b * y) / size, (a * y - c * x) / size];
}
