import type { Shape } from './ballShape';

/**
 * Terms of the ball's brightness over its disc: all polynomials in the components (u, v, w) of its
 * surface normal up to order four, the spherical harmonics of that order in plain form. Order two
 * already holds a matt sphere under any distant lighting to a few per cent (Basri and Jacobs, IEEE
 * Trans. Pattern Anal. Mach. Intell. 25 (2003) 218); order three adds nothing to it, order four takes
 * the edge of the shadow, which would else draw the outline towards the light.
 */
export const TERMS = 25;
/** Nonlinear parameters: middle x, y, radius, softness of the edge, length of the motion blur. */
export const GEOMETRY = 5;
export const PARAMETERS = GEOMETRY + TERMS;

/** Beyond this many standard deviations of the edge's blur a pixel is all ball or all background. */
const EDGE_REACH = 3.5;

export interface Disc {
  x: number;
  y: number;
  radius: number;
  /** Standard deviation of the edge's blur, pixel and optics together, px. */
  sigma: number;
  /** Motion blur as a multiple of the expected one. */
  stretch: number;
  /** Brightness terms. */
  readonly shade: Float64Array;
}

/**
 * Image of a shaded disc moved along its blur while the shutter is open, at one pixel:
 * value = (1 - cover) * background + sum of shade terms, with derivatives.
 */
export class DiscModel {
  private readonly terms = new Float64Array(TERMS);
  private readonly steps: number;

  constructor(
    private readonly shape: Shape,
    private readonly blur: readonly [number, number],
    sigma: number,
  ) {
    // Instants so close that the soft edge joins them up.
    this.steps = Math.max(
      1,
      Math.ceil(Math.hypot(blur[0], blur[1]) / (1.4 * Math.max(0.5, sigma))),
    );
  }

  /**
   * Value at the pixel (px, py) over a background of this level. Its derivatives by x, y, radius, sigma,
   * stretch and the shade terms go into `gradient` from `offset` on. `still` leaves the blur out, which
   * is right well inside the disc.
   */
  at(
    px: number,
    py: number,
    background: number,
    disc: Disc,
    still: boolean,
    gradient: Float64Array,
    offset: number,
  ): number {
    const [a, b, c, d] = this.shape;
    const { radius, sigma, shade } = disc;
    const { terms } = this;
    const steps = still ? 1 : this.steps;
    const bx = disc.stretch * this.blur[0];
    const by = disc.stretch * this.blur[1];
    const ox = px - disc.x;
    const oy = py - disc.y;
    const qx = a * ox + b * oy;
    const qy = c * ox + d * oy;
    gradient.fill(0, offset, offset + PARAMETERS);
    const weight = 1 / steps;
    let value = background;
    let gx = 0;
    let gy = 0;
    let gRadius = 0;
    let gSigma = 0;
    let gStretch = 0;
    for (let k = 0; k < steps; k++) {
      const t = (k + 0.5) * weight - 0.5;
      const x = qx - t * bx;
      const y = qy - t * by;
      const distance = Math.sqrt(x * x + y * y);
      const z = (radius - distance) / sigma;
      if (z < -EDGE_REACH) continue;
      let cover = 1;
      let density = 0;
      if (z < EDGE_REACH) {
        // What the blur gathers of the disc lies, in the mean, this much further in than the pixel;
        // brightness goes as the root of the depth there, so its mean has a table of its own.
        const at = (z + EDGE_REACH) / TABLE_STEP;
        const i = Math.min(TABLE_SIZE - 2, Math.floor(at));
        const f = at - i;
        cover = (COVER[i] as number) * (1 - f) + (COVER[i + 1] as number) * f;
        density = (DENSITY[i] as number) * (1 - f) + (DENSITY[i + 1] as number) * f;
        const root = (ROOT[i] as number) * (1 - f) + (ROOT[i + 1] as number) * f;
        const inner = Math.min(1, (distance - (sigma * density) / cover) / radius);
        const scale = inner / distance;
        harmonics(x * scale, y * scale, root * Math.sqrt((sigma / radius) * (1 + inner)), terms);
      } else {
        const u = x / radius;
        const v = y / radius;
        harmonics(u, v, Math.sqrt(1 - u * u - v * v), terms);
      }
      let bright = 0;
      for (let j = 0; j < TERMS; j++) bright += (shade[j] as number) * (terms[j] as number);
      const contrast = (bright - background) * weight;
      if (density > 0) {
        const slope = (contrast * density) / sigma;
        const sx = (slope * x) / distance;
        const sy = (slope * y) / distance;
        gx += sx;
        gy += sy;
        gRadius += slope;
        gSigma -= slope * z;
        gStretch += t * (sx * this.blur[0] + sy * this.blur[1]);
      }
      value += cover * contrast;
      const share = weight * cover;
      const base = offset + GEOMETRY;
      for (let j = 0; j < TERMS; j++) {
        gradient[base + j] = (gradient[base + j] as number) + share * (terms[j] as number);
      }
    }
    // Only the outline tells of the place: shading moves with the ball, but its model is approximate.
    gradient[offset] = a * gx + c * gy;
    gradient[offset + 1] = b * gx + d * gy;
    gradient[offset + 2] = gRadius;
    gradient[offset + 3] = gSigma;
    gradient[offset + 4] = gStretch;
    return value;
  }
}

/** Polynomials of the normal (x, y, z). */
function harmonics(x: number, y: number, z: number, out: Float64Array): void {
  const xx = x * x;
  const xy = x * y;
  const yy = y * y;
  out[0] = 1;
  out[1] = x;
  out[2] = y;
  out[3] = z;
  out[4] = xx;
  out[5] = xy;
  out[6] = yy;
  out[7] = x * z;
  out[8] = y * z;
  out[9] = xx * x;
  out[10] = xx * y;
  out[11] = x * yy;
  out[12] = yy * y;
  out[13] = xx * z;
  out[14] = xy * z;
  out[15] = yy * z;
  out[16] = xx * xx;
  out[17] = xx * xy;
  out[18] = xx * yy;
  out[19] = xy * yy;
  out[20] = yy * yy;
  out[21] = xx * x * z;
  out[22] = xx * y * z;
  out[23] = x * yy * z;
  out[24] = yy * y * z;
}

/** Mean of each term over the disc; its product with the shade is the mean brightness. */
const TERM_MEANS = termMeans();

function termMeans(): Float64Array {
  const means = new Float64Array(TERMS);
  const terms = new Float64Array(TERMS);
  const half = 60;
  let n = 0;
  for (let i = -half; i <= half; i++) {
    for (let j = -half; j <= half; j++) {
      const x = i / half;
      const y = j / half;
      const z2 = 1 - x * x - y * y;
      if (z2 < 0) continue;
      harmonics(x, y, Math.sqrt(z2), terms);
      for (let k = 0; k < TERMS; k++) means[k] = (means[k] as number) + (terms[k] as number);
      n++;
    }
  }
  return means.map((sum) => sum / n);
}

/** Mean brightness of a shaded disc. */
export const meanBrightness = (shade: Float64Array): number =>
  shade.reduce((sum, value, j) => sum + value * (TERM_MEANS[j] as number), 0);

/** Tables over z, the depth of a pixel's middle inside the disc in standard deviations of the blur. */
const TABLE_STEP = 0.02;
const TABLE_SIZE = Math.round((2 * EDGE_REACH) / TABLE_STEP) + 1;
/** Share of the blur's weight on the disc, the weight at its rim, and the mean root of the depth of that share. */
const COVER = new Float64Array(TABLE_SIZE);
const DENSITY = new Float64Array(TABLE_SIZE);
const ROOT = new Float64Array(TABLE_SIZE);
for (let i = 0; i < TABLE_SIZE; i++) {
  const z = i * TABLE_STEP - EDGE_REACH;
  let cover = 0;
  let root = 0;
  // Midpoints in the root of the depth, where the integrands are smooth.
  const step = 0.005;
  for (let q = step / 2; q * q < z + 8; q += step) {
    const part = 2 * q * step * normalDensity(z - q * q);
    cover += part;
    root += q * part;
  }
  COVER[i] = cover;
  DENSITY[i] = normalDensity(z);
  ROOT[i] = root / cover;
}

function normalDensity(z: number): number {
  return 0.3989422804014327 * Math.exp(-0.5 * z * z);
}
