import { failure, type Outcome, success } from '../core/reason';
import type { Seconds } from '../core/units';
import { fitLinear } from '../fit/linear';
import { fitRobustly } from '../fit/robust';
import { axisLeverage } from './axisLeverage';
import { type Face, layBack, type Patterns, patternsOf } from './faces';
import { halfWidth, type Spectrum, spectrumOf } from './spectrum';
import { emptySplit, frameTurn, leftOver, type Split, type Strengths, splitAt } from './turning';

/** How a mark on the ball turns. */
export interface Turning {
  /** rad/s, positive from x towards y, with its standard uncertainty from the frames. */
  readonly rate: number;
  readonly u: number;
  /** Degrees of freedom of `u`; null: noise as stated. */
  readonly dof: number | null;
  readonly frames: number;
  /** Other rates within half a turn a frame that explain the frames about as well. */
  readonly others: readonly number[];
}

const FEWEST_FACES = 4;
/** A mark has to explain this many times as much of the frames' changes as noise alone would. */
const SIGNIFICANT = 2.5;
/** A mark that turns in the image plane leaves no more than this share of its own strength unexplained. */
const MISFIT = 0.03;
/** The axis is taken to lie off the line of sight by an angle of this standard uncertainty, rad (about 6 degrees). */
const TILT_U = 0.1;
/** Share of frames in which the mark has to show, at its strength give or take this share. */
const SHOWN_FRAMES = 0.8;
const SHOWN_STRENGTH = 0.5;
/** A turn over the whole film has to be known better than this, rad. */
const MOST_TURN_U = 0.3;
/** Tukey weight under which a frame's angle is a gross error. */
const OUTLIER_WEIGHT = 0.04;
/** Light only adds to a ball: a spot that is darker than this share of the contrast is on it. */
const DARK = 0.3;
/** A spot, no side in shadow: at most this share of the face. */
const SPOT_SHARE = 0.3;
/** Another rate as good and nearer than this turn a frame, rad, is no alias: the turn is too slight to be told. */
const ALIAS = 0.6;
/** No order of a mark is stronger than this share of the contrast. */
const MARK_STRENGTH = 0.15;
/** What stands still, where it may be anything: the light's pattern, and a mark that hardly turns. */
const ANY_LIGHT: Strengths = { turning: MARK_STRENGTH, still: Number.POSITIVE_INFINITY };
/** The same where a dark spot has to be a mark, bright ones cut off: nothing. */
const NO_LIGHT: Strengths = { turning: MARK_STRENGTH, still: 0 };
/** What is brighter than the plain ball by more than this share of the contrast is light, not mark. */
const BRIGHT = 0.03;

/**
 * Follows the mark on the ball's face over the frames. Lighting stands still in the image, a mark turns: the rate
 * is that at which one turning pattern explains most of what changes. Only a dark spot is known for a mark though it
 * hardly turns. Frames need not follow each other; rates beyond half a turn in `interval`, the shortest time between
 * frames, are not looked for.
 * Failures: `fewFaces`, `noMark`, `turnsTooLittle`, `spinOutOfPlane`.
 */
export function followMark(faces: readonly Face[], interval: Seconds): Outcome<Turning> {
  const patterns = patternsOf(faces);
  if (patterns === null || patterns.n < FEWEST_FACES) {
    const frames = patterns?.n ?? 0;
    return failure(
      'fewFaces',
      `The ball's whole face shows in ${frames} frame${frames === 1 ? '' : 's'}; telling how it turns needs at least ${FEWEST_FACES}.`,
      'Film a longer stretch of free flight.',
      { frames, fewest: FEWEST_FACES },
    );
  }
  const values = 2 * patterns.rings * patterns.orders;
  const changes = leftOver(patterns, ANY_LIGHT, 0);
  const expected = values * (patterns.n - 1);
  const turned = spectrumOf(patterns, interval, ANY_LIGHT);
  const noise = Math.max(1, (changes - turned.gain) / (expected - values));
  let found: Outcome<Turning> = changes > SIGNIFICANT * expected ? outOfPlane() : noMark();
  if (turned.gain / values / noise > SIGNIFICANT) {
    const width = Math.sqrt(noise) * halfWidth(patterns, turned, ANY_LIGHT);
    const doubtful = turned.others.some(
      (other) => Math.abs(other - turned.rate) < ALIAS / interval,
    );
    const slight = doubtful || width * spanOf(patterns) > MOST_TURN_U;
    found = slight ? turnsTooLittle() : conclude(patterns, turned, ANY_LIGHT);
  }
  if (found.ok) return found;
  const dark = patternsOf(faces.map(withoutBright));
  if (dark === null) return found;
  const slow = spectrumOf(dark, interval, NO_LIGHT);
  if (!hasDarkSpot(dark, slow.rate)) return found;
  const known = conclude(dark, slow, NO_LIGHT);
  return known.ok ? known : found;
}

function conclude(
  patterns: Patterns,
  { rate, gain, others, step }: Spectrum,
  strengths: Strengths,
): Outcome<Turning> {
  const split = emptySplit(patterns);
  splitAt(patterns, rate, strengths, -1, split);
  const left = leftOver(patterns, strengths, gain);
  const noise = 2 * patterns.rings * patterns.orders * (patterns.n - 2);
  if (left - noise > MISFIT * powerOf(patterns, split) + 5 * Math.sqrt(2 * noise)) {
    return outOfPlane();
  }
  const angles = patterns.faces[0]?.surface.angles ?? 0;
  const still = layBack(patterns, split.stillRe, split.stillIm, angles);
  const turns = Array.from({ length: patterns.n }, (_, i) =>
    frameTurn(patterns, rate, strengths, i, split),
  );
  const shown = turns.filter(
    ({ strength, strengthU }) => Math.abs(strength - 1) < SHOWN_STRENGTH + 2 * strengthU,
  );
  if (shown.length < SHOWN_FRAMES * patterns.n) return outOfPlane();
  const steady = steadiness(
    patterns.times,
    turns.map(({ ahead }) => ahead),
    turns.map(({ u }) => u),
  );
  if (steady === null) return outOfPlane();
  const width = halfWidth(patterns, { rate, gain, others, step }, strengths) * steady.scatter;
  const leverage = axisLeverage(patterns, still, rate);
  if (leverage === null) return turnsTooLittle();
  const u = Math.hypot(width, leverage * TILT_U * Math.hypot(rate, width));
  if (u * spanOf(patterns) > MOST_TURN_U) return turnsTooLittle();
  return success({ rate, u, dof: steady.dof, frames: patterns.n, others });
}

function withoutBright(face: Face): Face {
  const most = BRIGHT * Math.abs(face.contrast);
  const residual = face.surface.residual.map((value) => Math.min(value, most));
  return { ...face, surface: { ...face.surface, residual } };
}

const spanOf = ({ times, n }: Patterns): Seconds => (times[n - 1] as number) - (times[0] as number);

/** Chi-square that the turning pattern makes over the frames. */
function powerOf({ weights }: Patterns, { turningRe, turningIm }: Split): number {
  const power = turningRe.reduce((sum, re, q) => sum + re * re + (turningIm[q] as number) ** 2, 0);
  return power * weights.reduce((a, b) => a + b, 0);
}

/** Whether the pattern that turns at `rate` is a spot darker than the ball around it. */
function hasDarkSpot(patterns: Patterns, rate: number): boolean {
  const split = emptySplit(patterns);
  splitAt(patterns, rate, NO_LIGHT, -1, split);
  const angles = patterns.faces[0]?.surface.angles ?? 0;
  const grid = layBack(patterns, split.turningRe, split.turningIm, angles);
  const { rings, contrast } = patterns;
  let darkest = 0;
  let dark = 0;
  for (let r = 0; r < rings; r++) {
    const ring = grid.slice(r * angles, (r + 1) * angles);
    const level = ring.slice().sort()[angles >> 1] as number;
    for (const value of ring) {
      const depth = (level - value) / contrast;
      darkest = Math.max(darkest, depth);
      if (depth > DARK / 2) dark++;
    }
  }
  return darkest > DARK && dark < SPOT_SHARE * rings * angles;
}

/** Scatter of the frames' angles over that from noise, at least 1, and its degrees of freedom; null: no straight line. */
function steadiness(
  times: Float64Array,
  ahead: readonly number[],
  u: readonly number[],
): { readonly scatter: number; readonly dof: number | null } | null {
  const n = times.length;
  const mean = times.reduce((a, b) => a + b) / n;
  const design = new Float64Array(2 * n).fill(1, 0, n);
  for (let i = 0; i < n; i++) design[n + i] = (times[i] as number) - mean;
  const sigmas = Float64Array.from(u);
  const robust = fitRobustly(
    (enlarged) => fitLinear(design, Float64Array.from(ahead), enlarged),
    sigmas,
    2,
  );
  if (robust === null) return null;
  const { fit, weights } = robust;
  let chiSquare = 0;
  let counted = 0;
  for (let i = 0; i < n; i++) {
    if ((weights[i] as number) < OUTLIER_WEIGHT) continue;
    chiSquare += ((fit.residuals[i] as number) / (sigmas[i] as number)) ** 2;
    counted++;
  }
  if (counted < SHOWN_FRAMES * n || counted < FEWEST_FACES) return null;
  const dof = counted - 2;
  const excess = chiSquare / dof;
  return { scatter: Math.sqrt(Math.max(1, excess)), dof: excess > 1 ? dof : null };
}

const noMark = () =>
  failure(
    'noMark',
    'Nothing on the face of the ball is seen to turn: it carries no mark that stands out, or hardly spins.',
    'Draw a dark spot or line on the ball, off its middle as the camera sees it.',
  );

const turnsTooLittle = () =>
  failure(
    'turnsTooLittle',
    'What changes on the face of the ball over the frames is too slight to tell a turning mark from the light on it.',
    'Use a dark spot as the mark, which light cannot make, or film a longer stretch.',
  );

const outOfPlane = () =>
  failure(
    'spinOutOfPlane',
    'The face of the ball changes from frame to frame, but not as a mark does that turns in the image plane: it spins about another axis, or something passes before it.',
    'Only rotation about the line of sight can be measured; place the mark and the camera for that.',
  );
