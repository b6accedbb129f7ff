import { type GreyFrame, isFilmed } from '../core/frame';
import type { Shape } from './ballShape';
import type { Disc } from './discModel';
import { hiddenPixels } from './hiddenPixels';
import { RAYS, sectorOf } from './outline';
import type { Background, BallModel } from './types';

/** Half-width of the band around the outline, beyond the spread by its blur, that is looked at in full: px, and in standard deviations of the edge's blur. */
const EDGE_BAND = 1;
const EDGE_BAND_SIGMAS = 3;
/** Of more edge pixels than this every other one is used. */
const MANY_EDGE_PIXELS = 12_000;
/** A disc with more pixels than this is sampled inside: the middle only gives the brightness. */
const MANY_INNER_PIXELS = 600;
/** Of more edge pixels than this a share is enough to find the way to the disc. */
const MANY_TO_OPEN = 2000;
const OPENING_SHARE = 1 / 4;
/** Within this share of the radius a pixel is ball whatever the sector of the outline it lies in shows. */
export const CORE = 0.35;
/** A sector with more than this share of its pixels thrown out does not show the outline. */
const HIDDEN_SHARE = 0.3;
/** Of a sector at least this share of its pixels must not be known to be hidden. */
const LEAST_OPEN = 0.4;
/**
 * A sector shows the outline where the ball explains it better than the bare background, by at least this
 * share of what the model has them differ by, and where they do differ by this many variances of the noise.
 */
const BETTER = 0.4;
const LEAST_DIFFERENCE = 12;
/** Weight below which a pixel counts as thrown out. */
const OUT = 0.3;

/** Along the outline, px, next to a sector that does not show it: what stands there covers a little of it here too. */
const BESIDE_HIDDEN = 1;

/** Slope of the scene, standard deviations of the noise a pixel, from which on its own edge is looked at. */
const STEEP = 3;

/**
 * Whether the scene has an edge of its own at a pixel. Blurred together, two edges that meet are not what each of
 * them blurred gives by itself; the difference grows as the product of their slopes and then exceeds the noise.
 */
function hasEdge(
  { width, height }: GreyFrame,
  { level, noise }: Background,
  gain: number,
  px: number,
  py: number,
): boolean {
  const at = (x: number, y: number) =>
    level[
      Math.min(height - 1, Math.max(0, y)) * width + Math.min(width - 1, Math.max(0, x))
    ] as number;
  const across = at(px + 1, py) - at(px - 1, py);
  const down = at(px, py + 1) - at(px, py - 1);
  const variance = noise.readVariance + noise.gain * Math.max(0, gain * at(px, py));
  return (gain * gain * (across * across + down * down)) / 4 > STEEP * STEEP * variance;
}

/** Sectors that show the outline of a ball of this radius and have none that does not close beside them. */
export function awayFromHidden(seen: Uint8Array, radius: number): Uint8Array {
  const beside = Math.ceil((BESIDE_HIDDEN * RAYS) / (2 * Math.PI * radius));
  return seen.map((_, s) => {
    for (let k = -beside; k <= beside; k++) if (seen[(s + k + RAYS) % RAYS] === 0) return 0;
    return 1;
  });
}

/** Pixels that may tell of the ball, as parallel arrays. */
export interface DiscPixels {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly value: Float64Array;
  readonly background: Float64Array;
  readonly sector: Uint8Array;
  /** 1 on the soft edge, where the outline is told from. */
  readonly edge: Uint8Array;
  /** 1 where the pixel counts: in a sector that shows the outline, or in the disc's core. */
  readonly used: Uint8Array;
  /** 1 where something else stands before the ball or beside it. */
  readonly hidden: Uint8Array;
  readonly count: number;
  /** Only a share of them, enough to find the way to the disc. */
  readonly coarse: boolean;
  /** Index of each pixel of the box `columns` wide that all lie in, row by row; -1: not among them. */
  readonly place: Int32Array;
  readonly columns: number;
}

/** Half-width of the band around the outline, px, besides the spread by its blur. */
export const bandWidth = ({ sigma }: Pick<Disc, 'sigma'>): number =>
  EDGE_BAND + EDGE_BAND_SIGMAS * sigma;

/**
 * Pixels of the disc and of the band around its outline, with the sectors of the outline that count. `toOpen`: a fit only
 * has to find its way yet, and of many pixels a few will do.
 */
export function gatherPixels(
  frame: GreyFrame,
  scene: Background,
  gain: number,
  disc: Disc,
  seen: Uint8Array,
  ball: BallModel,
  [a, b, c, d]: Shape,
  toOpen: boolean,
): DiscPixels {
  const { level, faulty } = scene;
  const { radius, blur } = ball;
  // Area of the band: its length times its mean width (the mean of |cos| is 2 / pi).
  const spreadWidth = (2 / Math.PI) * Math.hypot(blur[0], blur[1]);
  const band = bandWidth(disc);
  const edgePixels = 2 * Math.PI * radius * (2 * band + spreadWidth);
  const thin = edgePixels > MANY_EDGE_PIXELS;
  // Of a field every other line is left out anyway.
  const whole = frame.filmed === undefined;
  const sampled = whole && Math.PI * radius * radius > MANY_INNER_PIXELS;
  const coarse = toOpen && whole && edgePixels > MANY_TO_OPEN;
  // The shape stretches by a few per cent at most.
  const halfX = Math.ceil(1.08 * radius + Math.abs(blur[0]) / 2 + band);
  const halfY = Math.ceil(1.08 * radius + Math.abs(blur[1]) / 2 + band);
  const x0 = Math.max(0, Math.floor(disc.x) - halfX);
  const x1 = Math.min(frame.width - 1, Math.ceil(disc.x) + halfX);
  const y0 = Math.max(0, Math.floor(disc.y) - halfY);
  const y1 = Math.min(frame.height - 1, Math.ceil(disc.y) + halfY);
  const most = Math.max(0, x1 - x0 + 1) * Math.max(0, y1 - y0 + 1);
  const x = new Float64Array(most);
  const y = new Float64Array(most);
  const value = new Float64Array(most);
  const background = new Float64Array(most);
  const sector = new Uint8Array(most);
  const edge = new Uint8Array(most);
  const used = new Uint8Array(most);
  const hidden = new Uint8Array(most);
  const covered = hiddenPixels(frame, scene, gain, disc, ball, [a, b, c, d], band);
  const place = new Int32Array(most).fill(-1);
  const columns = Math.max(0, x1 - x0 + 1);
  let n = 0;
  for (let py = y0; py <= y1; py++) {
    for (let px = x0; px <= x1; px++) {
      const ox = px - disc.x;
      const oy = py - disc.y;
      const qx = a * ox + b * oy;
      const qy = c * ox + d * oy;
      const r = Math.sqrt(qx * qx + qy * qy);
      const spread = r > 0 ? Math.abs(qx * blur[0] + qy * blur[1]) / (2 * r) : 0;
      const onEdge = Math.abs(r - radius) - spread < band;
      if (!onEdge && r > radius) continue;
      if (onEdge && (coarse ? ((px | py) & 1) === 1 : thin && ((px + py) & 1) === 1)) continue;
      if (!onEdge && sampled && ((px | py) & (coarse ? 3 : 1)) !== 0) continue;
      if (!isFilmed(frame, px, py)) continue;
      const s = sectorOf(qx, qy);
      const p = py * frame.width + px;
      if (faulty !== undefined && faulty[p] === 1) continue;
      x[n] = px;
      y[n] = py;
      value[n] = frame.data[p] as number;
      background[n] = gain * (level[p] as number);
      sector[n] = s;
      edge[n] = onEdge ? 1 : 0;
      hidden[n] = covered.at(px, py) ? 1 : 0;
      const inSight = seen[s] === 1 || r < CORE * radius;
      const told = hidden[n] === 0 && !(onEdge && hasEdge(frame, scene, gain, px, py));
      used[n] = inSight && told ? 1 : 0;
      place[(py - y0) * columns + px - x0] = n;
      n++;
    }
  }
  return { x, y, value, background, sector, edge, used, hidden, count: n, coarse, place, columns };
}

/**
 * Takes the pixels beside the thrown-out ones of a closed group out as well: where something stands
 * before the ball, the pixels along its border are part it and part ball. One pixel alone is noise.
 */
export function spreadThrownOut(
  { place, columns }: DiscPixels,
  weights: Float64Array,
  out: Float64Array,
): void {
  out.set(weights);
  const around = [-columns - 1, -columns, -columns + 1, -1, 1, columns - 1, columns, columns + 1];
  for (let q = columns + 1; q < place.length - columns - 1; q++) {
    const i = place[q] as number;
    if (i < 0 || (weights[i] as number) > 0) continue;
    let company = 0;
    for (const step of around) {
      const j = place[q + step] as number;
      if (j >= 0 && (weights[j] as number) === 0) company++;
    }
    if (company < 3) continue;
    for (const step of around) {
      const j = place[q + step] as number;
      if (j >= 0) out[j] = 0;
    }
  }
}

/**
 * Sectors that show the outline by the fitted model: most of their edge pixels keep their weight, and,
 * with their neighbours, the ball explains them better than the bare background does, which also fits
 * where the ball is hidden or hardly differs from it.
 */
export function sectorsShown(
  pixels: DiscPixels,
  residuals: Float64Array,
  variance: Float64Array,
  weights: Float64Array,
): Uint8Array {
  const kept = new Float64Array(RAYS);
  const open = new Float64Array(RAYS);
  const all = new Float64Array(RAYS);
  const better = new Float64Array(RAYS);
  const differs = new Float64Array(RAYS);
  for (let i = 0; i < pixels.count; i++) {
    if (pixels.edge[i] === 0) continue;
    const s = pixels.sector[i] as number;
    const residual = residuals[i] as number;
    const change = (pixels.value[i] as number) - (pixels.background[i] as number);
    const v = variance[i] as number;
    all[s] = (all[s] as number) + 1;
    if (pixels.hidden[i] === 1) continue;
    open[s] = (open[s] as number) + 1;
    if ((weights[i] as number) >= OUT) kept[s] = (kept[s] as number) + 1;
    better[s] = (better[s] as number) + (change * change - residual * residual) / v;
    differs[s] = (differs[s] as number) + (change - residual) ** 2 / v;
  }
  const shown = new Uint8Array(RAYS);
  const least = (pixels.coarse ? OPENING_SHARE : 1) * LEAST_DIFFERENCE;
  const around = (of: Float64Array, s: number) =>
    (of[s] as number) + (of[(s + 1) % RAYS] as number) + (of[(s + RAYS - 1) % RAYS] as number);
  for (let s = 0; s < RAYS; s++) {
    const total = all[s] as number;
    // What is known to be hidden is left out anyway; the rest must be enough to tell.
    const agrees =
      (kept[s] as number) >= (1 - HIDDEN_SHARE) * (open[s] as number) &&
      (open[s] as number) >= LEAST_OPEN * total;
    const difference = around(differs, s);
    const explained = around(better, s) > BETTER * difference && difference > least;
    const alone = (better[s] as number) > -BETTER * (differs[s] as number);
    if (total > 0 && agrees && explained && alone) shown[s] = 1;
  }
  return shown;
}

/**
 * Share of the used edge pixels that were thrown out. Beside sectors that do not show the outline some
 * must be; they do not count.
 */
export function shareThrownOut(
  pixels: DiscPixels,
  weights: Float64Array,
  seen: Uint8Array,
): number {
  let all = 0;
  let out = 0;
  for (let i = 0; i < pixels.count; i++) {
    if (pixels.edge[i] === 0 || pixels.used[i] === 0) continue;
    const s = pixels.sector[i] as number;
    all++;
    const within = seen[(s + 1) % RAYS] === 1 && seen[(s + RAYS - 1) % RAYS] === 1;
    if (within && (weights[i] as number) < OUT) out++;
  }
  return all > 0 ? out / all : 1;
}
