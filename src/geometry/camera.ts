import { leastSquares } from '../core/linalg';
import { failure, type Outcome, success } from '../core/reason';
import type { ImagePoint, Metres, Pixels } from '../core/units';
import type { Homography } from './homography';

export type Vector3 = readonly [x: number, y: number, z: number];

/** A pinhole camera and a plane before it. Axes: x right, y down, z away from the camera. */
export interface PlaneInView {
  /** Where the camera's axis meets the picture. */
  readonly principal: ImagePoint;
  readonly focal: Pixels;
  /** Points of the plane: `normal . X = offset`; unit vector away from the camera. */
  readonly normal: Vector3;
  readonly offset: Metres;
  /** Direction of the plane's x, unit vector. */
  readonly across: Vector3;
}

/** A plane's axes and origin in the camera's axes: the point (x, y) of the plane stands at x a + y b + c. */
export interface Pose {
  readonly a: Vector3;
  readonly b: Vector3;
  readonly c: Vector3;
  readonly normal: Vector3;
}

const dot = (p: Vector3, q: Vector3): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const cross = (p: Vector3, q: Vector3): Vector3 => [
  p[1] * q[2] - p[2] * q[1],
  p[2] * q[0] - p[0] * q[2],
  p[0] * q[1] - p[1] * q[0],
];
const scaled = (p: Vector3, by: number): Vector3 => [p[0] * by, p[1] * by, p[2] * by];

/** Pose of a plane from its picture (metres to pixels) and the focal length; its axes are square as far as these agree. */
export function poseOf(picture: Homography, principal: ImagePoint, focal: Pixels): Pose {
  const column = (j: number): Vector3 => {
    const w = picture[6 + j] as number;
    return [
      ((picture[j] as number) - principal[0] * w) / focal,
      ((picture[3 + j] as number) - principal[1] * w) / focal,
      w,
    ];
  };
  const [a, b, c] = [column(0), column(1), column(2)];
  // Both axes are a metre long; the plane is in front of the camera.
  const size = Math.sign(c[2]) * Math.sqrt(2 / (dot(a, a) + dot(b, b)));
  const [pa, pb, pc] = [scaled(a, size), scaled(b, size), scaled(c, size)];
  const across = cross(pa, pb);
  const towards = Math.sign(dot(across, pc)) / Math.hypot(...across);
  return { a: pa, b: pb, c: pc, normal: scaled(across, towards) };
}

const ROUNDS_TO_FIT = 30;
/** Fits end when no corner moves by more than this, px. */
const SETTLED: Pixels = 1e-9;

/**
 * The pose that puts the corners of a rectangle nearest to where they are seen, its axes square and a metre long:
 * six unknowns where a homography leaves eight, so that small rectangles still tell how they are tilted.
 * Gauss-Newton from a pose nearby. `misfit`: sum of squared distances, px^2, with two degrees of freedom for four corners.
 */
export function fitPose(
  start: Pose,
  corners: readonly ImagePoint[],
  seen: readonly ImagePoint[],
  principal: ImagePoint,
  focal: Pixels,
): { readonly pose: Pose; readonly misfit: number } {
  let pose = squared(start);
  const residuals = (at: Pose): number[] =>
    corners.flatMap(([x, y], i) => {
      const [px, py, pz] = [0, 1, 2].map(
        (k) => x * (at.a[k] as number) + y * (at.b[k] as number) + (at.c[k] as number),
      ) as [number, number, number];
      const [sx, sy] = seen[i] as ImagePoint;
      return [sx - principal[0] - (focal * px) / pz, sy - principal[1] - (focal * py) / pz];
    });
  const moved = (
    from: Pose,
    [rx = 0, ry = 0, rz = 0, tx = 0, ty = 0, tz = 0]: readonly number[],
  ) => {
    const turn: Vector3 = [rx, ry, rz];
    const turned = (p: Vector3): Vector3 => plus(p, cross(turn, p));
    return squared({
      ...from,
      a: turned(from.a),
      b: turned(from.b),
      c: plus(from.c, [tx, ty, tz]),
    });
  };
  const depth = Math.hypot(...pose.c);
  for (let round = 0; round < ROUNDS_TO_FIT; round++) {
    const steps = [1e-6, 1e-6, 1e-6, 1e-6 * depth, 1e-6 * depth, 1e-6 * depth];
    const columns = steps.map((step, j) => {
      const by = (sign: number) =>
        residuals(
          moved(
            pose,
            steps.map((_, k) => (k === j ? sign * step : 0)),
          ),
        );
      const down = by(-1);
      return by(1).map((up, i) => ((down[i] as number) - up) / (2 * step));
    });
    const here = residuals(pose);
    const move = leastSquares(
      here.map((_, i) => columns.map((column) => column[i] as number)),
      here,
    );
    pose = moved(pose, move);
    const after = residuals(pose);
    if (after.every((value, i) => Math.abs(value - (here[i] as number)) < SETTLED)) break;
  }
  return { pose, misfit: residuals(pose).reduce((sum, value) => sum + value * value, 0) };
}

const plus = (p: Vector3, q: Vector3): Vector3 => [p[0] + q[0], p[1] + q[1], p[2] + q[2]];
const unit = (p: Vector3): Vector3 => scaled(p, 1 / Math.hypot(...p));

/** The same with its axes made square to each other, each turned by half of what is missing, and a metre long. */
function squared({ a, b, c }: Pose): Pose {
  const [ua, ub] = [unit(a), unit(b)];
  const [between, apart] = [unit(plus(ua, ub)), unit(plus(ua, scaled(ub, -1)))];
  const sa = scaled(plus(between, apart), Math.SQRT1_2);
  const sb = scaled(plus(between, scaled(apart, -1)), Math.SQRT1_2);
  const across = cross(sa, sb);
  return { a: sa, b: sb, c, normal: scaled(across, Math.sign(dot(across, c))) };
}

/** The plane that lies `nearer` metres before one and parallel to it: its picture (metres to pixels), and the camera. */
export function planeBefore(
  { a, b, c, normal }: Pose,
  principal: ImagePoint,
  focal: Pixels,
  nearer: Metres,
): { readonly picture: Homography; readonly camera: PlaneInView } {
  const moved = plus(c, scaled(normal, -nearer));
  const row = (i: 0 | 1): readonly [number, number, number] => [
    focal * a[i] + principal[i] * a[2],
    focal * b[i] + principal[i] * b[2],
    focal * moved[i] + principal[i] * moved[2],
  ];
  return {
    picture: [...row(0), ...row(1), a[2], b[2], moved[2]],
    camera: { principal, focal, normal, offset: dot(normal, moved), across: unit(a) },
  };
}

const SHORTEST_FOCAL: Pixels = 10;
const LONGEST_FOCAL: Pixels = 1e7;
const STRIDE = 1.2;
const ROUNDS = 50;

/**
 * Focal length with which the camera's axis meets the plane `nearer` before the pictured one at the stated
 * distance. Failure `planeDistance`: no focal length does.
 */
export function focalFromDistance(
  picture: Homography,
  principal: ImagePoint,
  nearer: Metres,
  distance: Metres,
): Outcome<Pixels> {
  const reach = (focal: Pixels): number => {
    const pose = poseOf(picture, principal, focal);
    const { camera } = planeBefore(pose, principal, focal, nearer);
    return camera.offset / camera.normal[2];
  };
  // The reach grows with the focal length up to where the plane would be seen edge on: first crossing, then halved.
  let low = SHORTEST_FOCAL;
  while (low < LONGEST_FOCAL && reach(low * STRIDE) < distance) low *= STRIDE;
  let high = low * STRIDE;
  if (!(reach(low) < distance && reach(high) >= distance)) {
    return failure(
      'planeDistance',
      `No lens shows the plane as marked from ${distance} m.`,
      'Check the camera distance, the width and height of the plane and its corners.',
      { distance: `${distance}` },
    );
  }
  for (let i = 0; i < ROUNDS; i++) {
    const middle = Math.sqrt(low * high);
    if (reach(middle) < distance) low = middle;
    else high = middle;
  }
  return success(Math.sqrt(low * high));
}
