import type { Shape } from './ballShape';
import type { Shading } from './discShade';
import {
  COVER,
  DENSITY,
  EDGE_REACH,
  GAUSS,
  ROOT,
  ROOT_SLOPE,
  TABLE_SIZE,
  TABLE_STEP,
} from './discTables';

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

/** Gauss nodes over a stretch of the path well inside the disc, where only the shading changes. */
const INNER_NODES = 4;
/** Over a stretch across the soft edge. */
const EDGE_NODES = 9;

/** A pixel's way past the disc: along (ux, uy) from the disc's middle, `h` beside it, `length` about `s0`. */
interface Path {
  readonly ux: number;
  readonly uy: number;
  readonly s0: number;
  readonly h: number;
  readonly length: number;
}

/**
 * Image of a shaded disc moved along its blur while the shutter is open, at one pixel:
 * value = background + mean over the exposure of cover * (brightness - background), with derivatives.
 */
export class DiscModel {
  readonly parameters: number;
  /** Share of the last pixel asked for that the ball covered, over the exposure. */
  cover = 0;
  private readonly by: Float64Array;
  private readonly slope = new Float64Array(3);
  /** Sums over the path: value, its slopes by the pixel's place, by radius, sigma and stretch. */
  private value = 0;
  private alongX = 0;
  private alongY = 0;
  private byRadius = 0;
  private bySigma = 0;
  private byStretch = 0;

  constructor(
    private readonly shape: Shape,
    private readonly blur: readonly [number, number],
    private readonly shading: Shading,
  ) {
    this.parameters = GEOMETRY + shading.terms;
    this.by = new Float64Array(shading.terms);
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
    const [a, b, c, d] = this.shape;
    const ox = px - disc.x;
    const oy = py - disc.y;
    const qx = a * ox + b * oy;
    const qy = c * ox + d * oy;
    for (let j = 0; j < this.parameters; j++) gradient[offset + j] = 0;
    this.value = background;
    this.cover = 0;
    this.alongX = 0;
    this.alongY = 0;
    this.byRadius = 0;
    this.bySigma = 0;
    this.byStretch = 0;
    const length = Math.hypot(this.blur[0], this.blur[1]) * disc.stretch;
    if (length < 1e-3) {
      this.add(qx, qy, 0, 1, background, disc, gradient, offset + GEOMETRY);
    } else {
      this.sweep(qx, qy, length, background, disc, gradient, offset + GEOMETRY);
    }
    gradient[offset] = -(a * this.alongX + c * this.alongY);
    gradient[offset + 1] = -(b * this.alongX + d * this.alongY);
    gradient[offset + 2] = this.byRadius;
    gradient[offset + 3] = this.bySigma;
    gradient[offset + 4] = this.byStretch;
    return this.value;
  }

  /** Means over the exposure, piece by piece of the path: on the edge, inside, on the edge again. */
  private sweep(
    qx: number,
    qy: number,
    length: number,
    background: number,
    disc: Disc,
    gradient: Float64Array,
    offset: number,
  ): void {
    const { radius, sigma, stretch } = disc;
    const ux = (this.blur[0] * stretch) / length;
    const uy = (this.blur[1] * stretch) / length;
    // The disc passes the pixel: seen from the disc the pixel moves along s at the distance h beside its middle.
    const s0 = qx * ux + qy * uy;
    const h = qy * ux - qx * uy;
    const far = radius + EDGE_REACH * sigma;
    const near = Math.max(0, radius - EDGE_REACH * sigma);
    if (Math.abs(h) >= far) return;
    const out = Math.sqrt(far * far - h * h);
    const inner = Math.abs(h) < near ? Math.sqrt(near * near - h * h) : 0;
    const path: Path = { ux, uy, s0, h, length };
    if (inner > 0) {
      this.piece(-out, -inner, EDGE_NODES, path, background, disc, gradient, offset);
      this.piece(-inner, inner, INNER_NODES, path, background, disc, gradient, offset);
      this.piece(inner, out, EDGE_NODES, path, background, disc, gradient, offset);
    } else {
      this.piece(-out, 0, EDGE_NODES, path, background, disc, gradient, offset);
      this.piece(0, out, EDGE_NODES, path, background, disc, gradient, offset);
    }
  }

  /** The part of the path between `low` and `high`; a part of that needs only its part of the nodes. */
  private piece(
    low: number,
    high: number,
    nodes: number,
    { ux, uy, s0, h, length }: Path,
    background: number,
    disc: Disc,
    gradient: Float64Array,
    offset: number,
  ): void {
    const from = Math.max(low, s0 - length / 2);
    const to = Math.min(high, s0 + length / 2);
    if (from >= to) return;
    const most = Math.max(2, Math.ceil(((to - from) / (high - low)) * nodes));
    const { node, weight } = GAUSS[most] as (typeof GAUSS)[number];
    for (let k = 0; k < node.length; k++) {
      const s = from + (to - from) * (node[k] as number);
      const w = ((weight[k] as number) * (to - from)) / length;
      const x = s * ux - h * uy;
      const y = s * uy + h * ux;
      this.add(x, y, (s0 - s) / length, w, background, disc, gradient, offset);
    }
  }

  /** Adds one instant: the pixel stands at (x, y) from the disc's middle at the time `t` (-1/2..1/2) of the exposure. */
  private add(
    x: number,
    y: number,
    t: number,
    weight: number,
    background: number,
    disc: Disc,
    gradient: Float64Array,
    offset: number,
  ): void {
    const { radius, sigma, shade } = disc;
    const { by, slope } = this;
    const distance = Math.sqrt(x * x + y * y);
    const z = (radius - distance) / sigma;
    if (z <= -EDGE_REACH) return;
    const cx = distance > 0 ? x / distance : 1;
    const cy = distance > 0 ? y / distance : 0;
    let cover = 1;
    let density = 0;
    let inner: number;
    let innerSlope: number;
    let depth: number;
    let depthSlope: number;
    let spread = 0;
    if (z < EDGE_REACH) {
      const at = (z + EDGE_REACH) / TABLE_STEP;
      const i = Math.min(TABLE_SIZE - 2, Math.floor(at));
      const f = at - i;
      cover = (COVER[i] as number) * (1 - f) + (COVER[i + 1] as number) * f;
      density = (DENSITY[i] as number) * (1 - f) + (DENSITY[i + 1] as number) * f;
      const root = (ROOT[i] as number) * (1 - f) + (ROOT[i + 1] as number) * f;
      const rootSlope = (ROOT_SLOPE[i] as number) * (1 - f) + (ROOT_SLOPE[i + 1] as number) * f;
      // What the blur gathers of the disc lies, in the mean, this much further in than the pixel;
      // brightness goes as the root of the depth there, so its mean has a table of its own.
      const further = density / cover;
      inner = Math.max(0, (distance - sigma * further) / radius);
      innerSlope = (1 - further * (z + further)) / radius;
      const scale = Math.sqrt((sigma / radius) * (1 + inner));
      depth = root * scale;
      spread = Math.sqrt(Math.max(0, z + further - root * root)) * scale;
      depthSlope =
        (-rootSlope / sigma) * scale + (root * (sigma / radius) * innerSlope) / (2 * scale);
    } else {
      inner = distance / radius;
      innerSlope = 1 / radius;
      depth = Math.sqrt(1 - inner * inner);
      depthSlope = -inner / (radius * depth);
    }
    const bright = this.shading.at(cx * inner, cy * inner, depth, spread, shade, by, slope);
    const contrast = bright - background;
    const su = slope[0] as number;
    const sv = slope[1] as number;
    const edge = (weight * contrast * density) / sigma;
    const share = weight * cover;
    const shadeOut = share * ((su * cx + sv * cy) * innerSlope + (slope[2] as number) * depthSlope);
    const out = shadeOut - edge;
    const round =
      distance > 0 ? (share * (sv * cx - su * cy) * inner) / distance : (share * sv) / radius;
    const gx = out * cx - round * cy;
    const gy = out * cy + round * cx;
    this.cover += share;
    this.value += share * contrast;
    this.alongX += gx;
    this.alongY += gy;
    this.byRadius += edge - (shadeOut * distance) / radius;
    this.bySigma -= edge * z;
    this.byStretch -= t * (gx * this.blur[0] + gy * this.blur[1]);
    for (let j = 0; j < by.length; j++) {
      gradient[offset + j] = (gradient[offset + j] as number) + share * (by[j] as number);
    }
  }
}
