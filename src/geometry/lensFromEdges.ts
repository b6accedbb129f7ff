import { foldRadius, type LensCalibration, type RadialLens, undistort } from '../core/lens';
import { failure, type Outcome, success } from '../core/reason';
import type { ImagePoint, Pixels } from '../core/units';

const FEWEST_POINTS = 8;
/** The lens centre is taken for the frame's middle, known to this share of the frame's longer side. */
const CENTRE_SHARE = 0.02;
/** The focal length is taken for the frame's longer side, an angle of view of 53 degrees, and hardly known. */
const FOCAL_RELATIVE_U = 0.5;
/** k2 cannot be told from the bow of an edge; it is left at 0, known to this share of k1 (published lenses reach a third). */
const K2_SHARE = 0.3;
/** Edges nearer to the lens centre than this share of half the frame's diagonal bow too little. */
const NEAREST = 0.1;
/** An edge that leaves the corners of the frame less well known than this tells too little, px. */
const MOST_CORNER_U: Pixels = 3;
const ROUNDS = 30;

/**
 * k1 of the lens that makes edges straight which are straight in the scene, from points along each. What is assumed
 * of centre and k2 is counted in the uncertainty; the focal length only gives k1 its unit.
 * Failures: `edgeTooShort`, `edgeThroughCentre`, `edgeTellsLittle`.
 */
export function lensFromEdgePoints(
  edges: readonly (readonly ImagePoint[])[],
  width: Pixels,
  height: Pixels,
): Outcome<LensCalibration> {
  if (edges.length === 0 || edges.some((points) => points.length < FEWEST_POINTS)) {
    return failure(
      'edgeTooShort',
      `An edge needs at least ${FEWEST_POINTS} points for its bow to be seen.`,
      'Mark its two ends farther apart.',
      { form: 'points', fewest: FEWEST_POINTS },
    );
  }
  const focal = Math.max(width, height);
  const centre: ImagePoint = [(width - 1) / 2, (height - 1) / 2];
  const halfDiagonal = Math.hypot(width, height) / 2;
  const farthest = Math.max(...edges.map((points) => Math.abs(lineOf(points).distanceOf(centre))));
  if (farthest < NEAREST * halfDiagonal) {
    return failure(
      'edgeThroughCentre',
      `The edge passes within ${farthest.toFixed(0)} px of the middle of the picture, where a lens leaves straight lines straight.`,
      'Take an edge that runs near the top or bottom of the picture, or film one there.',
      { distance: farthest.toFixed(0) },
    );
  }
  const at = (lens: Partial<RadialLens>) =>
    straightened(edges, { k1: 0, k2: 0, centre, focal, ...lens });
  const best = at({});
  if (best === null) return tellsLittle(Number.POSITIVE_INFINITY);
  const centreU = CENTRE_SHARE * focal;
  const k2U = K2_SHARE * Math.abs(best.k1);
  const shiftedBy = (lens: Partial<RadialLens>) => (at(lens)?.k1 ?? Number.NaN) - best.k1;
  const byCentre = Math.hypot(
    shiftedBy({ centre: [centre[0] + centreU, centre[1]] }),
    shiftedBy({ centre: [centre[0], centre[1] + centreU] }),
  );
  const byK2 = k2U > 0 ? shiftedBy({ k2: k2U }) : 0;
  const u = Math.hypot(best.u, byCentre, byK2);
  const alone = Math.hypot(best.u, byCentre);
  const cornerU = (alone * halfDiagonal ** 3) / focal ** 2;
  if (!(cornerU < MOST_CORNER_U && Number.isFinite(u))) return tellsLittle(cornerU);
  return success({
    k1: { value: best.k1, u },
    k2: { value: 0, u: k2U },
    correlation: u > 0 ? byK2 / u : 0,
    centre,
    centreU,
    focal: { value: focal, u: FOCAL_RELATIVE_U * focal },
    rms: best.rms,
    parts: edges.map((points, i) => ({
      name: `edge ${i + 1}`,
      points: points.length,
      rms: best.edgeRms[i] as number,
    })),
  });
}

const tellsLittle = (cornerU: number): Outcome<never> =>
  failure(
    'edgeTellsLittle',
    `The edges leave the distortion in the corners of the picture ${Number.isFinite(cornerU) ? `known to ${cornerU.toFixed(1)} px only` : 'open'}.`,
    'Mark longer edges farther from the middle, several of them, or film a chessboard.',
    Number.isFinite(cornerU) ? { form: 'known', u: cornerU.toFixed(1) } : { form: 'open' },
  );

interface EdgeFit {
  readonly k1: number;
  readonly u: number;
  readonly rms: Pixels;
  readonly edgeRms: readonly Pixels[];
}

/** Gauss-Newton on k1 alone, each edge's own line fitted anew at every step. */
function straightened(
  edges: readonly (readonly ImagePoint[])[],
  start: RadialLens,
): EdgeFit | null {
  let k1 = start.k1;
  for (let round = 0; round < ROUNDS; round++) {
    const here = bows(edges, { ...start, k1 });
    const step = 1e-4;
    const up = bows(edges, { ...start, k1: k1 + step });
    const down = bows(edges, { ...start, k1: k1 - step });
    if (here === null || up === null || down === null) return null;
    let slopes = 0;
    let product = 0;
    let squares = 0;
    let count = 0;
    let neighbours = 0;
    for (const [e, off] of here.entries()) {
      for (let i = 0; i < off.length; i++) {
        const slope = ((up[e]?.[i] as number) - (down[e]?.[i] as number)) / (2 * step);
        const residual = off[i] as number;
        slopes += slope * slope;
        product += slope * residual;
        squares += residual * residual;
        neighbours += residual * (off[i + 1] ?? 0);
        count++;
      }
    }
    if (!(slopes > 0)) return null;
    const move = -product / slopes;
    if (Math.abs(move) < 1e-9) {
      // Neighbouring points that err alike tell less: as a first-order autoregression has it.
      const alike = Math.min(0.95, Math.max(0, squares > 0 ? neighbours / squares : 0));
      const dof = Math.max(1, count - 2 * edges.length - 1);
      const variance = (squares / dof) * ((1 + alike) / (1 - alike));
      return {
        k1,
        u: Math.sqrt(variance / slopes),
        rms: Math.sqrt(squares / count),
        edgeRms: here.map((off) =>
          Math.sqrt(off.reduce((sum, value) => sum + value * value, 0) / off.length),
        ),
      };
    }
    k1 = unfolded(k1, move, edges, start);
  }
  return null;
}

/** Steps as far as every point keeps its place: a lens that folds inside the edges is no candidate. */
function unfolded(
  k1: number,
  move: number,
  edges: readonly (readonly ImagePoint[])[],
  { k2, centre, focal }: RadialLens,
): number {
  const farthest = Math.max(
    ...edges.flat().map(([x, y]) => Math.hypot(x - centre[0], y - centre[1]) / focal),
  );
  for (let share = 1; share > 1e-3; share /= 2) {
    const next = k1 + share * move;
    const fold = foldRadius({ k1: next, k2 });
    if (fold === null || fold * (1 + next * fold ** 2 + k2 * fold ** 4) > 1.05 * farthest) {
      return next;
    }
  }
  return k1;
}

/** Distances of the freed points from the line through them, edge by edge; null outside the lens. */
function bows(edges: readonly (readonly ImagePoint[])[], lens: RadialLens): Float64Array[] | null {
  const all: Float64Array[] = [];
  for (const points of edges) {
    const straight: ImagePoint[] = [];
    for (const point of points) {
      const free = undistort(lens, point);
      if (!free.ok) return null;
      straight.push(free.value);
    }
    const { distanceOf } = lineOf(straight);
    all.push(Float64Array.from(straight, distanceOf));
  }
  return all;
}

/** The line with the least squares of distances (principal axis of the scatter). */
function lineOf(points: readonly ImagePoint[]): { distanceOf(point: ImagePoint): Pixels } {
  const n = points.length;
  const mx = points.reduce((sum, [x]) => sum + x, 0) / n;
  const my = points.reduce((sum, [, y]) => sum + y, 0) / n;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const [x, y] of points) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
  }
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  const [nx, ny] = [-Math.sin(angle), Math.cos(angle)];
  return { distanceOf: ([x, y]) => (x - mx) * nx + (y - my) * ny };
}
