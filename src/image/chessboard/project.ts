import { ExitframeError } from '../../core/reason';
import type { FittedCamera, TargetView } from '../opencv/camera';

/** Rotation vector, translation, focal length, centre, k1, k2 of one view. */
export function cameraParameters(camera: FittedCamera, view: number): number[] {
  const pose = camera.poses[view];
  if (pose === undefined) {
    throw new ExitframeError('badInput', `The fitted camera has no pose for view ${view}.`);
  }
  const { focal, centre, k1, k2 } = camera;
  return [...pose.rotation, ...pose.translation, focal, ...centre, k1, k2];
}

/** Image points x, y, x, y, ... of a target under the parameters of a view. */
export function project(view: TargetView, parameters: readonly number[]): Float64Array {
  const [rx = 0, ry = 0, rz = 0, tx = 0, ty = 0, tz = 0, f = 0, cx = 0, cy = 0, k1 = 0, k2 = 0] =
    parameters;
  const angle = Math.hypot(rx, ry, rz);
  const s = angle > 0 ? Math.sin(angle) / angle : 1;
  const c = angle > 0 ? (1 - Math.cos(angle)) / angle ** 2 : 0.5;
  const cos = Math.cos(angle);
  const out = new Float64Array(2 * view.target.length);
  view.target.forEach(([x, y], i) => {
    // Rodrigues: cos p + sin (n x p) + (1 - cos) n (n . p), for p = (x, y, 0).
    const along = c * (rx * x + ry * y);
    const px = cos * x - s * rz * y + along * rx + tx;
    const py = cos * y + s * rz * x + along * ry + ty;
    const pz = s * (rx * y - ry * x) + along * rz + tz;
    const u = px / pz;
    const v = py / pz;
    const r2 = u * u + v * v;
    const factor = f * (1 + r2 * (k1 + k2 * r2));
    out[2 * i] = cx + factor * u;
    out[2 * i + 1] = cy + factor * v;
  });
  return out;
}
