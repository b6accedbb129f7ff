import type { Box, Point, Shape, Thing } from './canvas';

/** Half-width of a soft edge, px: the optics' blur (a parabolic kernel of standard deviation 0.6 px). */
const EDGE = 0.6 * Math.sqrt(5);

/** Cover at a signed distance inside an edge, 0..1. */
export function cover(inside: number, halfWidth = EDGE): number {
  if (inside <= -halfWidth) return 0;
  if (inside >= halfWidth) return 1;
  const s = 0.5 + inside / (2 * halfWidth);
  return s * s * (3 - 2 * s);
}

const around = ([x, y]: Point, reach: number): Box => [x - reach, y - reach, x + reach, y + reach];

export interface Light {
  /** Unit vector towards the lamp; z towards the camera. */
  readonly towards: readonly [number, number, number];
  /** Share of the light that comes from everywhere. */
  readonly ambient: number;
}

/** A matt sphere (Lambert's law). */
export function sphere(centre: Point, radius: number, albedo: number, light: Light): Shape {
  const [lx, ly, lz] = light.towards;
  return {
    box: around(centre, radius + EDGE),
    paint(x, y, under) {
      const u = (x - centre[0]) / radius;
      const v = (y - centre[1]) / radius;
      const r = Math.hypot(u, v);
      const alpha = cover(radius * (1 - r));
      if (alpha === 0) return under;
      const w = Math.sqrt(Math.max(0, 1 - r * r));
      const facing = Math.max(0, u * lx + v * ly + w * lz);
      return under + alpha * (albedo * (light.ambient + (1 - light.ambient) * facing) - under);
    },
  };
}

/** A flat piece: convex polygon given by corners around `centre`, turned by `angle`. */
export function plate(
  centre: Point,
  corners: readonly Point[],
  angle: number,
  brightness: number,
): Shape {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const turned = corners.map(([x, y]): Point => [c * x - s * y, s * x + c * y]);
  const sides = turned.map(([x, y], i) => {
    const [nextX, nextY] = turned[(i + 1) % turned.length] as Point;
    const length = Math.hypot(nextX - x, nextY - y);
    return { x, y, nx: -(nextY - y) / length, ny: (nextX - x) / length };
  });
  const reach = Math.max(...turned.map(([x, y]) => Math.hypot(x, y)));
  return {
    box: around(centre, reach + EDGE),
    paint(x, y, under) {
      const dx = x - centre[0];
      const dy = y - centre[1];
      let inside = Number.POSITIVE_INFINITY;
      for (const side of sides) {
        inside = Math.min(inside, (dx - side.x) * side.nx + (dy - side.y) * side.ny);
      }
      return under + cover(inside) * (brightness - under);
    },
  };
}

/** A disc seen at a slant: an ellipse of half-axes `radius` and `radius * slant`, the short one along `angle`. */
export function slantedDisc(
  centre: Point,
  radius: number,
  slant: number,
  angle: number,
  brightness: number,
): Shape {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const short = Math.max(0.08, slant) * radius;
  return {
    box: around(centre, radius + EDGE),
    paint(x, y, under) {
      const dx = x - centre[0];
      const dy = y - centre[1];
      const u = (c * dx + s * dy) / short;
      const v = (-s * dx + c * dy) / radius;
      const r = Math.hypot(u, v);
      if (r === 0) return brightness;
      // First-order distance to the ellipse.
      const slope = Math.hypot(u / short, v / radius) / r;
      return under + cover((1 - r) / slope) * (brightness - under);
    },
  };
}

/** A rectangle that hides what is behind it by `opacity`. */
export function slab(box: Box, brightness: (x: number, y: number) => number, opacity = 1): Shape {
  return {
    box: [box[0] - EDGE, box[1] - EDGE, box[2] + EDGE, box[3] + EDGE],
    paint(x, y, under) {
      const inside = Math.min(x - box[0], box[2] - x, y - box[1], box[3] - y);
      return under + opacity * cover(inside) * (brightness(x, y) - under);
    },
  };
}

/** Takes away a share of the light behind a soft disc: a shadow out of focus. */
export function shade(centre: Point, radius: number, softness: number, depth: number): Shape {
  return {
    box: around(centre, radius + softness),
    paint(x, y, under) {
      const inside = radius - Math.hypot(x - centre[0], y - centre[1]);
      return under * (1 - depth * cover(inside, softness));
    },
  };
}

/** A faint mirror image of `shape` in glass that also mirrors a room of brightness `room`. */
export function reflected(shape: Shape, strength: number, room: number): Shape {
  return {
    box: shape.box,
    paint: (x, y, under) => under + strength * (shape.paint(x, y, room) - room),
  };
}

export const still = (shape: Shape): Thing => ({ nature: 'still', at: () => shape });
export const moving = (at: (time: number) => Shape | null): Thing => ({ nature: 'moving', at });
export const soft = (at: (time: number) => Shape | null): Thing => ({ nature: 'soft', at });
