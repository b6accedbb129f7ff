import type { GreyFrame } from '../core/frame';
import { failure, type Outcome, type ReasonValues, success } from '../core/reason';
import type { ImagePoint } from '../core/units';
import { blurAt, centreFromMiddle, type Shape, shapeAt } from './ballShape';
import { clearSectors } from './beside';
import { type DiscFit, fitDisc } from './discFit';
import { scaledShade } from './discShade';
import { localGain, saturatedShare } from './light';
import { count, findOutline, RAYS } from './outline';
import { meanBrightness } from './shadePattern';
import { faceOf } from './surface';
import type { Background, BallModel, CentreMeasurement } from './types';
import { behindVeil } from './veil';

/** Share of the outline below which its centre is not to be trusted. */
export const LEAST_VISIBLE = 0.35;
/** Share found by rays from which a fit may start; it finds fainter parts of the outline itself. */
const LEAST_TO_START = 0.2;
export const LEAST_CONTRAST_TO_NOISE = 2.5;
/** Least contrast as a share of the grey range: compression alone makes steps of about this. */
const LEAST_CONTRAST_SHARE = 0.03;
/** The fitted radius may differ from the expected one by this share, or four of its standard uncertainties. */
const RADIUS_TOLERANCE = 0.08;
/**
 * With the ball learnt its place is known to this share of the radius, and its brightness to this share of
 * the contrast, or so many times its spread from frame to frame.
 */
const LEARNT_REACH = 0.35;
const LEARNT_SHARE = 0.8;
const LEARNT_SPREADS = 5;
/** Sizes tried, as multiples of that expected, to tell a wrong scale from no ball. */
const OTHER_SIZES = [1.12, 0.88, 1.25, 0.75] as const;

/**
 * Sub-pixel centre of the ball near `at`, in the middle of the exposure and, with a rolling shutter, at
 * the moment its line is read; with its covariance. Works on whatever part of the outline shows.
 * Refuses with `noBall`, `lowContrast`, `arcTooShort`, `atFrameEdge`, `radiusMismatch`.
 */
export const measureCentre = (
  frame: GreyFrame,
  background: Background,
  at: ImagePoint,
  ball: BallModel,
): Outcome<CentreMeasurement> => examineCentre(frame, background, at, ball).measurement;

/** A measurement with the fit behind it, where one came about. */
export interface Examination {
  readonly measurement: Outcome<CentreMeasurement>;
  readonly fit: DiscFit | null;
  /** The ball as it was fitted: its blur in ball coordinates. */
  readonly ball: BallModel;
  readonly shape: Shape;
  /** The frame's level over the background's. */
  readonly gain: number;
  /** The background as the fit had it. */
  readonly behind: Background;
}

/** The same as `measureCentre`, laid open. */
export function examineCentre(
  frame: GreyFrame,
  background: Background,
  at: ImagePoint,
  model: BallModel,
): Examination {
  const ball = { ...model, blur: blurAt(model, at) };
  const where = placeOf(frame, at);
  const gain = localGain(frame, background, at, ball);
  const shape = shapeAt(ball, at);
  let behind = background;
  const examined = (measurement: Outcome<CentreMeasurement>, fit: DiscFit | null): Examination => ({
    measurement,
    fit,
    ball,
    shape,
    gain,
    behind,
  });
  const outline = findOutline(frame, background, gain, at, ball, shape);
  if (outline === null) {
    return examined(nothingFound(frame, background, gain, at, ball, shape, where), null);
  }
  const [x, y] = outline.middle;
  const shown = count(outline.seen) / RAYS;
  if (shown < LEAST_TO_START) return examined(tooShort(frame, [x, y], ball, shown, where), null);
  const clear = clearSectors(frame, background, gain, outline, ball, shape);
  behind = behindVeil(frame, background, gain, [x, y], ball, shape, clear);
  const fit = fitDisc(frame, behind, gain, { x, y, seen: outline.seen, clear }, ball, shape);
  if (fit === null) {
    const none = failure(
      'noBall',
      `The outline in ${where.said} could not be matched with a disc.`,
      'Place the centre by hand or leave the frame out.',
      { form: 'noDisc', ...where.values },
    );
    return examined(none, null);
  }
  const judged = judge(frame, background, gain, fit, at, [x, y], ball, where);
  const surface = judged.ok ? faceOf(frame, behind, gain, fit, ball, shape) : null;
  return examined(
    judged.ok && surface !== null ? success({ ...judged.value, surface }) : judged,
    fit,
  );
}

/** A place in a frame, in words and as values. */
interface Where {
  readonly said: string;
  readonly values: ReasonValues;
}

function placeOf({ index }: GreyFrame, at: ImagePoint): Where {
  const [x, y] = at.map((one) => one.toFixed(0)) as [string, string];
  return { said: `frame ${index} near (${x}, ${y})`, values: { frame: index, x, y } };
}

/** Why no outline was found: the border cuts it, it has another size, or there is none. */
function nothingFound(
  frame: GreyFrame,
  background: Background,
  gain: number,
  at: ImagePoint,
  ball: BallModel,
  shape: Shape,
  where: Where,
): Outcome<never> {
  if (cutByBorder(frame, at, 0.7 * ball.radius)) return tooShort(frame, at, ball, null, where);
  for (const factor of OTHER_SIZES) {
    const radius = factor * ball.radius;
    const other = findOutline(frame, background, gain, at, { ...ball, radius }, shape);
    if (other !== null && count(other.seen) > RAYS / 2) {
      return radiusMismatch(radius, ball.radius, 0, where);
    }
  }
  return failure(
    'noBall',
    `No outline of the ball's size stands out in ${where.said}.`,
    'Step to the frame: place the centre by hand if the ball is there.',
    { form: 'noOutline', ...where.values },
  );
}

function judge(
  frame: GreyFrame,
  background: Background,
  gain: number,
  fit: DiscFit,
  at: ImagePoint,
  start: ImagePoint,
  ball: BallModel,
  where: Where,
): Outcome<CentreMeasurement> {
  const { disc, covariance, contrast, radiusU, shade } = fit;
  const visible = count(fit.seen) / RAYS;
  const { noise, white } = background;
  const brightness = Math.max(1e-6 * white, meanBrightness(shade));
  const sigma = Math.sqrt(noise.readVariance + noise.gain * brightness);
  if (
    Math.abs(contrast) < LEAST_CONTRAST_TO_NOISE * sigma ||
    Math.abs(contrast) < LEAST_CONTRAST_SHARE * white
  ) {
    const grey = Math.abs(contrast).toFixed(1);
    return failure(
      'lowContrast',
      `In ${where.said} the ball differs from the background by only ${grey} grey values.`,
      'Light the ball or darken the background; leave this frame out.',
      { grey, ...where.values },
    );
  }
  const middle: ImagePoint = [disc.x, disc.y];
  if (visible < LEAST_VISIBLE) return tooShort(frame, middle, ball, visible, where);
  const strayed = Math.hypot(disc.x - start[0], disc.y - start[1]) > 0.5 * ball.radius;
  const spread = Math.sqrt(covariance[0] + covariance[3]);
  if (strayed || !(spread < 0.25 * ball.radius)) {
    return failure(
      'noBall',
      `What stands out in ${where.said} has no steady disc shape.`,
      'Place the centre by hand or leave the frame out.',
      { form: 'unsteady', ...where.values },
    );
  }
  if (!isAsLearnt(frame, brightness / gain, contrast, middle, at, ball)) {
    return failure(
      'noBall',
      `The disc in ${where.said} is not where, or not as bright as, the other frames have the ball.`,
      'Step to the frame: place the centre by hand if the ball can be seen there, or leave it out.',
      { form: 'elsewhere', ...where.values },
    );
  }
  const off = Math.abs(disc.radius - ball.radius);
  if (off > RADIUS_TOLERANCE * ball.radius && off > 4 * radiusU) {
    return radiusMismatch(disc.radius, ball.radius, 1, where);
  }
  const [x, y] = centreFromMiddle(ball, middle);
  return success({
    x,
    y,
    varX: covariance[0],
    varY: covariance[3],
    covXY: covariance[1],
    radius: { value: disc.radius, u: radiusU },
    visible,
    contrast,
    brightness: brightness / gain,
    saturated: saturatedShare(frame, middle, ball.radius),
    look: {
      sigma: disc.sigma,
      stretch: disc.stretch,
      shade: Array.from(scaledShade(shade, 1 / brightness)),
    },
    ...(fit.blur === null ? {} : { blur: fit.blur }),
    evidence: fit.evidence,
  });
}

/** Whether a disc is near where the ball was looked for and as bright as the ball is in other frames. */
function isAsLearnt(
  frame: GreyFrame,
  shown: number,
  contrast: number,
  middle: ImagePoint,
  at: ImagePoint,
  { radius, brightness }: BallModel,
): boolean {
  if (brightness === undefined) return true;
  const { value, u } = brightness;
  return (
    beyondReach(frame, middle, at) <= LEARNT_REACH * radius &&
    Math.abs(shown - value) <= Math.max(LEARNT_SHARE * Math.abs(contrast), LEARNT_SPREADS * u)
  );
}

/** Distance of a disc from where it was looked for; there a place outside the picture is one on its border. */
const beyondReach = ({ width, height }: GreyFrame, [x, y]: ImagePoint, [ax, ay]: ImagePoint) =>
  Math.hypot(Math.max(0, Math.min(width - 1, x)) - ax, Math.max(0, Math.min(height - 1, y)) - ay);

function radiusMismatch(
  found: number,
  expected: number,
  digits: number,
  where: Where,
): Outcome<never> {
  const about = digits === 0 ? 'about ' : '';
  const values = { found: found.toFixed(digits), expected: expected.toFixed(1) };
  return failure(
    'radiusMismatch',
    `The disc in ${where.said} has a radius of ${about}${values.found} px; ${values.expected} px are expected from the ball's diameter and the scale.`,
    'Check the ball diameter and the known length; if both are right this is not the ball.',
    { ...values, ...where.values },
  );
}

const cutByBorder = ({ width, height }: GreyFrame, [x, y]: ImagePoint, reach: number): boolean =>
  x < reach || y < reach || x > width - 1 - reach || y > height - 1 - reach;

/** `visible` null: too little to say how much. */
function tooShort(
  frame: GreyFrame,
  middle: ImagePoint,
  { radius }: BallModel,
  visible: number | null,
  where: Where,
): Outcome<never> {
  const share = visible === null ? '' : `${Math.round(100 * visible)} %`;
  const part = visible === null ? 'too little' : `only ${share}`;
  const values = { form: visible === null ? 'little' : 'share', share, ...where.values };
  return cutByBorder(frame, middle, radius)
    ? failure(
        'atFrameEdge',
        `In ${where.said} the frame's edge leaves ${part} of the ball's outline in view.`,
        'Leave this frame out; others show more of the ball.',
        values,
      )
    : failure(
        'arcTooShort',
        `In ${where.said} ${part} of the ball's outline shows.`,
        'Leave this frame out; others show more of the ball.',
        values,
      );
}
