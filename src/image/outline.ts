import type { GreyFrame } from '../core/frame';
import type { ImagePoint } from '../core/units';
import { inverseOf, type Shape } from './ballShape';
import { type Edges, propose, settle } from './circleSearch';
import { learntBrightness } from './hiddenPixels';
import type { Background, BallModel } from './types';

/** Rays cast from the middle; also the number of sectors the outline is judged in. */
export const RAYS = 72;
const STEP = 0.5;
const EDGES_A_RAY = 3;
/** A change is the ball's when it is this many times the noise, or this share of the grey range. */
const LEAST_CHANGE = 2.5;
const LEAST_CHANGE_SHARE = 3 / 255;
/** Where the brightness behind the limb is taken, radii, and how far it may differ from the learnt one, as a share of the contrast. */
const BEHIND_LIMB = 0.85;
const UNLIKE = 0.4;

/** The ball's outline as rays from its middle see it. */
export interface Outline {
  readonly middle: ImagePoint;
  /** For each of `RAYS` directions (angle 2 pi k / RAYS in ball coordinates): 1 where its edge shows. */
  readonly seen: Uint8Array;
}

/**
 * Finds the circle of about the expected radius, near `start`, that most rays agree with: on each ray
 * the places where what differs from the background gives way to background are candidates, and pairs
 * of them propose circles. Null where no circle gathers a sixth of the rays.
 */
export function findOutline(
  frame: GreyFrame,
  background: Background,
  gain: number,
  start: ImagePoint,
  ball: BallModel,
  shape: Shape,
): Outline | null {
  const tolerance = Math.max(1.5, 0.06 * ball.radius);
  let middle = start;
  let seen: Uint8Array = new Uint8Array(RAYS);
  const patch = smoothDifference(frame, background, gain, start, 3 * ball.radius + 8);
  for (let round = 0; round < 3; round++) {
    const edges = castRays(patch, background, gain, middle, ball, shape);
    const guess = round === 0 ? propose(edges, ball.radius, tolerance) : [0, 0];
    if (guess === null) return null;
    const centre = settle(edges, ball.radius, guess as [number, number], tolerance);
    const inverse = inverseOf(shape);
    middle = [
      middle[0] + inverse[0] * centre[0] + inverse[1] * centre[1],
      middle[1] + inverse[2] * centre[0] + inverse[3] * centre[1],
    ];
    seen = seenSectors(edges, ball.radius, centre, tolerance);
  }
  return count(seen) * 6 < RAYS ? null : { middle, seen };
}

/** Sector of the outline that a place, from the middle in ball coordinates, lies in. */
export const sectorOf = (x: number, y: number): number =>
  Math.round((Math.atan2(y, x) / (2 * Math.PI)) * RAYS + RAYS) % RAYS;

/** Flags set in each of two. */
export const both = (a: Uint8Array, b: Uint8Array): Uint8Array =>
  a.map((flag, i) => flag & (b[i] as number));

/** Number of flags set. */
export const count = (flags: Uint8Array): number => flags.reduce((sum, flag) => sum + flag, 0);

/** Places along each ray where a marked change ends, the nearest three a ray. */
function castRays(
  patch: Patch,
  background: Background,
  gain: number,
  middle: ImagePoint,
  ball: BallModel,
  shape: Shape,
): Edges {
  const { radius, blur } = ball;
  const brightness = learntBrightness(ball);
  const inverse = inverseOf(shape);
  const edges: Edges = { x: [], y: [], ray: [] };
  const farthest = 1.9 * radius + 6;
  const samples = Math.floor(farthest / STEP);
  const change = new Float64Array(samples);
  const sum = new Float64Array(samples + 1);
  const signed = new Float64Array(samples + 1);
  // Means of nine pixels have a third of their noise, where it is independent; it is not quite.
  const noise =
    0.5 * Math.sqrt(background.noise.readVariance + background.noise.gain * background.white * 0.5);
  const least = Math.max(LEAST_CHANGE * noise, LEAST_CHANGE_SHARE * background.white);
  for (let ray = 0; ray < RAYS; ray++) {
    const angle = (2 * Math.PI * ray) / RAYS;
    const ux = Math.cos(angle);
    const uy = Math.sin(angle);
    const dx = STEP * (inverse[0] * ux + inverse[1] * uy);
    const dy = STEP * (inverse[2] * ux + inverse[3] * uy);
    // Half the width over which the blur spreads this edge, in samples.
    const half = Math.ceil(Math.abs(blur[0] * ux + blur[1] * uy) / 2 / STEP);
    // With the middle outside the picture a ray tells something from where it enters.
    let first = 0;
    let n = 0;
    for (; n < samples; n++) {
      const value = patchAt(patch, middle[0] + n * dx, middle[1] + n * dy);
      if (Number.isNaN(value)) {
        if (n > first) break;
        first = n + 1;
      } else {
        change[n] = Math.abs(value);
      }
      sum[n + 1] = (sum[n] as number) + (Number.isNaN(value) ? 0 : (change[n] as number));
      signed[n + 1] = (signed[n] as number) + (Number.isNaN(value) ? 0 : value);
    }
    const near = 4 + half;
    const width = 6;
    const limb = brightness?.(BEHIND_LIMB * ux, BEHIND_LIMB * uy);
    let found = 0;
    let after = 0;
    for (let i = first + near + width; i + near + width <= n && found < EDGES_A_RAY; i++) {
      if (i < after) continue;
      const inner = meanOf(sum, i - near - width, i - near + 2);
      const outer = meanOf(sum, i + near - 2, i + near + width);
      if (inner < least || outer > 0.3 * inner) continue;
      // Shading dims the limb below the inner level, so the edge is looked for a little below half of it.
      const level = 0.4 * inner + 0.6 * outer;
      // Within the stretch between, the last sample above that is the edge.
      let at = i + near;
      if ((change[at] as number) >= level) continue;
      while (at > i - near && (change[at] as number) < level) at--;
      const a = change[at] as number;
      const b = change[at + 1] as number;
      const r = STEP * (at + (a > b ? (a - level) / (a - b) : 0.5));
      after = at + near + width;
      if (r < 0.2 * radius) continue;
      if (limb !== undefined) {
        const contrast =
          gain * (limb - levelAt(background, middle[0] + at * dx, middle[1] + at * dy));
        const shown = meanOf(signed, i - near - width, i - near + 2);
        if (Math.abs(shown - contrast) > Math.max(UNLIKE * Math.abs(contrast), least)) continue;
      }
      edges.x.push(r * ux);
      edges.y.push(r * uy);
      edges.ray.push(ray);
      found++;
    }
  }
  return edges;
}

/** Background at the pixel nearest to a place within it. */
const levelAt = ({ level, width }: Background, x: number, y: number): number =>
  level[Math.round(y) * width + Math.round(x)] as number;

/** Mean between two places of a running sum. */
const meanOf = (sum: Float64Array, from: number, to: number): number =>
  ((sum[to] as number) - (sum[from] as number)) / (to - from);

/** Frame minus background around a place, averaged over 3 x 3 pixels. */
interface Patch {
  readonly x0: number;
  readonly y0: number;
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
}

function smoothDifference(
  { data, width, height }: GreyFrame,
  { level, faulty }: Background,
  gain: number,
  [x, y]: ImagePoint,
  reach: number,
): Patch {
  const x0 = Math.max(0, Math.floor(x - reach));
  const y0 = Math.max(0, Math.floor(y - reach));
  const columns = Math.max(0, Math.min(width - 1, Math.ceil(x + reach)) - x0 + 1);
  const rows = Math.max(0, Math.min(height - 1, Math.ceil(y + reach)) - y0 + 1);
  const across = new Float32Array(columns * rows);
  /** Pixels summed up: fewer at the border and where some are faulty. */
  const pixels = new Uint8Array(columns * rows);
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const to = Math.min(columns - 1, c + 1);
      let sum = 0;
      let good = 0;
      for (let k = Math.max(0, c - 1); k <= to; k++) {
        const p = (y0 + r) * width + x0 + k;
        if (faulty !== undefined && faulty[p] === 1) continue;
        sum += (data[p] as number) - gain * (level[p] as number);
        good++;
      }
      across[r * columns + c] = sum;
      pixels[r * columns + c] = good;
    }
  }
  const values = new Float32Array(columns * rows);
  for (let r = 0; r < rows; r++) {
    const to = Math.min(rows - 1, r + 1);
    for (let c = 0; c < columns; c++) {
      let sum = 0;
      let good = 0;
      for (let k = Math.max(0, r - 1); k <= to; k++) {
        sum += across[k * columns + c] as number;
        good += pixels[k * columns + c] as number;
      }
      values[r * columns + c] = good > 0 ? sum / good : 0;
    }
  }
  return { x0, y0, width: columns, height: rows, values };
}

/** The patch at a place, bilinear; not a number outside. */
function patchAt({ x0, y0, width, height, values }: Patch, px: number, py: number): number {
  const x = px - x0;
  const y = py - y0;
  if (!(x >= 0 && y >= 0 && x <= width - 1 && y <= height - 1)) return Number.NaN;
  const ix = Math.min(Math.floor(x), width - 2);
  const iy = Math.min(Math.floor(y), height - 2);
  const fx = x - ix;
  const fy = y - iy;
  const p = iy * width + ix;
  const q = p + width;
  return (
    ((values[p] as number) * (1 - fx) + (values[p + 1] as number) * fx) * (1 - fy) +
    ((values[q] as number) * (1 - fx) + (values[q + 1] as number) * fx) * fy
  );
}

/** Rays with an edge on the circle of this centre (ball coordinates), whose way out points away from it. */
function seenSectors(
  edges: Edges,
  radius: number,
  centre: readonly number[],
  tolerance: number,
): Uint8Array {
  const seen = new Uint8Array(RAYS);
  const [cx, cy] = centre as [number, number];
  for (let i = 0; i < edges.ray.length; i++) {
    const dx = (edges.x[i] as number) - cx;
    const dy = (edges.y[i] as number) - cy;
    const d = Math.hypot(dx, dy);
    if (Math.abs(d - radius) > tolerance) continue;
    const outward = dx * (edges.x[i] as number) + dy * (edges.y[i] as number);
    if (outward < 0.3 * d * Math.hypot(edges.x[i] as number, edges.y[i] as number)) continue;
    seen[sectorOf(dx, dy)] = 1;
  }
  return seen;
}
