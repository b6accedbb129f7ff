import { errorFunction } from '../core/statistics';
import type { Pixels } from '../core/units';

/** The ball in one frame. */
export interface PlannedDisc {
  readonly radius: Pixels;
  /** Ball minus background over the standard deviation of a pixel. */
  readonly contrastToNoise: number;
  /** Blur of an edge by the optics, standard deviation. */
  readonly softness: Pixels;
  /** Way of the ball during the exposure. */
  readonly sweep: Pixels;
  /** Whether the film is kept with loss. */
  readonly coded: boolean;
  /** How far left and right of its centre the ball can be seen: hidden by the muzzle, cut by the picture's edge. */
  readonly seenLeft: Pixels;
  readonly seenRight: Pixels;
}

export interface CentreNoise {
  /** Standard uncertainties along and across the flight. */
  readonly alongU: Pixels;
  readonly acrossU: Pixels;
  /** Share of the outline in view, 0..1. */
  readonly visible: number;
}

/** Blur by the pixel's own area, standard deviation: sqrt(1/12). */
const PIXEL: Pixels = Math.sqrt(1 / 12);
/** Stated uncertainty over the bound, as `docs/validation.md` has errors over it: sharp, and more for a blur of one radius. */
const OVER_BOUND = 1.09;
const OVER_BOUND_BLURRED = 1.24;
/**
 * Error of a centre on film coded with loss, whatever its contrast, and the radius it was measured at: class
 * `compressed` of `docs/validation.md`, H.264 at rate factor 23. Blocks err apart from each other, so a longer outline
 * averages over more of them: as the root of the radius.
 */
const CODED = { u: 0.05, radius: 20 } as const;
/** A radius is told by diameter and scale to this share at least, and by the frames together. */
const RADIUS_SHARE = 0.02;
const FRAMES_LEARNT = 4;
/** Directions around the outline. */
const NODES = 180;

/**
 * What the centre of an even disc can be told to: the Cramer-Rao bound of its place, times what the estimator was
 * measured to err beyond it. White noise, an edge blurred by a Gaussian `s` and along the flight by a box of the
 * sweep; each direction around the outline tells (contrast / noise)^2 times its edge's mean square slope (Kay,
 * Fundamentals of Statistical Signal Processing: Estimation Theory, 1993, eq. 3.31). Brightness of ball and
 * background are taken as known, as a whole disc tells them; the radius is not: beside a cut it is one with the place.
 */
export function centreNoise(disc: PlannedDisc): CentreNoise {
  const { radius, contrastToNoise, softness, sweep, coded } = disc;
  const blur = Math.hypot(softness, PIXEL);
  const weight = (contrastToNoise ** 2 * radius * 2 * Math.PI) / NODES;
  let [xx, xr, rr, yy, whole, seen] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < NODES; i++) {
    const angle = (2 * Math.PI * (i + 0.5)) / NODES;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const told = weight * edgeSlope(blur, sweep * Math.abs(c));
    whole += told;
    const at = radius * c;
    if (at < -disc.seenLeft || at > disc.seenRight) continue;
    seen++;
    xx += told * c * c;
    xr += told * c;
    rr += told;
    yy += told * s * s;
  }
  const known = 1 / (RADIUS_SHARE * radius) ** 2 + FRAMES_LEARNT * whole;
  const over =
    OVER_BOUND + (OVER_BOUND_BLURRED - OVER_BOUND) * Math.min(1, sweep / Math.max(radius, 1e-9));
  const byCodec = coded ? CODED.u * Math.sqrt(CODED.radius / radius) : 0;
  const u = (information: number) => Math.hypot(over / Math.sqrt(information), byCodec);
  return { alongU: u(xx - xr ** 2 / (rr + known)), acrossU: u(yy), visible: seen / NODES };
}

/**
 * Integral of the squared slope of a unit step blurred by a Gaussian of standard deviation `s` and a box of width `w`,
 * 1/px: that of the step's own blur, 1 / (2 s sqrt(pi)), for no box.
 */
export function edgeSlope(s: Pixels, w: Pixels): number {
  const a = w / (2 * s);
  const root = Math.sqrt(Math.PI);
  if (a < 1e-3) return (1 - a ** 2 / 6) / (2 * s * root);
  return (errorFunction(a) - (1 - Math.exp(-a * a)) / (a * root)) / w;
}
