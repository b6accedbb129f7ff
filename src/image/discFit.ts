import type { GreyFrame } from '../core/frame';
import { definiteInverse } from '../core/linalg';
import type { Shape } from './ballShape';
import { type Covariance, WAVES_PER_DOF, waveScatter } from './discEquations';
import { type Disc, GEOMETRY } from './discModel';
import { awayFromHidden, gatherPixels, sectorsShown, shareThrownOut } from './discPixels';
import { SIGMA_PRIOR, STRETCH_PRIOR } from './discPriors';
import { type Settled, settle } from './discSettle';
import { freeShading, learntShading, type Shading } from './discShade';
import { freeLamp } from './discStart';
import { both, count, RAYS } from './outline';
import type { Background, BallModel, FitEvidence } from './types';

const MOST_PASSES = 5;
/** A fit that still moves by more than this in its last round has not found its place, px. */
const UNSETTLED = 0.05;
/** Shift of the middle, px, per share of the outline's pixels thrown out, and the share that plain noise throws out. */
const MISFIT_SHIFT = 4;
const FREE_MISFIT = 0.003;
/** One frame's own scatter counts where it is beyond the usual one by this many of its standard deviations. */
const SIGNIFICANT = 4;
/** A fit that shows less than this share of the outline may have gone astray. */
const ENOUGH = 0.35;
/** The band is laid anew when the middle has moved this far, px, or the edge is this much softer. */
const BAND_SHIFT = 0.5;

export interface DiscFit {
  readonly disc: Disc;
  readonly shading: Shading;
  /** Its brightness in the free shading's terms. */
  readonly shade: Float64Array;
  readonly covariance: Covariance;
  readonly radiusU: number;
  /** Sectors of the outline that agree with the model. */
  readonly seen: Uint8Array;
  /** Mean of ball minus background over the visible disc. */
  readonly contrast: number;
  /** Robust standard deviation of the residuals over that of the noise. */
  readonly noiseRatio: number;
  /** Blur length and its standard uncertainty from the pixels alone; null: they tell nothing. */
  readonly blur: { readonly stretch: number; readonly u: number } | null;
  readonly evidence: FitEvidence;
}

/** Where a fit begins, flags one a sector of the outline. */
export interface DiscStart {
  readonly x: number;
  readonly y: number;
  /** Where the edge is seen. */
  readonly seen: Uint8Array;
  /** Where it may be taken from. */
  readonly clear: Uint8Array;
}

/**
 * Fits a shaded, blurred disc to the pixels around `start` by reweighted least squares. Pixels that do
 * not follow it (a fragment over it, a wall before it) lose their weight; sectors of the outline where
 * too many do are left out whole. The covariance is that of the noise model times `look.inflation`,
 * which the frames of the shot agree on, or times what this frame's own waves scatter more, where they
 * clearly do: compression makes neighbouring pixels err alike. Null where the normal equations have no
 * solution or the rounds do not settle.
 */
export function fitDisc(
  frame: GreyFrame,
  background: Background,
  gain: number,
  start: DiscStart,
  ball: BallModel,
  shape: Shape,
): DiscFit | null {
  const { look } = ball;
  if (look !== undefined) {
    return fitWith(learntShading(look.shade), false, frame, background, gain, start, ball, shape);
  }
  const free = freeShading();
  const fit = fitWith(free, true, frame, background, gain, start, ball, shape);
  if (fit !== null && count(fit.seen) >= ENOUGH * RAYS) return fit;
  // The lamp can take a half-hidden ball for an unlit one; without it the shadow's edge cannot be anywhere.
  return fitWith(free, false, frame, background, gain, start, ball, shape) ?? fit;
}

function fitWith(
  shading: Shading,
  lamp: boolean,
  frame: GreyFrame,
  background: Background,
  gain: number,
  start: DiscStart,
  ball: BallModel,
  shape: Shape,
): DiscFit | null {
  const { clear } = start;
  let seen = both(start.seen, clear);
  const { look } = ball;
  const disc: Disc = {
    x: start.x,
    y: start.y,
    radius: ball.radius,
    sigma: look?.sigma ?? SIGMA_PRIOR.value,
    stretch: look?.stretch ?? STRETCH_PRIOR.value,
    shade: new Float64Array(shading.terms),
  };
  let fit: Settled | null = null;
  let pixels = gatherPixels(frame, background, gain, disc, seen, ball, shape, true);
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const { x, y, sigma } = disc;
    if (pixels.count < (GEOMETRY + shading.terms) * 4) return null;
    const stage = { opening: pass === 0, soft: pass === 0, lamp };
    fit = settle(pixels, background, disc, ball, shape, shading, stage);
    if (fit === null) return null;
    if (pass === 0 && lamp && freeLamp(disc.shade, fit.level)) {
      fit = settle(pixels, background, disc, ball, shape, shading, { ...stage, opening: false });
      if (fit === null) return null;
    }
    const shown = both(sectorsShown(pixels, fit.residuals, fit.variance, fit.weights), clear);
    // Sectors may come in at first; later they only go, so that none comes and goes for ever.
    const next = pass < 2 ? shown : both(shown, seen);
    const same = next.every((flag, i) => flag === seen[i]);
    seen = next;
    const near =
      Math.hypot(disc.x - x, disc.y - y) < BAND_SHIFT && disc.sigma - sigma < BAND_SHIFT / 3;
    // The first pass takes all of the sectors that may show it, or a wrong size would leave too few.
    const whole = count(seen) === count(clear);
    const mayEnd = pass > 0 || (!lamp && whole && !pixels.coarse);
    if ((same && near && mayEnd) || pass === MOST_PASSES - 1) break;
    const inside = awayFromHidden(seen, disc.radius);
    pixels = gatherPixels(frame, background, gain, disc, inside, ball, shape, false);
  }
  if (fit === null || fit.moved > UNSETTLED) return null;
  const { inverse, contrast } = fit;
  const parameters = GEOMETRY + shading.terms;
  const scatter = waveScatter(
    pixels,
    fit.residuals,
    fit.precision,
    fit.gradients,
    inverse,
    parameters,
  );
  const at = (r: number, c: number) => inverse[r * parameters + c] as number;
  const own = inflationOf(scatter, [at(0, 0), at(1, 1)]);
  const usual = look?.inflation ?? 1;
  // Alone a frame has only its own scatter to go by.
  const clearly = own.ratio > usual * (look === undefined ? 1 : 1 + SIGNIFICANT * own.spread);
  const factor = clearly ? own.ratio : usual;
  const misfit = shareThrownOut(pixels, fit.weights, seen);
  const extra = (MISFIT_SHIFT * Math.max(0, misfit - FREE_MISFIT)) ** 2;
  const shadePart = byShade(fit, factor, parameters);
  // Alone, the edge of the shadow is less well known than a linear covariance has it: its part counts twice.
  const [extraX, extraY] = look?.unmodelled ?? shadePart;
  return {
    disc,
    shading,
    shade: shading.plain(disc.shade),
    covariance: [
      factor * at(0, 0) + extra + extraX,
      factor * at(0, 1),
      factor * at(1, 0),
      factor * at(1, 1) + extra + extraY,
    ],
    radiusU: Math.sqrt(factor * at(2, 2)),
    seen,
    contrast,
    noiseRatio: fit.noiseRatio,
    blur: blurAlone(disc.stretch, factor * at(4, 4), ball),
    evidence: {
      pull: scatter.pull,
      expected: scatter.expected,
      inflation: own.ratio,
      white: scatter.white,
      byShade: shadePart,
      sigmaU: Math.sqrt(factor * at(3, 3)),
      stretchU: Math.sqrt(factor * at(4, 4)),
      ...(look === undefined
        ? {}
        : { learnt: { inflation: look.inflation, unmodelled: look.unmodelled } }),
    },
  };
}

/** What of the variances of x and y is due to the shading being unknown, px^2. */
function byShade(
  { normal, inverse }: Settled,
  factor: number,
  count: number,
): readonly [number, number] {
  const geometry = new Float64Array(GEOMETRY * GEOMETRY);
  for (let r = 0; r < GEOMETRY; r++) {
    for (let c = 0; c < GEOMETRY; c++) {
      geometry[r * GEOMETRY + c] = normal[r * count + c] as number;
    }
  }
  const known = definiteInverse(geometry, GEOMETRY);
  if (known === null) return [0, 0];
  const part = (j: number) =>
    factor * Math.max(0, (inverse[j * count + j] as number) - (known[j * GEOMETRY + j] as number));
  return [part(0), part(1)];
}

/** Mean square pull of the waves over that expected, and the relative standard deviation of that ratio. */
function inflationOf(
  { pull, expected }: { readonly pull: Float32Array; readonly expected: Float32Array },
  variances: readonly [number, number],
): { readonly ratio: number; readonly spread: number } {
  let squares = 0;
  let sum = 0;
  let sumSquares = 0;
  const half = pull.length / 2;
  for (let i = 0; i < pull.length; i++) {
    const scale = variances[i < half ? 0 : 1];
    const e = (expected[i] as number) / scale;
    squares += (pull[i] as number) ** 2 / scale;
    sum += e;
    sumSquares += e * e;
  }
  return sum > 0
    ? { ratio: squares / sum, spread: Math.sqrt(2 * WAVES_PER_DOF * sumSquares) / sum }
    : { ratio: 1, spread: 1 };
}

/** The blur length with what was assumed of it taken out again. */
function blurAlone(stretch: number, variance: number, { blur, look }: BallModel): DiscFit['blur'] {
  if (Math.hypot(blur[0], blur[1]) === 0) return null;
  const priorU = look?.stretchU ?? STRETCH_PRIOR.u;
  const information = 1 / variance - 1 / priorU ** 2;
  // Of a hundredth of the assumption's weight the difference is no longer to be trusted.
  if (!(information > 0.01 / priorU ** 2)) return null;
  const assumed = look?.stretch ?? STRETCH_PRIOR.value;
  return {
    stretch: (stretch / variance - assumed / priorU ** 2) / information,
    u: 1 / Math.sqrt(information),
  };
}
