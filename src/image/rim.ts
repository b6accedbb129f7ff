import type { GreyFrame } from '../core/frame';
import { solveSymmetricThree } from '../core/linalg';
import type { ImagePoint } from '../core/units';
import { medianInPlace } from './median';
import type { Background, Rim } from './types';

/** A rim and the middle of the circle through it, px. */
export interface RimFit extends Rim {
  readonly x: number;
  readonly y: number;
}

const RAYS = 24;
/** The edge is looked for between these distances, in radii. */
const FROM = 0.5;
const TO = 1.5;
/** Widths, in radii, over which the step at an edge is taken, and over which a sharp edge has risen in full. */
const WIDE = 0.3;
const NARROW = 0.1;
/** Least step at an edge: standard deviations of the noise, and share of the grey range. */
const LEAST_STEP_TO_NOISE = 4;
const LEAST_STEP = 0.015;
/** Steps looked at on one ray: the limb's may be smaller than that of the ball's own shadow on it. */
const MOST_STEPS = 3;
/** Distance from the fitted circle, in radii but at least in px, beyond which a ray's edge is another thing's. */
const OFF_CIRCLE = 0.1;
const OFF_CIRCLE_PX = 1;
/** The expected radius counts as much as this share of a ray. */
const HOLD = 0.25;
const ROUNDS = 5;
const FEWEST_RAYS = 5;
/** Sizes a circle is tried from; another size must explain more rays than the expected by this many for its whole difference. */
const SIZES = [1, 0.8, 0.65, 1.2] as const;
const RAYS_PER_SIZE = 20;

const COSINES = Float64Array.from({ length: RAYS }, (_, k) => Math.cos((2 * Math.PI * k) / RAYS));
const SINES = Float64Array.from({ length: RAYS }, (_, k) => Math.sin((2 * Math.PI * k) / RAYS));

/**
 * The edge around a rough place: on rays from its middle, where the change from the background makes its largest
 * step, and the circle through most of these points. Null where there is no such circle.
 */
export function followRim(
  frame: GreyFrame,
  background: Background,
  gain: number,
  at: ImagePoint,
  radius: number,
): RimFit | null {
  let middle = at;
  let found: RimFit | null = null;
  // The second time from a better middle, from which all rays meet the edge alike.
  for (let round = 0; round < 2; round++) {
    const next = lookFrom(frame, background, gain, middle, radius);
    if (next === null || Math.hypot(next.x - at[0], next.y - at[1]) > 0.7 * radius) break;
    found = next;
    middle = [next.x, next.y];
  }
  return found;
}

function lookFrom(
  frame: GreyFrame,
  { level, noise, white }: Background,
  gain: number,
  [cx, cy]: ImagePoint,
  radius: number,
): RimFit | null {
  const { data, width, height } = frame;
  const step = Math.max(0.5, radius / 24);
  const samples = Math.ceil(((TO + WIDE) * radius) / step);
  const inner = Math.max(1, Math.floor((FROM * radius) / step));
  const wide = Math.max(2, Math.round((WIDE * radius) / step));
  const narrow = Math.max(1, Math.round((NARROW * radius) / step));
  const inside = new Float64Array(RAYS * inner);
  let count = 0;
  // Sums along a ray: the mean between any two of its points is one difference.
  const sums = new Float64Array(samples + 1);
  const edges: Edge[][] = [];
  const sigma = Math.sqrt(noise.readVariance + noise.gain * white * 0.5);
  const least = Math.max(LEAST_STEP * white, LEAST_STEP_TO_NOISE * sigma * Math.sqrt(2 / wide));
  for (let k = 0; k < RAYS; k++) {
    const c = COSINES[k] as number;
    const s = SINES[k] as number;
    let n = 0;
    for (; n < samples; n++) {
      const x = Math.round(cx + n * step * c);
      const y = Math.round(cy + n * step * s);
      if (x < 0 || y < 0 || x >= width || y >= height) break;
      const p = y * width + x;
      const difference = (data[p] as number) - gain * (level[p] as number);
      sums[n + 1] = (sums[n] as number) + difference;
      if (n < inner) inside[count++] = difference;
    }
    const rise = (at: number, over: number) =>
      ((sums[at] as number) * 2 - (sums[at - over] as number) - (sums[at + over] as number)) / over;
    edges.push(
      stepsAlong(n, Math.max(inner, wide), (at) => Math.abs(rise(at, wide)), wide, least).map(
        ({ at, size }) => ({
          distance: (at - 0.5) * step,
          sharp: Math.abs(rise(at, narrow)) / size,
        }),
      ),
    );
  }
  if (count === 0) return null;
  let best: Circle | null = null;
  for (const size of SIZES) {
    const circle = circleThrough(edges, size * radius, radius);
    if (circle !== null && (best === null || circle.worth > best.worth)) best = circle;
  }
  if (best === null) return null;
  // Motion blur softens the edges ahead and behind only: the sharper rays tell of focus.
  const sharp = best.sharp.sort((a, b) => b - a)[best.sharp.length >> 2] as number;
  return {
    x: cx + best.x,
    y: cy + best.y,
    contrast: medianInPlace(inside, count),
    size: best.radius / radius,
    round: best.sharp.length / RAYS,
    sharp: Math.min(1, sharp),
  };
}

interface Edge {
  readonly distance: number;
  readonly sharp: number;
}

/** The largest steps of a ray, strongest first, none within the width of a stronger one. */
function stepsAlong(
  end: number,
  from: number,
  sizeAt: (at: number) => number,
  width: number,
  least: number,
): { at: number; size: number }[] {
  const peaks: { at: number; size: number }[] = [];
  let before = 0;
  let size = sizeAt(from);
  for (let at = from; at <= end - width; at++) {
    const after = at < end - width ? sizeAt(at + 1) : 0;
    if (size >= least && size >= before && size > after) peaks.push({ at, size });
    before = size;
    size = after;
  }
  return peaks.sort((a, b) => b.size - a.size).slice(0, MOST_STEPS);
}

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Sharpness of the rays whose edge lies on it. */
  readonly sharp: number[];
  /** Rays explained, less what its size is off. */
  readonly worth: number;
}

/** Circle near the given radius through most rays' edges, by least squares with Tukey's weights. */
function circleThrough(
  edges: readonly (readonly Edge[])[],
  start: number,
  expected: number,
): Circle | null {
  const near = Math.max(OFF_CIRCLE * expected, OFF_CIRCLE_PX);
  let reach = 4 * near;
  let [dx, dy, r] = [0, 0, start];
  const nearest = (k: number): { off: number; edge: Edge } | null => {
    const circle = r + dx * (COSINES[k] as number) + dy * (SINES[k] as number);
    let best: { off: number; edge: Edge } | null = null;
    for (const edge of edges[k] as readonly Edge[]) {
      const off = edge.distance - circle;
      if (Math.abs(off) < Math.abs(best?.off ?? reach)) best = { off, edge };
    }
    return best;
  };
  for (let round = 0; round < ROUNDS; round++) {
    // Normal equations for (dx, dy, r), r held by the radius started from.
    const m = [1e-6, 0, 0, 1e-6, 0, HOLD] as number[];
    const b = [0, 0, HOLD * start] as number[];
    for (let k = 0; k < RAYS; k++) {
      const found = nearest(k);
      if (found === null) continue;
      const c = COSINES[k] as number;
      const s = SINES[k] as number;
      const w = (1 - (found.off / reach) ** 2) ** 2;
      const d = found.edge.distance;
      m[0] = (m[0] as number) + w * c * c;
      m[1] = (m[1] as number) + w * c * s;
      m[2] = (m[2] as number) + w * c;
      m[3] = (m[3] as number) + w * s * s;
      m[4] = (m[4] as number) + w * s;
      m[5] = (m[5] as number) + w;
      b[0] = (b[0] as number) + w * d * c;
      b[1] = (b[1] as number) + w * d * s;
      b[2] = (b[2] as number) + w * d;
    }
    const solved = solveSymmetricThree(m, b, 1e-9);
    if (solved === null) return null;
    [dx, dy, r] = solved;
    reach = Math.max(1.5 * near, 0.7 * reach);
  }
  const sharp: number[] = [];
  for (let k = 0; k < RAYS; k++) {
    const found = nearest(k);
    if (found !== null && Math.abs(found.off) < near) sharp.push(found.edge.sharp);
  }
  if (sharp.length < FEWEST_RAYS || !(r > 0)) return null;
  const worth = sharp.length - RAYS_PER_SIZE * Math.abs(r / expected - 1);
  return { x: dx, y: dy, radius: r, sharp, worth };
}
