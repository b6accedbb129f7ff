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
interface Pose {
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

/** Pose of a plane from its picture (metres to pixels) and the focal length. */
function poseOf(picture: Homography, principal: ImagePoint, focal: Pixels): Pose {
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

/**
 * The plane that lies `nearer` metres before a pictured one and parallel to it: its own picture
 * (same metres to pixels) and the camera that sees it.
 */
export function planeBefore(
  picture: Homography,
  principal: ImagePoint,
  focal: Pixels,
  nearer: Metres,
): { readonly picture: Homography; readonly camera: PlaneInView } {
  const { a, b, c, normal } = poseOf(picture, principal, focal);
  const moved: Vector3 = [
    c[0] - nearer * normal[0],
    c[1] - nearer * normal[1],
    c[2] - nearer * normal[2],
  ];
  const row = (i: 0 | 1): readonly [number, number, number] => [
    focal * a[i] + principal[i] * a[2],
    focal * b[i] + principal[i] * b[2],
    focal * moved[i] + principal[i] * moved[2],
  ];
  return {
    picture: [...row(0), ...row(1), a[2], b[2], moved[2]],
    camera: {
      principal,
      focal,
      normal,
      offset: dot(normal, moved),
      across: scaled(a, 1 / Math.hypot(...a)),
    },
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
    const { camera } = planeBefore(picture, principal, focal, nearer);
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
    );
  }
  for (let i = 0; i < ROUNDS; i++) {
    const middle = Math.sqrt(low * high);
    if (reach(middle) < distance) low = middle;
    else high = middle;
  }
  return success(Math.sqrt(low * high));
}
