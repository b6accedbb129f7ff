import { solveSymmetricThree } from '../core/linalg';

/** Most pairs of edges that propose a circle. */
const MOST_PAIRS = 800;
/** Directions around a circle in which its edges are counted. */
const DIRECTIONS = 36;

/** Places where an edge may be, in ball coordinates around the start, with the ray each was met on. */
export interface Edges {
  readonly x: number[];
  readonly y: number[];
  readonly ray: number[];
}

/** Best centre among those of circles of the expected radius through two edges; null where none gathers enough. */
export function propose(edges: Edges, radius: number, tolerance: number): [number, number] | null {
  const n = edges.ray.length;
  let best: [number, number] | null = null;
  let most = DIRECTIONS / 8;
  const directions = new Float64Array(DIRECTIONS);
  // A spread selection of pairs is enough: any two of the many edges on the outline propose it.
  const stride = Math.max(1, Math.ceil(Math.sqrt((n * n) / 2 / MOST_PAIRS)));
  for (let i = 0; i < n; i += stride) {
    for (let j = i + 1; j < n; j += stride) {
      const mx = ((edges.x[i] as number) + (edges.x[j] as number)) / 2;
      const my = ((edges.y[i] as number) + (edges.y[j] as number)) / 2;
      const hx = (edges.x[j] as number) - mx;
      const hy = (edges.y[j] as number) - my;
      const half2 = hx * hx + hy * hy;
      if (half2 < (0.3 * radius) ** 2 || half2 > radius * radius) continue;
      const offset = Math.sqrt((radius * radius - half2) / half2);
      for (const side of [-1, 1]) {
        const cx = mx - side * offset * hy;
        const cy = my + side * offset * hx;
        // The start lies on the ball.
        if (cx * cx + cy * cy > radius * radius) continue;
        // One vote a direction from this centre: a straight wall close by fills many rays but few of these.
        directions.fill(0);
        for (let k = 0; k < n; k++) {
          const dx = (edges.x[k] as number) - cx;
          const dy = (edges.y[k] as number) - cy;
          const off = Math.abs(Math.sqrt(dx * dx + dy * dy) - radius) / tolerance;
          if (off >= 1) continue;
          const turn = Math.atan2(dy, dx) / (2 * Math.PI) + 0.5;
          const bin = Math.min(DIRECTIONS - 1, Math.floor(turn * DIRECTIONS));
          directions[bin] = Math.max(directions[bin] as number, 1 - off * off);
        }
        let votes = 0;
        for (let k = 0; k < DIRECTIONS; k++) votes += directions[k] as number;
        if (votes > most) {
          most = votes;
          best = [cx, cy];
        }
      }
    }
  }
  return best;
}

/** Geometric fit of the circle's centre, Tukey weights, radius free within 4 % of the expected one. */
export function settle(
  edges: Edges,
  expected: number,
  [gx, gy]: readonly [number, number],
  tolerance: number,
): [number, number] {
  let cx = gx;
  let cy = gy;
  let radius = expected;
  for (let round = 0; round < 12; round++) {
    const prior = (tolerance / (0.04 * expected)) ** 2;
    const m = [1e-6, 0, 0, 1e-6, 0, prior];
    const v = [0, 0, prior * (expected - radius)];
    for (let i = 0; i < edges.ray.length; i++) {
      const dx = (edges.x[i] as number) - cx;
      const dy = (edges.y[i] as number) - cy;
      const d = Math.hypot(dx, dy);
      const off = d - radius;
      const u = off / (1.5 * tolerance);
      if (d === 0 || Math.abs(u) >= 1) continue;
      const w = (1 - u * u) ** 2;
      const nx = dx / d;
      const ny = dy / d;
      m[0] = (m[0] as number) + w * nx * nx;
      m[1] = (m[1] as number) + w * nx * ny;
      m[2] = (m[2] as number) + w * nx;
      m[3] = (m[3] as number) + w * ny * ny;
      m[4] = (m[4] as number) + w * ny;
      m[5] = (m[5] as number) + w;
      v[0] = (v[0] as number) + w * nx * off;
      v[1] = (v[1] as number) + w * ny * off;
      v[2] = (v[2] as number) + w * off;
    }
    const step = solveSymmetricThree(m, v, 1e-12);
    if (step === null) break;
    cx += step[0];
    cy += step[1];
    radius += step[2];
    if (Math.hypot(step[0], step[1]) < 1e-3) break;
  }
  return [cx, cy];
}
