/** A camera that shares no code with the program: a point in space to its place in the picture. */
export type Point3 = readonly [number, number, number];

export interface Pinhole {
  readonly focal: number;
  readonly principal: readonly [number, number];
  readonly k1: number;
  readonly k2: number;
  /** Turned about the vertical, then nodded about the horizontal, radians. */
  readonly yaw: number;
  readonly pitch: number;
  /** Pixel width over height. */
  readonly aspect?: number;
}

/** World axes: x right, y down, z away; the camera stands at the origin. */
export function shows(
  { focal, principal, k1, k2, yaw, pitch, aspect = 1 }: Pinhole,
  [X, Y, Z]: Point3,
): [number, number] {
  const x1 = Math.cos(yaw) * X - Math.sin(yaw) * Z;
  const z1 = Math.sin(yaw) * X + Math.cos(yaw) * Z;
  const y2 = Math.cos(pitch) * Y - Math.sin(pitch) * z1;
  const z2 = Math.sin(pitch) * Y + Math.cos(pitch) * z1;
  const [u, v] = [x1 / z2, y2 / z2];
  const r2 = u * u + v * v;
  const bent = 1 + k1 * r2 + k2 * r2 * r2;
  return [(principal[0] + focal * u * bent) / aspect, principal[1] + focal * v * bent];
}
