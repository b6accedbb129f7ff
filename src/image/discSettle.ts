import { definiteInverse } from '../core/linalg';
import { DEVIATION_OVER_MEDIAN, mean } from '../core/statistics';
import type { Shape } from './ballShape';
import { type Equations, gatherEquations } from './discEquations';
import { type Disc, DiscModel, GEOMETRY } from './discModel';
import { type DiscPixels, spreadThrownOut } from './discPixels';
import { addPriors, priorCost } from './discPriors';
import type { Shading } from './discShade';
import { startLamp, startShade } from './discStart';
import { copyDisc, dampedInverse, stepOf, takeStep } from './discStep';
import { medianInPlace } from './median';
import type { Background, BallModel } from './types';

/** Residuals, as shares of the contrast, beyond which pixels count for nothing in the first rounds. */
const OPENING_CUTS = [0.7, 0.5, 0.35, 0.25] as const;
/**
 * In the end pixels lose their weight from half of this many standard deviations on and all of it here, so
 * that plain noise keeps its full weight; but never below this share of the contrast.
 */
const CUT_SIGMAS = 6;
const LEAST_CUT = 0.08;
const MOST_ROUNDS = 30;
/** From here on the edge of the shadow stands still: where it is ill determined it would swing to and fro. */
const HOLD_ROUND = 9;
/** A cost (chi-square) no higher than this above another counts as the same. */
const SAME_COST = 1e-2;
/** Marquardt's damping starts at the first once a step has gone too far, and is given up beyond the second. */
const LEAST_DAMPING = 1e-3;
const MOST_DAMPING = 1e4;
/** A step so damped is a small part of the one that Gauss and Newton would make. */
const MUCH_DAMPING = 1;
/** While the shadow's edge is softened the fit ends once a step gains less than this cost. */
const SOFT_GAIN = 1;
/** Softness of the shadow's edge in the opening, a share of the lamp. */
const OPENING_SOFTNESS = 0.2;
/** Rounds end when the middle moves less than this, px, or than this share of its standard uncertainty. */
const SETTLED = 1e-4;
const SETTLED_SHARE = 0.02;
/** Or less than this, px, where a shorter step than it makes does not lower the cost any more. */
const NEARLY = 0.01;

export interface Settled {
  /** 0..1 a pixel. */
  readonly weights: Float64Array;
  readonly residuals: Float64Array;
  /** Of the noise by the model's value. */
  readonly variance: Float64Array;
  /** Weight over variance; 0 for pixels that do not count. */
  readonly precision: Float64Array;
  readonly gradients: Float64Array;
  /** Normal equations' matrix, priors included, and its inverse. */
  readonly normal: Float64Array;
  readonly inverse: Float64Array;
  readonly contrast: number;
  /** Brightness that shading is a share of. */
  readonly level: number;
  /** Robust standard deviation of the residuals over that of the noise. */
  readonly noiseRatio: number;
  /** Last move of the middle along x or y, px. */
  readonly moved: number;
}

/** How far a fit has come. */
export interface Stage {
  /** From nothing but a place. */
  readonly opening: boolean;
  /** The edge of the shadow is softened, so that the lamp finds its way. */
  readonly soft: boolean;
  /** There may be a lamp. */
  readonly lamp: boolean;
}

/** Gauss-Newton on all parameters, those of the lamp only where `lamp` lets it in; changes `disc`. Null where the equations have no solution. */
export function settle(
  pixels: DiscPixels,
  background: Background,
  disc: Disc,
  ball: BallModel,
  shape: Shape,
  shading: Shading,
  { opening, soft, lamp }: Stage,
): Settled | null {
  const { count } = pixels;
  const parameters = GEOMETRY + shading.terms;
  const { noise, white, averaged = Number.POSITIVE_INFINITY } = background;
  // The scene as the pixels, with its own noise, and the picture itself tell it together.
  const behind = Float64Array.from(pixels.background.subarray(0, count));
  const residuals = new Float64Array(count);
  const variance = new Float64Array(count);
  /** Ball minus background where the pixel is mostly ball, else 0. */
  const difference = new Float64Array(count);
  const weights = new Float64Array(count);
  const precision = new Float64Array(count);
  const gradients = new Float64Array(count * parameters);
  const model = new DiscModel(shape, ball.blur, shading);
  if (opening) startShade(pixels, disc, noise);
  shading.hold(null);
  shading.soften(soft ? OPENING_SOFTNESS : 0);
  const meanBackground = Math.max(0, mean(pixels.background.subarray(0, count)));
  const kept: Disc = { ...disc, shade: disc.shade.slice() };
  let equations: Equations | null = null;
  // A softened shadow is no more than a way to where the lamp stands.
  const onItsWay = soft && lamp;
  let damping = 0;
  /** What a damping that served is lowered to at the least: without any, the next step would go too far again. */
  let leastDamping = 0;
  let cost = Number.POSITIVE_INFINITY;
  let contrast = 0;
  let noiseRatio = 1;
  let level = 0;
  const costNow = () => {
    let sum = priorCost(disc, ball, { contrast, level }, { lamp, held: false });
    for (let i = 0; i < count; i++) {
      if (pixels.used[i] === 0) continue;
      const most = finalCut(Math.sqrt(variance[i] as number), contrast, noiseRatio) / 2;
      sum += Math.min(Math.abs(residuals[i] as number), most) ** 2 / (variance[i] as number);
    }
    return sum;
  };
  for (let round = 0; ; round++) {
    for (let i = 0; i < count; i++) {
      const told = pixels.background[i] as number;
      const shown = model.at(
        pixels.x[i] as number,
        pixels.y[i] as number,
        behind[i] as number,
        disc,
        gradients,
        i * parameters,
      );
      const open = 1 - model.cover;
      const value = shown + open * (told - (behind[i] as number));
      const seen = pixels.value[i] as number;
      difference[i] = model.cover < 0.5 ? 0 : (value - told) / model.cover;
      // At the format's end a pixel only says that it is no darker.
      residuals[i] = seen >= white && value >= white ? 0 : seen - value;
      // The model's value: by its own value a pixel's weight would go with its noise.
      const ownVariance = noise.readVariance + noise.gain * Math.max(0, Math.min(white, value));
      const toldVariance = (noise.readVariance + noise.gain * Math.max(0, told)) / averaged;
      variance[i] = ownVariance + open * open * toldVariance;
      // Slopes at the scene as it was told would go with its noise, and so with the residuals: the outline would be
      // drawn outwards where the ball is dim (errors in variables).
      behind[i] =
        told + ((open * toldVariance) / (variance[i] as number)) * (residuals[i] as number);
    }
    const early = opening ? OPENING_CUTS[round] : undefined;
    const held = early !== undefined;
    if (
      equations !== null &&
      costNow() > cost + SAME_COST &&
      damping < MOST_DAMPING &&
      round < MOST_ROUNDS - 1
    ) {
      // A step too far: again from where it began, shorter.
      damping = Math.max(LEAST_DAMPING, 10 * damping);
      if (onItsWay) leastDamping = LEAST_DAMPING;
      copyDisc(kept, disc);
      if (!takeStep(disc, equations, dampedInverse(equations, damping), ball.radius)) return null;
      continue;
    }
    const wasShortened = damping >= MUCH_DAMPING;
    damping = damping <= LEAST_DAMPING ? leastDamping : damping / 10;
    contrast = meanContrast(pixels, difference);
    noiseRatio = residualScale(pixels, residuals, variance);
    const opened = early === undefined ? 0 : early * Math.abs(contrast);
    for (let i = 0; i < count; i++) {
      const cut = finalCut(Math.sqrt(variance[i] as number), contrast, noiseRatio);
      precision[i] = weightOf(residuals[i] as number, Math.max(opened, cut));
    }
    if (!held) spreadThrownOut(pixels, precision, weights);
    else weights.set(precision);
    for (let i = 0; i < count; i++) {
      const clipped = (pixels.value[i] as number) >= white && residuals[i] === 0;
      const counts = pixels.used[i] === 1 && !clipped;
      precision[i] = counts ? (weights[i] as number) / (variance[i] as number) : 0;
    }
    equations = gatherEquations(pixels, residuals, precision, gradients, parameters);
    const scale2 = ball.look?.inflation ?? Math.max(1, noiseRatio) ** 2;
    level = Math.abs(contrast) + meanBackground;
    addPriors(equations, disc, ball, { contrast, level }, scale2, { lamp, held });
    const inverse = definiteInverse(equations.normal, parameters);
    if (inverse === null) return null;
    const before = cost;
    cost = held ? Number.POSITIVE_INFINITY : costNow();
    copyDisc(disc, kept);
    const stepping = damping === 0 ? inverse : dampedInverse(equations, damping);
    if (!takeStep(disc, equations, stepping, ball.radius)) return null;
    // Of the undamped step: a damped one is short however far the fit still has to go.
    const moved = Math.max(
      Math.abs(stepOf(inverse, equations.rhs, 0)),
      Math.abs(stepOf(inverse, equations.rhs, 1)),
    );
    const enough = Math.max(SETTLED, SETTLED_SHARE * Math.sqrt(inverse[0] as number));
    // A step that had to be shortened much, was short anyway and gains nothing: the cost is at its least.
    const atLeast = wasShortened && moved < NEARLY && before - cost < SAME_COST;
    const farEnough = onItsWay && before - cost < SOFT_GAIN;
    const settled = !held && round > 1 && (moved < enough || atLeast || farEnough);
    if (settled || round >= MOST_ROUNDS - 1) {
      copyDisc(kept, disc);
      return {
        weights,
        residuals,
        variance,
        precision,
        gradients,
        normal: equations.normal,
        inverse,
        contrast,
        level,
        noiseRatio,
        moved,
      };
    }
    if (lamp && opening && round === OPENING_CUTS.length - 1) {
      startLamp(disc.shade);
      cost = Number.POSITIVE_INFINITY;
    }
    if (!soft && round === HOLD_ROUND) {
      shading.hold(disc.shade);
      cost = Number.POSITIVE_INFINITY;
    }
  }
}

/** Residual from which on a pixel with this noise counts for nothing. */
export const finalCut = (sigma: number, contrast: number, noiseRatio: number): number =>
  Math.max(LEAST_CUT * Math.abs(contrast), CUT_SIGMAS * Math.max(1, noiseRatio) * sigma);

/** Weight of a pixel: one up to half the cut, then down to none at the cut. */
export function weightOf(residual: number, cut: number): number {
  const u = (2 * Math.abs(residual)) / cut - 1;
  if (u <= 0) return 1;
  return u < 1 ? (1 - u * u) ** 2 : 0;
}

/** Root-mean-square difference of ball and background on the edge, with the sign of the mean. */
function meanContrast(pixels: DiscPixels, difference: Float64Array): number {
  let sum = 0;
  let squares = 0;
  let n = 0;
  for (let i = 0; i < pixels.count; i++) {
    const d = difference[i] as number;
    if (pixels.edge[i] === 0 || pixels.used[i] === 0 || d === 0) continue;
    sum += d;
    squares += d * d;
    n++;
  }
  return n === 0 ? 0 : Math.sign(sum) * Math.sqrt(squares / n);
}

/** Robust standard deviation of the residuals in units of the noise. */
function residualScale(
  pixels: DiscPixels,
  residuals: Float64Array,
  variance: Float64Array,
): number {
  const sizes = new Float64Array(pixels.count);
  let n = 0;
  for (let i = 0; i < pixels.count; i++) {
    if (pixels.used[i] === 0) continue;
    sizes[n++] = Math.abs(residuals[i] as number) / Math.sqrt(variance[i] as number);
  }
  return n > 0 ? DEVIATION_OVER_MEDIAN * medianInPlace(sizes, n) : 1;
}
