import { solveSymmetricThree } from '../core/linalg';
import type { ImagePoint, ImageVector, Pixels, Seconds } from '../core/units';
import type { Rim } from '../image/types';
import type { Path } from './types';

/** One candidate with the frame and time it belongs to. */
export interface Sighting {
  readonly frame: number;
  readonly time: Seconds;
  readonly x: Pixels;
  readonly y: Pixels;
  /** 0..1, by shape, size and sharpness of edge. */
  readonly likeness: number;
  readonly score: number;
  readonly visible: number;
  /** Its edge, where it has one. */
  readonly rim: Rim | null;
  /** Index in its frame's list of candidates; -1 for a place given by a person. */
  readonly candidate: number;
}

/** Position of a path at a time. */
export function along(path: Path, time: Seconds): ImagePoint {
  const t = time - path.time;
  return [
    path.origin[0] + t * (path.velocity[0] + 0.5 * t * path.acceleration[0]),
    path.origin[1] + t * (path.velocity[1] + 0.5 * t * path.acceleration[1]),
  ];
}

/** The uniform motion through two sightings; null where they are at one time. */
export function throughTwo(a: Sighting, b: Sighting): Path | null {
  const dt = b.time - a.time;
  if (dt === 0) return null;
  return {
    time: a.time,
    origin: [a.x, a.y],
    velocity: [(b.x - a.x) / dt, (b.y - a.y) / dt],
    acceleration: [0, 0],
  };
}

/**
 * Weighted least-squares path through sightings. `curved` also fits an acceleration (five or more
 * sightings; else uniform motion). Null where the sightings do not differ in time.
 */
export function fitPath(
  sightings: readonly Sighting[],
  weights: readonly number[],
  curved: boolean,
): Path | null {
  let total = 0;
  let mean = 0;
  sightings.forEach((s, i) => {
    total += weights[i] as number;
    mean += (weights[i] as number) * s.time;
  });
  if (total <= 0) return null;
  mean /= total;
  // Times are scaled to about one so that the squares keep their figures.
  const span = sightings.reduce((most, s) => Math.max(most, Math.abs(s.time - mean)), 0);
  if (span === 0) return null;
  const moments = [0, 0, 0, 0, 0];
  const x = [0, 0, 0];
  const y = [0, 0, 0];
  sightings.forEach((s, i) => {
    const u = (s.time - mean) / span;
    let power = weights[i] as number;
    for (let k = 0; k < 5; k++) {
      moments[k] = (moments[k] as number) + power;
      if (k < 3) {
        x[k] = (x[k] as number) + power * s.x;
        y[k] = (y[k] as number) + power * s.y;
      }
      power *= u;
    }
  });
  const [m0, m1, m2, m3, m4] = moments as [number, number, number, number, number];
  const bends = curved && sightings.length >= 5;
  const solve = (b: number[]): [number, number, number] | null => {
    if (bends) return solveSymmetricThree([m0, m1, m2, m2, m3, m4], b, 1e-12 * m0 ** 3);
    const [b0, b1] = b as [number, number, number];
    const flat = m0 * m2 - m1 * m1;
    if (flat <= 1e-12 * m0 * m0) return null;
    return [(m2 * b0 - m1 * b1) / flat, (m0 * b1 - m1 * b0) / flat, 0];
  };
  const px = solve(x);
  const py = solve(y);
  if (px === null || py === null) return null;
  return {
    time: mean,
    origin: [px[0], py[0]],
    velocity: [px[1] / span, py[1] / span],
    acceleration: [(2 * px[2]) / span ** 2, (2 * py[2]) / span ** 2],
  };
}

/** Unit direction of the straight line nearest to the sightings (total least squares, Tukey weights), along the travel. */
export function lineDirection(
  sightings: readonly Sighting[],
  travel: ImageVector,
  scale: Pixels,
): ImageVector {
  let weights = sightings.map((s) => s.likeness * s.visible);
  let axis: ImageVector = travel;
  for (let round = 0; round < 6; round++) {
    let total = 0;
    let mx = 0;
    let my = 0;
    sightings.forEach((s, i) => {
      const w = weights[i] as number;
      total += w;
      mx += w * s.x;
      my += w * s.y;
    });
    if (total <= 0) break;
    mx /= total;
    my /= total;
    let xx = 0;
    let xy = 0;
    let yy = 0;
    sightings.forEach((s, i) => {
      const w = weights[i] as number;
      xx += w * (s.x - mx) ** 2;
      xy += w * (s.x - mx) * (s.y - my);
      yy += w * (s.y - my) ** 2;
    });
    const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
    axis = [Math.cos(angle), Math.sin(angle)];
    const [ux, uy] = axis;
    weights = sightings.map((s) => {
      const off = ((s.y - my) * ux - (s.x - mx) * uy) / scale;
      return Math.abs(off) < 1 ? s.likeness * s.visible * (1 - off * off) ** 2 : 0;
    });
  }
  const forward = axis[0] * travel[0] + axis[1] * travel[1] >= 0;
  return forward ? axis : [-axis[0], -axis[1]];
}

/** Sightings taken for one object, the path through them, and how much speaks for it. */
export interface Run {
  readonly path: Path;
  readonly sightings: readonly Sighting[];
  /** Sum of the likenesses, less the farther off the path. */
  readonly support: number;
  /** Places named by a person that it passes. */
  readonly seedsPassed: number;
}
