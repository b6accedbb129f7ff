import { distort, undistort } from '../core/lens';
import { success } from '../core/reason';
import type { ImagePoint } from '../core/units';
import type { BallModel } from './types';

/** Middle and half axes of the ball's outline in the image. */
export interface Outline {
  readonly middle: ImagePoint;
  /** Square root of the ellipse's matrix: takes the unit circle to offsets from the middle; symmetric: [xx, xy, yy], px. */
  readonly half: readonly [xx: number, xy: number, yy: number];
}

/** Points the outline is followed by. */
const POINTS = 48;
/** Blows a regular polygon up to the second moment of the circle around it: its own is (2 + cos(2 pi / n)) / 3 of that. */
const BLOWN_UP = Math.sqrt(3 / (2 + Math.cos((2 * Math.PI) / POINTS)));
/** Second moment of the unit disc about its middle along one direction, over its area. */
const DISC_MOMENT = 1 / 4;

type Vector = readonly [x: number, y: number, z: number];

/** Where the ball's centre is that is shown at `at`, in the camera's axes and ball pixels; null where it cannot be told. */
export function centreInSpace(ball: BallModel, at: ImagePoint): Vector | null {
  const { camera, lens, pixelAspect = 1 } = ball;
  if (camera === undefined) return null;
  const square: ImagePoint = [at[0] * pixelAspect, at[1]];
  const straight = lens === undefined ? success(square) : undistort(lens, square);
  if (!straight.ok) return null;
  const { centre, distance, plane } = camera;
  const [nx, ny, nz] = plane?.normal ?? [0, 0, 1];
  const rx = (straight.value[0] - centre[0]) / distance;
  const ry = (straight.value[1] - centre[1]) / distance;
  const facing = nx * rx + ny * ry + nz;
  if (!(facing > 0)) return null;
  const depth = (plane?.offset ?? distance) / facing;
  return [rx * depth, ry * depth, depth];
}

/** Where a point in space is shown; null behind the camera. */
export function shownAt(ball: BallModel, [x, y, z]: Vector): ImagePoint | null {
  const { camera, lens, pixelAspect = 1 } = ball;
  if (camera === undefined || !(z > 0)) return null;
  const straight: ImagePoint = [
    camera.centre[0] + (camera.distance * x) / z,
    camera.centre[1] + (camera.distance * y) / z,
  ];
  const shown = lens === undefined ? straight : distort(lens, straight);
  return [shown[0] / pixelAspect, shown[1]];
}

/**
 * The outline of a ball whose centre is shown at `at`: the cone of rays that touch the sphere, cut by the image
 * plane, bent by the lens. Its middle is the centroid of the area inside, which is where a disc fitted to the
 * outline comes to lie, to the second order of the bending. Null where it cannot be told: nothing is known of the
 * camera, or the ball reaches beyond where the lens shows anything.
 */
export function sphereOutline(ball: BallModel, at: ImagePoint): Outline | null {
  const centre = centreInSpace(ball, at);
  if (centre === null) return null;
  const [cx, cy, cz] = centre;
  const away = Math.hypot(cx, cy, cz);
  const sine = ball.radius / away;
  if (!(sine < 1)) return null;
  const cosine = Math.sqrt(1 - sine * sine);
  // Unit vector to the ball's centre, and two across it.
  const p: Vector = [cx / away, cy / away, cz / away];
  const level = Math.hypot(p[0], p[2]);
  const e: Vector = [p[2] / level, 0, -p[0] / level];
  const f: Vector = [p[1] * e[2], p[2] * e[0] - p[0] * e[2], -p[1] * e[0]];
  const xs = new Float64Array(POINTS);
  const ys = new Float64Array(POINTS);
  for (let i = 0; i < POINTS; i++) {
    const angle = (2 * Math.PI * i) / POINTS;
    const c = BLOWN_UP * sine * Math.cos(angle);
    const s = BLOWN_UP * sine * Math.sin(angle);
    const touching: Vector = [
      p[0] * cosine + e[0] * c + f[0] * s,
      p[1] * cosine + f[1] * s,
      p[2] * cosine + e[2] * c + f[2] * s,
    ];
    const shown = shownAt(ball, touching);
    if (shown === null) return null;
    // About `at`, so that the moments keep their digits.
    xs[i] = shown[0] - at[0];
    ys[i] = shown[1] - at[1];
  }
  return momentsOf(xs, ys, at);
}

/** Centroid and second moments of a polygon's area (Green's theorem), as an ellipse. */
function momentsOf(xs: Float64Array, ys: Float64Array, origin: ImagePoint): Outline {
  let area = 0;
  let mx = 0;
  let my = 0;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let i = 0; i < xs.length; i++) {
    const j = (i + 1) % xs.length;
    const [x0, y0] = [xs[i] as number, ys[i] as number];
    const [x1, y1] = [xs[j] as number, ys[j] as number];
    const turn = x0 * y1 - x1 * y0;
    area += turn / 2;
    mx += (turn * (x0 + x1)) / 6;
    my += (turn * (y0 + y1)) / 6;
    xx += (turn * (x0 * x0 + x0 * x1 + x1 * x1)) / 12;
    yy += (turn * (y0 * y0 + y0 * y1 + y1 * y1)) / 12;
    xy += (turn * (2 * x0 * y0 + x0 * y1 + x1 * y0 + 2 * x1 * y1)) / 24;
  }
  mx /= area;
  my /= area;
  const a = (xx / area - mx * mx) / DISC_MOMENT;
  const b = (xy / area - mx * my) / DISC_MOMENT;
  const d = (yy / area - my * my) / DISC_MOMENT;
  // Square root of a symmetric positive 2 x 2 matrix: (M + sqrt(det) 1) / sqrt(trace + 2 sqrt(det)).
  const root = Math.sqrt(a * d - b * b);
  const size = Math.sqrt(a + d + 2 * root);
  return {
    middle: [origin[0] + mx, origin[1] + my],
    half: [(a + root) / size, b / size, (d + root) / size],
  };
}
