import type { Shape } from './ballShape';

/**
 * Terms of the ball's brightness over its disc: the spherical harmonics to order two of its surface
 * normal, which hold a matt sphere under any lighting to a few per cent (Basri and Jacobs, IEEE Trans.
 * Pattern Anal. Mach. Intell. 25 (2003) 218).
 */
export const TERMS = 9;
/** Nonlinear parameters: middle x, y, radius, blur of the edge. */
export const GEOMETRY = 4;
export const PARAMETERS = GEOMETRY + TERMS;

/** Beyond this many standard deviations of the edge's blur a pixel is all ball or all background. */
const EDGE_REACH = 3.5;

export interface Disc {
  x: number;
  y: number;
  radius: number;
  /** Standard deviation of the edge's blur, pixel and optics together, px. */
  sigma: number;
  /** Brightness terms. */
  readonly shade: Float64Array;
}

/**
 * Image of a shaded disc moved along its blur while the shutter is open, at one pixel:
 * value = (1 - cover) * background + sum of shade terms, with derivatives.
 */
export class DiscModel {
  /** Derivatives of the pixel's value by x, y, radius, sigma and the shade terms. */
  readonly gradient = new Float64Array(PARAMETERS);
  private readonly terms = new Float64Array(TERMS);
  private readonly steps: number;

  constructor(
    private readonly shape: Shape,
    private readonly blur: readonly [number, number],
    sigma: number,
  ) {
    // Instants so close that the soft edge joins them up.
    this.steps = Math.max(1, Math.ceil(Math.hypot(blur[0], blur[1]) / (1.4 * sigma)));
  }

  /** Value at the pixel (px, py) over a background of this level; fills `gradient`. */
  at(px: number, py: number, background: number, disc: Disc): number {
    const [a, b, c, d] = this.shape;
    const { radius, sigma, shade } = disc;
    const { gradient, terms, steps } = this;
    const ox = px - disc.x;
    const oy = py - disc.y;
    const qx = a * ox + b * oy;
    const qy = c * ox + d * oy;
    gradient.fill(0);
    const weight = 1 / steps;
    let value = background;
    let gx = 0;
    let gy = 0;
    for (let k = 0; k < steps; k++) {
      const t = (k + 0.5) * weight - 0.5;
      const x = qx - t * this.blur[0];
      const y = qy - t * this.blur[1];
      const distance = Math.sqrt(x * x + y * y);
      const z = (radius - distance) / sigma;
      if (z < -EDGE_REACH) continue;
      harmonics(x / radius, y / radius, terms);
      let bright = 0;
      for (let j = 0; j < TERMS; j++) bright += (shade[j] as number) * (terms[j] as number);
      const contrast = (bright - background) * weight;
      let cover = 1;
      if (z < EDGE_REACH) {
        cover = normalCdf(z);
        const slope = (contrast * 0.3989422804014327 * Math.exp(-0.5 * z * z)) / sigma;
        gx += (slope * x) / distance;
        gy += (slope * y) / distance;
        gradient[2] = (gradient[2] as number) + slope;
        gradient[3] = (gradient[3] as number) - slope * z;
      }
      value += cover * contrast;
      for (let j = 0; j < TERMS; j++) {
        gradient[GEOMETRY + j] =
          (gradient[GEOMETRY + j] as number) + weight * cover * (terms[j] as number);
      }
    }
    // Only the outline tells of the place: shading moves with the ball, but its model is approximate.
    gradient[0] = a * gx + c * gy;
    gradient[1] = b * gx + d * gy;
    return value;
  }
}

/** Harmonics of the normal (u, v, sqrt(1 - u^2 - v^2)); beyond the limb, those of the limb. */
function harmonics(u: number, v: number, out: Float64Array): void {
  let x = u;
  let y = v;
  let r2 = x * x + y * y;
  if (r2 > 1) {
    const r = Math.sqrt(r2);
    x /= r;
    y /= r;
    r2 = 1;
  }
  const z = Math.sqrt(1 - r2);
  out[0] = 1;
  out[1] = x;
  out[2] = y;
  out[3] = z;
  out[4] = x * z;
  out[5] = y * z;
  out[6] = x * y;
  out[7] = x * x - y * y;
  out[8] = r2;
}

/** Normal distribution, error below 1e-7 (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.17). */
function normalCdf(z: number): number {
  const x = Math.abs(z);
  const t = 1 / (1 + 0.2316419 * x);
  const tail =
    0.3989422804014327 *
    Math.exp(-0.5 * x * x) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z > 0 ? 1 - tail : tail;
}
