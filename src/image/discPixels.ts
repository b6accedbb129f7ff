import type { GreyFrame } from '../core/frame';
import type { Shape } from './ballShape';
import type { Disc } from './discModel';
import { RAYS } from './outline';
import type { Background, BallModel } from './types';

/** Half-width of the band around the outline, beyond the spread by its blur, that is looked at in full, px. */
const EDGE_BAND = 4;
/** Of more edge pixels than this every other one is used: neighbours tell much the same. */
const MANY_EDGE_PIXELS = 3000;
/** Within this share of the radius a pixel is ball whatever the sector of the outline it lies in shows. */
const CORE = 0.35;
/** A sector with more than this share of its pixels thrown out does not show the outline. */
const HIDDEN_SHARE = 0.3;
/** A sector shows the outline only where the ball explains it so much better than the bare background. */
const BETTER = 0.35;
/** Weight below which a pixel counts as thrown out. */
const OUT = 0.3;

/** Pixels that may tell of the ball, as parallel arrays. */
export interface DiscPixels {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly value: Float64Array;
  readonly background: Float64Array;
  readonly variance: Float64Array;
  readonly sector: Uint8Array;
  /** 1 on the soft edge, where the outline is told from. */
  readonly edge: Uint8Array;
  /** 1 where the pixel counts: in a sector that shows the outline, or in the disc's core. */
  readonly used: Uint8Array;
  readonly count: number;
}

/** Pixels of the disc and of the band around its outline, with the sectors of the outline that count. */
export function gatherPixels(
  frame: GreyFrame,
  { level, noise }: Background,
  gain: number,
  disc: Disc,
  seen: Uint8Array,
  ball: BallModel,
  [a, b, c, d]: Shape,
): DiscPixels {
  const { radius, blur } = ball;
  // Area of the band: its length times its mean width (the mean of |cos| is 2 / pi).
  const spreadWidth = (2 / Math.PI) * Math.hypot(blur[0], blur[1]);
  const thin = 2 * Math.PI * radius * (2 * EDGE_BAND + spreadWidth) > MANY_EDGE_PIXELS;
  // The shape stretches by a few per cent at most.
  const halfX = Math.ceil(1.08 * radius + Math.abs(blur[0]) / 2 + EDGE_BAND);
  const halfY = Math.ceil(1.08 * radius + Math.abs(blur[1]) / 2 + EDGE_BAND);
  const x0 = Math.max(0, Math.floor(disc.x) - halfX);
  const x1 = Math.min(frame.width - 1, Math.ceil(disc.x) + halfX);
  const y0 = Math.max(0, Math.floor(disc.y) - halfY);
  const y1 = Math.min(frame.height - 1, Math.ceil(disc.y) + halfY);
  const most = Math.max(0, x1 - x0 + 1) * Math.max(0, y1 - y0 + 1);
  const x = new Float64Array(most);
  const y = new Float64Array(most);
  const value = new Float64Array(most);
  const background = new Float64Array(most);
  const variance = new Float64Array(most);
  const sector = new Uint8Array(most);
  const edge = new Uint8Array(most);
  const used = new Uint8Array(most);
  let n = 0;
  for (let py = y0; py <= y1; py++) {
    for (let px = x0; px <= x1; px++) {
      const ox = px - disc.x;
      const oy = py - disc.y;
      const qx = a * ox + b * oy;
      const qy = c * ox + d * oy;
      const r = Math.sqrt(qx * qx + qy * qy);
      const spread = r > 0 ? Math.abs(qx * blur[0] + qy * blur[1]) / (2 * r) : 0;
      const onEdge = Math.abs(r - radius) - spread < EDGE_BAND;
      if (!onEdge && r > radius) continue;
      if (onEdge && thin && ((px + py) & 1) === 1) continue;
      // The middle only gives the brightness; a quarter of its pixels does.
      if (!onEdge && ((px | py) & 1) === 1) continue;
      const s = Math.round((Math.atan2(qy, qx) / (2 * Math.PI)) * RAYS + RAYS) % RAYS;
      const p = py * frame.width + px;
      x[n] = px;
      y[n] = py;
      value[n] = frame.data[p] as number;
      background[n] = gain * (level[p] as number);
      variance[n] = noise.readVariance + noise.gain * (value[n] as number);
      sector[n] = s;
      edge[n] = onEdge ? 1 : 0;
      used[n] = seen[s] === 1 || r < CORE * radius ? 1 : 0;
      n++;
    }
  }
  return { x, y, value, background, variance, sector, edge, used, count: n };
}

/**
 * Sectors that show the outline by the fitted model: most of their edge pixels keep their weight, and
 * the ball explains them far better than the bare background does, which also fits where the ball is
 * hidden or hardly differs from it.
 */
export function sectorsShown(
  pixels: DiscPixels,
  residuals: Float64Array,
  weights: Float64Array,
): Uint8Array {
  const kept = new Float64Array(RAYS);
  const all = new Float64Array(RAYS);
  const withBall = new Float64Array(RAYS);
  const without = new Float64Array(RAYS);
  for (let i = 0; i < pixels.count; i++) {
    if (pixels.edge[i] === 0) continue;
    const s = pixels.sector[i] as number;
    const change = (pixels.value[i] as number) - (pixels.background[i] as number);
    all[s] = (all[s] as number) + 1;
    if ((weights[i] as number) >= OUT) kept[s] = (kept[s] as number) + 1;
    withBall[s] = (withBall[s] as number) + (residuals[i] as number) ** 2;
    without[s] = (without[s] as number) + change * change;
  }
  const shown = new Uint8Array(RAYS);
  for (let s = 0; s < RAYS; s++) {
    const total = all[s] as number;
    const agrees = (kept[s] as number) >= (1 - HIDDEN_SHARE) * total;
    const better = (withBall[s] as number) < BETTER * (without[s] as number);
    if (total > 0 && agrees && better) shown[s] = 1;
  }
  return shown;
}

/** Share of the used edge pixels that were thrown out. */
export function shareThrownOut(pixels: DiscPixels, weights: Float64Array): number {
  let all = 0;
  let out = 0;
  for (let i = 0; i < pixels.count; i++) {
    if (pixels.edge[i] === 0 || pixels.used[i] === 0) continue;
    all++;
    if ((weights[i] as number) < OUT) out++;
  }
  return all > 0 ? out / all : 1;
}
