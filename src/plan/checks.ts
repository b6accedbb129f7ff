import type { Reason } from '../core/reason';
import { LEAST_CONTRAST_TO_NOISE } from '../image/centre';
import { SMALLEST_RADIUS } from '../reduction/scene';
import type { Plan } from '../shot/planning';
import { lightingAt } from './light';
import { ballRadius, lengthInPicture, metresPerPixel } from './plannedShot';

/** Something about a plan's settings, with what to do. */
export interface PlanCheck extends Reason {
  readonly remedy: string;
  /** With it nothing can be expected. */
  readonly blocks: boolean;
}

/** Checked for a ball this many standard uncertainties faster than expected. */
const FASTER = 2;
const FEWEST_FRAMES = 3;
const FEW_FRAMES = 5;
/** Below it edge and pixel are of one size, px. */
const SMALL_RADIUS = 6;
const LOW_CONTRAST = 5;
const LONGEST_IN_VIEW = 0.95;
/** Change of the picture's light that is worth a word. */
const DARK = 0.7;
const BRIGHT = 1.4;
/** Reach of the muzzle zone, ball diameters. */
const ZONE_REACH = 3;

/** What cannot be, or is better otherwise, those that block first. */
export function checkPlan(plan: Plan): PlanCheck[] {
  const found = [...geometry(plan), ...time(plan), ...light(plan), ...scale(plan)];
  return found.sort((a, b) => Number(b.blocks) - Number(a.blocks));
}

/** The first thing that leaves nothing to be expected; null: there is none. */
export const blockingCheck = (plan: Plan): PlanCheck | null =>
  checkPlan(plan).find(({ blocks }) => blocks) ?? null;

type Told = (PlanCheck | false)[];
const kept = (told: Told): PlanCheck[] => told.filter((one) => one !== false);

type Rest = Pick<PlanCheck, 'values'> & { readonly blocks?: boolean };

const check = (
  code: string,
  message: string,
  remedy: string,
  { blocks = false, ...rest }: Rest = {},
): PlanCheck => ({ ...{ code, message, remedy, blocks }, ...rest });

function geometry(plan: Plan): PlanCheck[] {
  const { view, camera, ball } = plan;
  const radius = ballRadius(plan);
  const high = camera.height * metresPerPixel(plan);
  const diameter = ball.diameter.value;
  if (!(view.beforeMuzzle >= 0 && view.beforeMuzzle < view.across)) {
    return [
      check(
        'planMuzzleOutside',
        'The muzzle plane lies outside the field of view.',
        'Leave less before the muzzle, or widen the view.',
        { blocks: true },
      ),
    ];
  }
  if (diameter > Math.min(view.across - view.beforeMuzzle, high)) {
    const values = {
      ...{ diameter: mm(diameter), high: mm(high) },
      across: mm(view.across - view.beforeMuzzle),
    };
    return [
      check(
        'planBallTooLarge',
        `The ball, ${values.diameter}, does not fit into the ${values.across} past the muzzle by ${values.high} that the picture shows.`,
        'Widen the field of view, or use more rows.',
        { blocks: true, values },
      ),
    ];
  }
  return kept([
    radius < SMALLEST_RADIUS &&
      check(
        'planBallTooSmall',
        `The ball is ${(2 * radius).toFixed(1)} px across; at least ${2 * SMALLEST_RADIUS} px are needed.`,
        'Narrow the field of view, or use more pixels along it.',
        {
          blocks: true,
          values: { across: (2 * radius).toFixed(1), least: 2 * SMALLEST_RADIUS },
        },
      ),
    radius >= SMALLEST_RADIUS &&
      radius < SMALL_RADIUS &&
      check(
        'planBallSmall',
        `The ball's radius is ${radius.toFixed(1)} px; below ${SMALL_RADIUS} px its outline is hardly told from its blur.`,
        'Narrow the field of view, or use more pixels along it.',
        { values: { radius: radius.toFixed(1), small: SMALL_RADIUS } },
      ),
    view.across - view.beforeMuzzle < ZONE_REACH * diameter &&
      check(
        'planInsideMuzzleZone',
        'The view ends within three ball diameters of the muzzle, where drag and the loss at the muzzle cannot be told apart.',
        'Widen the field of view, or leave less of it before the muzzle.',
      ),
  ]);
}

function time(plan: Plan): PlanCheck[] {
  const { view, camera, speed } = plan;
  const interval = 1 / camera.rate.value;
  const fast = speed.value + FASTER * speed.u;
  const frames = ((view.across - view.beforeMuzzle) / fast) * camera.rate.value;
  const blur = (fast * camera.exposure.value) / metresPerPixel(plan) / ballRadius(plan);
  const { direction, lineTime } = camera.readout;
  const lines = direction === 'down' || direction === 'up' ? camera.height : camera.width;
  const speedText = `${fast.toFixed(fast < 10 ? 1 : 0)} m/s`;
  const inWords = `A ball of ${speedText}`;
  const rate = Math.ceil((FEW_FRAMES * camera.rate.value) / frames);
  return kept([
    camera.exposure.value > interval &&
      check(
        'planExposureTooLong',
        `The exposure, ${us(camera.exposure.value)}, is longer than a frame, ${us(interval)}.`,
        `Expose for less than ${us(interval)}, or lower the rate.`,
        { blocks: true, values: { exposure: us(camera.exposure.value), interval: us(interval) } },
      ),
    lines * lineTime.value > interval * 1.001 &&
      check(
        'planReadoutTooLong',
        `Reading ${lines} lines takes ${us(lines * lineTime.value)}, longer than a frame, ${us(interval)}.`,
        'Check the time per line, use fewer lines, or lower the rate.',
        {
          blocks: true,
          values: { lines, readout: us(lines * lineTime.value), interval: us(interval) },
        },
      ),
    frames < FEWEST_FRAMES &&
      check(
        'planTooFast',
        `${inWords} leaves the view within ${frames.toFixed(1)} frames; a speed needs ${FEWEST_FRAMES}.`,
        `Film at ${rate} frames/s or more, or widen the view.`,
        {
          blocks: frames < 1,
          values: {
            ...{ speed: speedText, frames: frames.toFixed(1) },
            ...{ fewest: FEWEST_FRAMES, rate },
          },
        },
      ),
    frames >= FEWEST_FRAMES &&
      frames < FEW_FRAMES &&
      check(
        'planFewFrames',
        `${inWords} is in view for ${frames.toFixed(1)} frames: an outlier among so few cannot be told.`,
        'Film at a higher rate, or widen the view.',
        { values: { speed: speedText, frames: frames.toFixed(1) } },
      ),
    blur > 1 &&
      check(
        'planLongBlur',
        `${inWords} moves ${blur.toFixed(1)} of its radii during an exposure: its edges fade, and its centre is known less well than expected here.`,
        `Expose for ${us(camera.exposure.value / blur)} or less, with ${blur.toFixed(1)} times the light.`,
        {
          values: {
            ...{ speed: speedText, blur: blur.toFixed(1) },
            exposure: us(camera.exposure.value / blur),
          },
        },
      ),
  ]);
}

function light({ picture, camera }: Plan): PlanCheck[] {
  const { contrastToNoise, exposed, needed, brightest } = lightingAt(
    picture.light,
    camera.exposure.value,
  );
  const white = brightest === null ? exposed > BRIGHT : brightest > 1;
  const contrast = contrastToNoise.toFixed(1);
  const light = needed.toPrecision(2);
  return kept([
    contrastToNoise < LEAST_CONTRAST_TO_NOISE &&
      check(
        'planNoContrast',
        `The ball stands out by ${contrast} times the noise; at least ${LEAST_CONTRAST_TO_NOISE} are needed.`,
        'Use more light, a longer exposure, or a background that differs more from the ball.',
        { blocks: true, values: { contrast, least: `${LEAST_CONTRAST_TO_NOISE}` } },
      ),
    contrastToNoise >= LEAST_CONTRAST_TO_NOISE &&
      contrastToNoise < LOW_CONTRAST &&
      check(
        'planLowContrast',
        `The ball stands out by ${contrast} times the noise only: frames may be refused.`,
        'Use more light, a longer exposure, or a background that differs more from the ball.',
        { values: { contrast } },
      ),
    exposed < DARK &&
      check(
        'planTooDark',
        `The picture gets ${(100 * exposed).toFixed(0)} % of the light of the one its contrast was read off.`,
        `Use ${light} times the light of then, or expose for longer.`,
        { values: { share: `${(100 * exposed).toFixed(0)} %`, light } },
      ),
    white &&
      check(
        'planTooBright',
        brightest === null
          ? `The picture gets ${exposed.toPrecision(2)} times the light of the one its contrast was read off: the ball may turn white.`
          : 'Ball or background turns white: its edge is cut off.',
        `Use ${light} times the light of then.`,
        {
          values: {
            form: brightest === null ? 'may' : 'will',
            ...{ times: exposed.toPrecision(2), light },
          },
        },
      ),
  ]);
}

function scale(plan: Plan): PlanCheck[] {
  const share = lengthInPicture(plan) / plan.camera.width;
  return kept([
    share > LONGEST_IN_VIEW &&
      check(
        'planLengthOutOfView',
        'The known length does not fit into the field of view.',
        'Use a shorter one, or widen the view.',
      ),
    plan.scale.cameraDistance === null &&
      check(
        'planParallaxUnknown',
        'Without the camera’s distance the depth of the known length is left out of the uncertainty.',
        'Measure from the lens to the flight line.',
      ),
  ]);
}

const mm = (metres: number): string => `${(1000 * metres).toPrecision(3)} mm`;
const us = (seconds: number): string => `${(1e6 * seconds).toPrecision(3)} µs`;
