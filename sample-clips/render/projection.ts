/**
 * A pinhole camera looking square at the flight plane. World: x right, y down, z away from the
 * camera, metres; the flight plane is z = 0; the origin is where the camera's axis meets it.
 */
export interface Projection {
  /** Focal length, px, and distance of the lens from the flight plane, m. */
  readonly focal: number;
  readonly distance: number;
  /** The image of the origin, px. */
  readonly centre: readonly [number, number];
}

export type Point3 = readonly [number, number, number];

export function imageX(p: Projection, x: number, z: number): number {
  return p.centre[0] + (p.focal * x) / (p.distance + z);
}

export function imageY(p: Projection, y: number, z: number): number {
  return p.centre[1] + (p.focal * y) / (p.distance + z);
}

/** The point of the flight plane seen at a pixel. */
export function onFlightPlane(p: Projection, x: number, y: number): [number, number] {
  const scale = p.distance / p.focal;
  return [(x - p.centre[0]) * scale, (y - p.centre[1]) * scale];
}

/** The muzzle's own frame in the flight plane: s along the axis out of the tube, q across it. */
export interface MuzzleFrame {
  readonly origin: readonly [number, number];
  readonly axis: readonly [number, number];
}

/** World point of (s, q, z) in the muzzle's frame. */
export function toWorld(m: MuzzleFrame, s: number, q: number, z: number): Point3 {
  const [ax, ay] = m.axis;
  return [m.origin[0] + s * ax - q * ay, m.origin[1] + s * ay + q * ax, z];
}
