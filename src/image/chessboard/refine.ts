import type { ImagePoint, Pixels } from '../../core/units';
import type { Blurred } from '../soften';

const ROUNDS = 20;
const SETTLED: Pixels = 1e-3;

/**
 * The corner to sub-pixel: on the lines that meet in it the gradient is square to the direction towards it, and
 * elsewhere it vanishes, so the point that makes all products of gradient and direction least is the corner
 * (Foerstner and Guelch 1987, from memory). Pixels count by a Gaussian of the window's half width over two.
 * Null where it wanders off by more than half the window or the picture has no two lines there.
 */
export function refineCorner(
  picture: Blurred,
  start: ImagePoint,
  halfWidth: Pixels,
): ImagePoint | null {
  const { data, width, height } = picture;
  let [x, y] = start;
  const reach = Math.round(halfWidth);
  for (let round = 0; round < ROUNDS; round++) {
    const cx = Math.round(x);
    const cy = Math.round(y);
    if (cx < reach + 1 || cy < reach + 1) return null;
    if (cx > width - reach - 2 || cy > height - reach - 2) return null;
    let xx = 0;
    let xy = 0;
    let yy = 0;
    let bx = 0;
    let by = 0;
    for (let py = cy - reach; py <= cy + reach; py++) {
      for (let px = cx - reach; px <= cx + reach; px++) {
        const p = py * width + px;
        const gx = ((data[p + 1] as number) - (data[p - 1] as number)) / 2;
        const gy = ((data[p + width] as number) - (data[p - width] as number)) / 2;
        const dx = px - x;
        const dy = py - y;
        const weight = Math.exp((-2 * (dx * dx + dy * dy)) / (halfWidth * halfWidth));
        const wxx = weight * gx * gx;
        const wxy = weight * gx * gy;
        const wyy = weight * gy * gy;
        xx += wxx;
        xy += wxy;
        yy += wyy;
        bx += wxx * dx + wxy * dy;
        by += wxy * dx + wyy * dy;
      }
    }
    const det = xx * yy - xy * xy;
    if (!(det > LEAST_SQUARENESS * (xx + yy) ** 2)) return null;
    const mx = (yy * bx - xy * by) / det;
    const my = (xx * by - xy * bx) / det;
    x += mx;
    y += my;
    if (Math.hypot(x - start[0], y - start[1]) > Math.max(2, halfWidth / 2)) return null;
    if (Math.hypot(mx, my) < SETTLED) return [x, y];
  }
  return null;
}

/** Of the gradients' scatter: determinant over squared trace; a single line has none. */
const LEAST_SQUARENESS = 0.01;
