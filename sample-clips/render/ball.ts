import type { DiscShade, Outline } from './canvas';
import type { Point3, Projection } from './projection';

/**
 * The outline a sphere throws on the image, exactly: the pixels whose lines of sight meet it. A
 * line of direction d meets the sphere of centre C, radius R where (d.C)^2 >= |d|^2 (|C|^2 - R^2).
 */
export function sphereOutline(p: Projection, centre: Point3, radius: number): Outline {
  const [x, y] = centre;
  const z = p.distance + centre[2];
  const k = x * x + y * y + z * z - radius * radius;
  const half = sphereReach(y, z, radius);
  return {
    top: p.centre[1] + p.focal * Math.tan(half.middle - half.angle),
    bottom: p.centre[1] + p.focal * Math.tan(half.middle + half.angle),
    row(imageY) {
      const dy = (imageY - p.centre[1]) / p.focal;
      // (dx x + dy y + z)^2 - k (dx^2 + dy^2 + 1) >= 0, solved for dx.
      const a = x * x - k;
      const b = x * (dy * y + z);
      const c = (dy * y + z) ** 2 - k * (dy * dy + 1);
      const root = b * b - a * c;
      if (root <= 0) return null;
      const s = Math.sqrt(root);
      // a < 0: the camera is outside the sphere's slab, so the roots come in this order.
      return [p.centre[0] + (p.focal * (-b + s)) / a, p.centre[0] + (p.focal * (-b - s)) / a];
    },
  };
}

/** Angle to the sphere's middle and half the angle it fills, in the plane of y and z. */
function sphereReach(y: number, z: number, radius: number): { middle: number; angle: number } {
  return { middle: Math.atan2(y, z), angle: Math.asin(radius / Math.hypot(y, z)) };
}

/** Light from above, in front and a little from the left; a matt float, slightly darker at its limb. */
const LIGHT = unit([-0.35, -0.72, -0.6]);

export function ballShade(brightness: number): DiscShade {
  const [lx, ly, lz] = LIGHT;
  return (u, v) => {
    const towards = Math.sqrt(Math.max(0, 1 - u * u - v * v));
    const lit = Math.max(0, u * lx + v * ly - towards * lz);
    return brightness * (0.42 + 0.58 * lit) * (0.8 + 0.2 * towards);
  };
}

/** Brightness of a matt thin sheet with the given normal, lit from either side. */
export function sheetShade(normal: Point3): number {
  const facing = Math.abs(normal[0] * LIGHT[0] + normal[1] * LIGHT[1] + normal[2] * LIGHT[2]);
  return 0.4 + 0.6 * facing;
}

function unit(v: Point3): Point3 {
  const length = Math.hypot(...v);
  return [v[0] / length, v[1] / length, v[2] / length];
}
