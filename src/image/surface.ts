import type { GreyFrame } from '../core/frame';
import type { ImagePoint, Pixels } from '../core/units';
import type { Shape } from './ballShape';
import type { DiscFit } from './discFit';
import { DiscModel } from './discModel';
import type { Background, BallModel, Surface } from './types';

/** Borders of the rings, as shares of the radius: inside, angles mean little; at the limb the outline's own error shows. */
const BORDERS = [0.2, 0.4, 0.6, 0.8, 0.92] as const;
const RADII = BORDERS.slice(1).map((outer, r) => (outer + (BORDERS[r] as number)) / 2);
const RINGS = RADII.length;
/** Directions on a ring: a pixel or more each on the inner ring. */
const FEW_ANGLES = 32;
const MANY_ANGLES = 64;
const LARGE_RADIUS: Pixels = 24;
/** On a larger ball every other pixel tells enough. */
const SAMPLED_RADIUS: Pixels = 36;

/** Blur longer than this share of the radius smears a mark into another shape at every angle. */
export const MOST_SMEAR = 0.4;

/**
 * The surface a fitted ball shows beside its learnt look, which is the look without a mark: the median over frames
 * in which the mark lies differently. Null where the look is not learnt yet or the blur smears a mark too much.
 */
export function faceOf(
  frame: GreyFrame,
  { level, noise, faulty }: Background,
  gain: number,
  { disc, shading }: Pick<DiscFit, 'disc' | 'shading'>,
  { look, blur }: BallModel,
  shape: Shape,
): Surface | null {
  if (look === undefined || Math.hypot(...blur) > MOST_SMEAR * disc.radius) return null;
  const model = new DiscModel(shape, blur, shading);
  const gradient = new Float64Array(model.parameters);
  // The learnt look at this frame's level; the tilt that a fit adds to it may be the mark's own doing.
  const plain = { ...disc, shade: disc.shade.map((value, j) => (j === 0 ? value : 0)) };
  return unrollSurface(frame, {
    middle: [disc.x, disc.y],
    radius: disc.radius,
    shape,
    plain: (x, y) => {
      const background = gain * (level[y * frame.width + x] as number);
      return model.at(x, y, background, plain, gradient, 0);
    },
    noise: (grey) => noise.readVariance + noise.gain * grey,
    faulty: (pixel) => faulty?.[pixel] === 1,
  });
}

/** What the surface is unrolled from. */
export interface Unrolled {
  readonly middle: ImagePoint;
  readonly radius: Pixels;
  readonly shape: Shape;
  /** Grey value the ball would have at a pixel if it carried no mark. */
  readonly plain: (x: Pixels, y: Pixels) => number;
  /** Variance of a pixel's grey value. */
  readonly noise: (grey: number) => number;
  /** Whether a pixel tells nothing. */
  readonly faulty: (pixel: number) => boolean;
}

/**
 * Picture minus plain ball on rings around the middle, each pixel shared between the two directions next to it.
 * Directions are those of ball coordinates, so that a rolling shutter's shear is undone.
 */
export function unrollSurface(
  frame: GreyFrame,
  { middle, radius, shape: [a, b, c, d], plain, noise, faulty }: Unrolled,
): Surface {
  const angles = radius < LARGE_RADIUS ? FEW_ANGLES : MANY_ANGLES;
  const bins = RINGS * angles;
  const sum = new Float64Array(bins);
  const weight = new Float64Array(bins);
  const spread = new Float64Array(bins);
  // The shape stretches by a few per cent at most.
  const reach = Math.ceil(1.08 * (BORDERS[RINGS] as number) * radius);
  const x0 = Math.max(0, Math.round(middle[0]) - reach);
  const x1 = Math.min(frame.width - 1, Math.round(middle[0]) + reach);
  const y0 = Math.max(0, Math.round(middle[1]) - reach);
  const y1 = Math.min(frame.height - 1, Math.round(middle[1]) + reach);
  const sampled = radius > SAMPLED_RADIUS;
  for (let y = y0; y <= y1; y++) {
    for (let x = x0; x <= x1; x++) {
      if (sampled && ((x + y) & 1) === 1) continue;
      const ox = x - middle[0];
      const oy = y - middle[1];
      const qx = a * ox + b * oy;
      const qy = c * ox + d * oy;
      const r = Math.sqrt(qx * qx + qy * qy) / radius;
      if (r < BORDERS[0] || r >= (BORDERS[RINGS] as number)) continue;
      const p = y * frame.width + x;
      if (faulty(p)) continue;
      let ring = 0;
      while (r >= (BORDERS[ring + 1] as number)) ring++;
      const grey = frame.data[p] as number;
      const residual = grey - plain(x, y);
      const variance = noise(grey);
      const turn = (Math.atan2(qy, qx) / (2 * Math.PI) + 1) * angles;
      const low = Math.floor(turn);
      for (let side = 0; side < 2; side++) {
        const share = side === 0 ? low + 1 - turn : turn - low;
        const i = ring * angles + ((low + side) % angles);
        sum[i] = (sum[i] as number) + share * residual;
        weight[i] = (weight[i] as number) + share;
        spread[i] = (spread[i] as number) + share * variance;
      }
    }
  }
  const residual = new Float32Array(bins);
  const variance = new Float32Array(bins).fill(Number.POSITIVE_INFINITY);
  for (let i = 0; i < bins; i++) {
    const w = weight[i] as number;
    if (w <= 0) continue;
    residual[i] = (sum[i] as number) / w;
    // Neighbours share pixels: this is the variance that sums over many directions have.
    variance[i] = (spread[i] as number) / (w * w);
  }
  return { radii: RADII, angles, residual, variance };
}
