import type { GreyFrame } from '../core/frame';
import { DEVIATION_OVER_MEDIAN } from '../core/statistics';
import type { Shape } from './ballShape';
import { type Covariance, covarianceOf, gatherEquations, inverseOf, solve } from './discEquations';
import { type Disc, DiscModel, GEOMETRY, PARAMETERS, TERMS } from './discModel';
import { type DiscPixels, gatherPixels, sectorsShown, shareThrownOut } from './discPixels';
import { addPriors, START_SIGMA } from './discPriors';
import { medianInPlace } from './median';
import type { Background, BallModel } from './types';

const LEAST_SIGMA = 0.3;
const MOST_SIGMA = 4;
/** Residuals, as shares of the contrast, beyond which pixels count for nothing in the first rounds. */
const OPENING_CUTS = [0.7, 0.5, 0.35, 0.25] as const;
/** In the end: this many robust standard deviations (Tukey's 95 % choice), but never below this share of the contrast. */
const TUKEY = 4.685;
const LEAST_CUT = 0.08;
const MOST_PASSES = 5;
const MOST_ROUNDS = 24;
/** Rounds end when the middle moves less than this, px. */
const SETTLED = 2e-3;
/** A fit that still moves by more than this in its last round has not found its place, px. */
const UNSETTLED = 0.05;
/** Shift of the middle, px, per share of the outline's pixels thrown out, and the share that plain noise throws out. */
const MISFIT_SHIFT = 4;
const FREE_MISFIT = 0.003;
/** What shading, the pixels' own shape and the edge's profile leave unmodelled, px (from renders of matt balls). */
const MODEL_U = 0.012;
/** The band is laid anew when the middle has moved this far, px. */
const BAND_SHIFT = 0.5;

export interface DiscFit {
  readonly disc: Disc;
  readonly covariance: Covariance;
  readonly radiusU: number;
  /** Sectors of the outline that agree with the model. */
  readonly seen: Uint8Array;
  /** Mean of ball minus background over the visible disc. */
  readonly contrast: number;
  /** Robust standard deviation of the residuals over that of the noise. */
  readonly noiseRatio: number;
}

/**
 * Fits a shaded, blurred disc to the pixels around `start` by reweighted least squares. Pixels that do
 * not follow it (a fragment over it, a wall before it) lose their weight; sectors of the outline where
 * too many do are left out whole. The covariance takes the scatter of the sectors' contributions, so
 * that neighbouring pixels that err alike, as compression makes them, are not counted as independent.
 * Null where the normal equations have no solution or the rounds do not settle.
 */
export function fitDisc(
  frame: GreyFrame,
  background: Background,
  gain: number,
  start: { readonly x: number; readonly y: number; readonly seen: Uint8Array },
  ball: BallModel,
  shape: Shape,
): DiscFit | null {
  let seen = start.seen;
  const disc: Disc = {
    x: start.x,
    y: start.y,
    radius: ball.radius,
    sigma: ball.look?.sigma ?? START_SIGMA,
    stretch: ball.look?.stretch ?? 1,
    shade: new Float64Array(TERMS),
  };
  let fit: Settled | null = null;
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const { x, y } = disc;
    const pixels = gatherPixels(frame, background, gain, disc, seen, ball, shape);
    if (pixels.count < PARAMETERS * 4) return null;
    fit = settle(pixels, disc, ball, shape, pass === 0);
    if (fit === null) return null;
    const shown = sectorsShown(pixels, fit.residuals, fit.weights);
    // Sectors may come in at first; later they only go, so that none comes and goes for ever.
    const next = pass < 2 ? shown : shown.map((flag, i) => flag & (seen[i] as number));
    const same = next.every((flag, i) => flag === seen[i]);
    seen = next;
    if (same && Math.hypot(disc.x - x, disc.y - y) < BAND_SHIFT) break;
  }
  if (fit === null || fit.moved > UNSETTLED) return null;
  const { radiusU, contrast, noiseRatio } = fit;
  const covariance = withMisfit(fit.covariance, fit.misfit);
  return { disc, covariance, radiusU, seen, contrast, noiseRatio };
}

interface Settled {
  readonly weights: Float64Array;
  readonly residuals: Float64Array;
  /** Share of the outline's pixels that were thrown out. */
  readonly misfit: number;
  readonly covariance: Covariance;
  readonly radiusU: number;
  readonly contrast: number;
  readonly noiseRatio: number;
  /** Last move of the middle along x or y, px. */
  readonly moved: number;
}

/** Gauss-Newton on all parameters; changes `disc`. */
function settle(
  pixels: DiscPixels,
  disc: Disc,
  ball: BallModel,
  shape: Shape,
  opening: boolean,
): Settled | null {
  const { count } = pixels;
  const residuals = new Float64Array(count);
  const weights = new Float64Array(count);
  const gradients = new Float64Array(count * PARAMETERS);
  const step = new Float64Array(PARAMETERS);
  if (opening) startShade(pixels, disc, ball);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const model = new DiscModel(shape, ball.blur, disc.sigma);
    for (let i = 0; i < count; i++) {
      const value = model.at(
        pixels.x[i] as number,
        pixels.y[i] as number,
        pixels.background[i] as number,
        disc,
        pixels.edge[i] === 0,
        gradients,
        i * PARAMETERS,
      );
      residuals[i] = (pixels.value[i] as number) - value;
    }
    const contrast = meanContrast(pixels, disc, gradients);
    const noiseRatio = residualScale(pixels, residuals);
    const early = opening ? OPENING_CUTS[round] : undefined;
    const cut = Math.max(LEAST_CUT, early ?? 0) * Math.abs(contrast);
    for (let i = 0; i < count; i++) {
      const sigma = Math.sqrt(pixels.variance[i] as number);
      const u = (residuals[i] as number) / Math.max(cut, TUKEY * noiseRatio * sigma);
      weights[i] = Math.abs(u) < 1 ? (1 - u * u) ** 2 : 0;
    }
    const equations = gatherEquations(pixels, residuals, weights, gradients);
    const scale2 = Math.max(1, noiseRatio) ** 2;
    addPriors(equations, disc, ball, contrast, scale2, early !== undefined);
    if (!solve(equations.normal, equations.rhs, step)) return null;
    limit(step, disc, ball.radius);
    disc.x += step[0] as number;
    disc.y += step[1] as number;
    disc.radius += step[2] as number;
    disc.sigma += step[3] as number;
    disc.stretch += step[4] as number;
    for (let j = 0; j < TERMS; j++) {
      disc.shade[j] = (disc.shade[j] as number) + (step[GEOMETRY + j] as number);
    }
    const moved = Math.max(Math.abs(step[0] as number), Math.abs(step[1] as number));
    const settled = early === undefined && round > 1 && moved < SETTLED;
    if (settled || round === MOST_ROUNDS - 1) {
      const inverse = inverseOf(equations.normal);
      if (inverse === null) return null;
      const spread = covarianceOf(inverse, equations.scores, scale2, disc.radius);
      return {
        weights,
        residuals,
        misfit: shareThrownOut(pixels, weights),
        ...spread,
        contrast,
        noiseRatio,
        moved,
      };
    }
  }
  return null;
}

/**
 * Adds what the model itself may be wrong by, and what unseen company of the pixels thrown out may do:
 * a share of the outline wrong by two pixels moves the middle by twice that share of two pixels.
 */
function withMisfit([xx, xy, yx, yy]: Covariance, misfit: number): Covariance {
  const extra = (MISFIT_SHIFT * Math.max(0, misfit - FREE_MISFIT)) ** 2 + MODEL_U ** 2;
  return [xx + extra, xy, yx, yy + extra];
}

/** Even brightness, or the known look, at the level of the middle: median of the pixels that differ from the background. */
function startShade(pixels: DiscPixels, disc: Disc, { look }: BallModel): void {
  const inner: number[] = [];
  const differing: number[] = [];
  for (let i = 0; i < pixels.count; i++) {
    if (pixels.edge[i] === 1 || pixels.used[i] === 0) continue;
    const r = Math.hypot((pixels.x[i] as number) - disc.x, (pixels.y[i] as number) - disc.y);
    if (r > 0.8 * disc.radius) continue;
    const value = pixels.value[i] as number;
    inner.push(value);
    const change = value - (pixels.background[i] as number);
    if (change * change > 16 * (pixels.variance[i] as number)) differing.push(value);
  }
  const values = Float64Array.from(differing.length * 4 > inner.length ? differing : inner);
  const level = values.length > 0 ? medianInPlace(values, values.length) : 0;
  for (let j = 0; j < TERMS; j++) disc.shade[j] = level * (look?.shade[j] ?? (j === 0 ? 1 : 0));
}

/** Root-mean-square difference of ball and background on the edge, with the sign of the mean. */
function meanContrast(pixels: DiscPixels, disc: Disc, gradients: Float64Array): number {
  let sum = 0;
  let squares = 0;
  let n = 0;
  for (let i = 0; i < pixels.count; i++) {
    const base = i * PARAMETERS + GEOMETRY;
    // The derivative by the constant term is the cover itself.
    const cover = gradients[base] as number;
    if (pixels.edge[i] === 0 || pixels.used[i] === 0 || cover < 0.5) continue;
    let bright = 0;
    for (let j = 0; j < TERMS; j++) {
      bright += (disc.shade[j] as number) * (gradients[base + j] as number);
    }
    const difference = bright / cover - (pixels.background[i] as number);
    sum += difference;
    squares += difference * difference;
    n++;
  }
  return n === 0 ? 0 : Math.sign(sum) * Math.sqrt(squares / n);
}

/** Robust standard deviation of the residuals in units of the noise. */
function residualScale(pixels: DiscPixels, residuals: Float64Array): number {
  const sizes = new Float64Array(pixels.count);
  let n = 0;
  for (let i = 0; i < pixels.count; i++) {
    if (pixels.used[i] === 0) continue;
    sizes[n++] = Math.abs(residuals[i] as number) / Math.sqrt(pixels.variance[i] as number);
  }
  return n > 0 ? DEVIATION_OVER_MEDIAN * medianInPlace(sizes, n) : 1;
}

/** Keeps a step within what the linearisation can answer for. */
function limit(step: Float64Array, disc: Disc, radius: number): void {
  const most = Math.max(1, 0.08 * radius);
  const move = Math.hypot(step[0] as number, step[1] as number);
  if (move > most) {
    step[0] = ((step[0] as number) * most) / move;
    step[1] = ((step[1] as number) * most) / move;
  }
  step[2] = Math.max(-most / 2, Math.min(most / 2, step[2] as number));
  const sigma = Math.max(LEAST_SIGMA, Math.min(MOST_SIGMA, disc.sigma + (step[3] as number)));
  step[3] = Math.max(-0.4, Math.min(0.4, sigma - disc.sigma));
  const stretch = Math.max(0.3, Math.min(2, disc.stretch + (step[4] as number)));
  step[4] = Math.max(-0.2, Math.min(0.2, stretch - disc.stretch));
}
