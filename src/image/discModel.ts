import type { Shape } from './ballShape';
import { placesFor, type Shading } from './discShade';
import { EDGE, EDGE_COLUMNS, EDGE_REACH, GAUSS, TABLE_SIZE, TABLE_STEP } from './discTables';

/** Parameters besides the shading's: middle x, y, radius, softness of the edge, length of the motion blur. */
export const GEOMETRY = 5;

export interface Disc {
  x: number;
  y: number;
  radius: number;
  /** Standard deviation of the edge's blur, pixel and optics together, px. */
  sigma: number;
  /** Motion blur as a multiple of the expected one. */
  stretch: number;
  /** Parameters of the shading. */
  readonly shade: Float64Array;
}

/**
 * Gauss nodes over the path through the disc well inside it, where only the shading changes: enough that
 * the edge of a shadow, a kink, draws the middle by less than 1e-3 px (by 8e-3 px with four).
 */
const INNER_NODES = 8;
/** Over a stretch across the soft edge: the middle within 3e-5 px. */
const EDGE_NODES = 8;
const MOST_NODES = INNER_NODES + 2 * EDGE_NODES;

/**
 * Image of a shaded disc moved along its blur while the shutter is open, at one pixel:
 * value = background + mean over the exposure of cover * (brightness - background), with derivatives.
 * Most of a fit's time is spent here: nothing is allocated, and numbers pass from step to step in arrays.
 */
export class DiscModel {
  readonly parameters: number;
  /** Share of the last pixel asked for that the ball covered, over the exposure. */
  cover = 0;
  /** Instants: where the pixel stands from the disc's middle, the time (-1/2..1/2) of the exposure, the weight in the mean. */
  private readonly x = new Float64Array(MOST_NODES);
  private readonly y = new Float64Array(MOST_NODES);
  private readonly time = new Float64Array(MOST_NODES);
  private readonly weight = new Float64Array(MOST_NODES);
  /** What of them lies on the disc, and what the shading is to be told of it. */
  private readonly places = placesFor(MOST_NODES);
  /** Direction from the middle, distance, and slopes of the normal and its depth along it. */
  private readonly outX = new Float64Array(MOST_NODES);
  private readonly outY = new Float64Array(MOST_NODES);
  private readonly distance = new Float64Array(MOST_NODES);
  private readonly inner = new Float64Array(MOST_NODES);
  private readonly innerSlope = new Float64Array(MOST_NODES);
  private readonly depthSlope = new Float64Array(MOST_NODES);
  /** Change of the cover by the distance, times the weight, and by sigma as a multiple of the former. */
  private readonly rim = new Float64Array(MOST_NODES);
  private readonly softening = new Float64Array(MOST_NODES);

  constructor(
    private readonly shape: Shape,
    private readonly blur: readonly [number, number],
    private readonly shading: Shading,
  ) {
    this.parameters = GEOMETRY + shading.terms;
  }

  /**
   * Value at the pixel (px, py) over a background of this level. Its derivatives by x, y, radius, sigma,
   * stretch and the shading's parameters go into `gradient` from `offset` on.
   */
  at(
    px: number,
    py: number,
    background: number,
    disc: Disc,
    gradient: Float64Array,
    offset: number,
  ): number {
    const { shape, blur, places, outX, outY, distance, inner, innerSlope, depthSlope, rim } = this;
    const { share, bright, alongU, alongV, alongW } = places;
    const a = shape[0];
    const b = shape[1];
    const c = shape[2];
    const d = shape[3];
    const ox = px - disc.x;
    const oy = py - disc.y;
    const n = this.place(this.pass(a * ox + b * oy, c * ox + d * oy, disc), disc);
    this.shading.over(places, n, disc.shade, gradient, offset + GEOMETRY);
    const { radius } = disc;
    let cover = 0;
    let value = background;
    let alongX = 0;
    let alongY = 0;
    let byRadius = 0;
    let bySigma = 0;
    let byStretch = 0;
    for (let k = 0; k < n; k++) {
      const m = share[k] as number;
      const contrast = (bright[k] as number) - background;
      const cx = outX[k] as number;
      const cy = outY[k] as number;
      const r = distance[k] as number;
      const su = alongU[k] as number;
      const sv = alongV[k] as number;
      const edge = (rim[k] as number) * contrast;
      const shadeOut =
        m *
        ((su * cx + sv * cy) * (innerSlope[k] as number) +
          (alongW[k] as number) * (depthSlope[k] as number));
      const out = shadeOut - edge;
      const round =
        r > 0 ? (m * (sv * cx - su * cy) * (inner[k] as number)) / r : (m * sv) / radius;
      const gx = out * cx - round * cy;
      const gy = out * cy + round * cx;
      cover += m;
      value += m * contrast;
      alongX += gx;
      alongY += gy;
      byRadius += edge - (shadeOut * r) / radius;
      bySigma -= edge * (this.softening[k] as number);
      byStretch -= (this.time[k] as number) * (gx * blur[0] + gy * blur[1]);
    }
    this.cover = cover;
    gradient[offset] = -(a * alongX + c * alongY);
    gradient[offset + 1] = -(b * alongX + d * alongY);
    gradient[offset + 2] = byRadius;
    gradient[offset + 3] = bySigma;
    gradient[offset + 4] = byStretch;
    return value;
  }

  /**
   * Lays instants over the exposure for a pixel at (qx, qy) from the disc's middle, piece by piece of its
   * path: on the edge, inside, on the edge again. Returns their number.
   */
  private pass(qx: number, qy: number, { radius, sigma, stretch }: Disc): number {
    const { x, y, time, weight, blur } = this;
    const length = Math.sqrt(blur[0] * blur[0] + blur[1] * blur[1]) * stretch;
    if (length < 1e-3) {
      x[0] = qx;
      y[0] = qy;
      time[0] = 0;
      weight[0] = 1;
      return 1;
    }
    const ux = (blur[0] * stretch) / length;
    const uy = (blur[1] * stretch) / length;
    // The disc passes the pixel: seen from the disc the pixel moves along s at the distance h beside its middle.
    const s0 = qx * ux + qy * uy;
    const h = qy * ux - qx * uy;
    const far = radius + EDGE_REACH * sigma;
    const near = Math.max(0, radius - EDGE_REACH * sigma);
    if (Math.abs(h) >= far) return 0;
    const out = Math.sqrt(far * far - h * h);
    const inner = Math.abs(h) < near ? Math.sqrt(near * near - h * h) : 0;
    let n = 0;
    for (let piece = 0; piece < 3; piece++) {
      const low = piece === 0 ? -out : piece === 1 ? -inner : inner;
      const high = piece === 0 ? -inner : piece === 1 ? inner : out;
      const from = Math.max(low, s0 - length / 2);
      const to = Math.min(high, s0 + length / 2);
      if (from >= to) continue;
      // A part of a piece needs only its part of the nodes.
      const nodes = piece === 1 ? INNER_NODES : EDGE_NODES;
      const most = Math.max(2, Math.ceil(((to - from) / (high - low)) * nodes));
      const gauss = GAUSS[most] as (typeof GAUSS)[number];
      for (let k = 0; k < most; k++) {
        const s = from + (to - from) * (gauss.node[k] as number);
        x[n] = s * ux - h * uy;
        y[n] = s * uy + h * ux;
        time[n] = (s0 - s) / length;
        weight[n] = ((gauss.weight[k] as number) * (to - from)) / length;
        n++;
      }
    }
    return n;
  }

  /** Finds the places on the disc of the first `count` instants; those off it are dropped. Returns how many are left. */
  private place(count: number, { radius, sigma }: Disc): number {
    const { x, y, time, weight, outX, outY, distance, inner, innerSlope, depthSlope } = this;
    const { rim, softening } = this;
    const { u, v, w, spread, share } = this.places;
    // Another module's names are looked up at every use where the loader keeps modules apart.
    const [edges, columns, reach, step] = [EDGE, EDGE_COLUMNS, EDGE_REACH, TABLE_STEP];
    const lastRow = TABLE_SIZE - 2;
    const perRadius = 1 / radius;
    const perSigma = 1 / sigma;
    const softness = sigma * perRadius;
    // Of a round edge the blur gathers more from without than from within: half of it is reached this far inside.
    const inset = softness / 2;
    let n = 0;
    for (let k = 0; k < count; k++) {
      const r = Math.sqrt(
        (x[k] as number) * (x[k] as number) + (y[k] as number) * (y[k] as number),
      );
      const z = (radius - r) * perSigma - inset;
      if (z <= -reach) continue;
      const cx = r > 0 ? (x[k] as number) / r : 1;
      const cy = r > 0 ? (y[k] as number) / r : 0;
      const m = weight[k] as number;
      let at: number;
      if (z < reach) {
        const row = (z + reach) / step;
        const i = Math.min(lastRow, Math.floor(row));
        const f = row - i;
        const e = columns * i;
        const next = e + columns;
        const g = 1 - f;
        const further = (edges[e + 2] as number) * g + (edges[next + 2] as number) * f;
        const root = (edges[e + 3] as number) * g + (edges[next + 3] as number) * f;
        const rootSlope = (edges[e + 4] as number) * g + (edges[next + 4] as number) * f;
        const rootSpread = (edges[e + 5] as number) * g + (edges[next + 5] as number) * f;
        share[n] = m * ((edges[e] as number) * g + (edges[next] as number) * f);
        rim[n] = m * perSigma * ((edges[e + 1] as number) * g + (edges[next + 1] as number) * f);
        // What the blur gathers of the disc lies, in the mean, this much further in than the pixel;
        // brightness goes as the root of the depth there, so its mean has a table of its own.
        at = Math.max(0, (r - sigma * further) * perRadius);
        const slope = (1 - further * (z + further)) * perRadius;
        const scale = Math.sqrt(softness * (1 + at));
        innerSlope[n] = slope;
        depthSlope[n] = (root * softness * slope) / (2 * scale) - rootSlope * perSigma * scale;
        w[n] = root * scale;
        spread[n] = rootSpread * scale;
      } else {
        at = r * perRadius;
        const deep = Math.sqrt(1 - at * at);
        share[n] = m;
        rim[n] = 0;
        innerSlope[n] = perRadius;
        depthSlope[n] = (-at * perRadius) / deep;
        w[n] = deep;
        spread[n] = 0;
      }
      inner[n] = at;
      u[n] = cx * at;
      v[n] = cy * at;
      outX[n] = cx;
      outY[n] = cy;
      distance[n] = r;
      softening[n] = z + softness;
      // Dropped ones only ever come before it: k is never behind n.
      time[n] = time[k] as number;
      n++;
    }
    return n;
  }
}
