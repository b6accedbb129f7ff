import type { Reason } from '../../src/core/reason';
import { buildBackground } from '../../src/image/background';
import { measureCentre } from '../../src/image/centre';
import { learnBrightness } from '../../src/image/hiddenPixels';
import { learnBall } from '../../src/image/learnBall';
import { judgeScatter } from '../../src/image/scatter';
import type { BallModel, CentreMeasurement } from '../../src/image/types';
import type { Prior } from './bound';
import type { RenderedFrame } from './render/film';
import type { Random } from './render/random';
import type { Shot } from './shot';

/** How well radius and exposure are known beforehand, as shares; the pipeline allows the radius more. */
const RADIUS_ERROR = 0.01;
const RADIUS_U = 0.02;
const EXPOSURE_ERROR = 0.04;
/** The first guess is off the truth by up to this share of the radius. */
const HINT_ERROR = 0.25;

export interface Measured {
  /** One for each sighting of the shot. */
  readonly centres: readonly (CentreMeasurement | Reason)[];
  /** What was known before the last pass. */
  readonly prior: Prior;
}

export const isMeasured = (centre: CentreMeasurement | Reason): centre is CentreMeasurement =>
  'varX' in centre;

/** A film's first pass: every frame by itself. */
export interface FirstPass {
  readonly ball: BallModel;
  readonly alone: Measured['centres'];
  /** Measures all frames with another model of the ball. */
  readonly pass: (model: BallModel) => (CentreMeasurement | Reason)[];
}

/** Measures a film as the reduction does at first: background, and each frame by itself. */
export function measureAlone(
  shot: Shot,
  frames: readonly RenderedFrame[],
  random: Random,
): FirstPass {
  const built = buildBackground(frames);
  if (!built.ok) throw new Error(built.reason.message);
  const background = built.value;
  const [first] = shot.sightings;
  if (first === undefined) throw new Error('A shot needs a ball.');
  const { radius, sweep } = first.ball;
  const told = radius * (1 + random.normal(0, RADIUS_ERROR));
  const exposure = 1 + random.normal(0, EXPOSURE_ERROR);
  const ball: BallModel = {
    radius: told,
    radiusU: RADIUS_U * told,
    blur: [sweep[0] * exposure, sweep[1] * exposure],
    region: [0, 0, shot.width, shot.height],
  };
  const hints = shot.sightings.map(({ ball: { x, y } }) => {
    const off = HINT_ERROR * radius * Math.sqrt(random.uniform(0, 1));
    const towards = random.uniform(0, 2 * Math.PI);
    // Looked for within the image, as the reduction does.
    return [
      Math.min(shot.width - 1, Math.max(0, x + off * Math.cos(towards))),
      Math.min(shot.height - 1, Math.max(0, y + off * Math.sin(towards))),
    ] as const;
  });
  const pass = (model: BallModel): (CentreMeasurement | Reason)[] =>
    hints.map((at, i) => {
      const frame = frames[shot.before + i];
      if (frame === undefined) throw new Error(`Frame ${shot.before + i} is missing.`);
      const centre = measureCentre(frame, background, at, model);
      return centre.ok ? centre.value : centre.reason;
    });
  return { ball, alone: pass(ball), pass };
}

/** Measures a film as the reduction does: a first pass, the ball learnt, a second pass. */
export function measureShot(
  shot: Shot,
  frames: readonly RenderedFrame[],
  random: Random,
): Measured {
  const { ball, alone, pass } = measureAlone(shot, frames, random);
  const shown = alone.filter(isMeasured);
  const known = learnBall(ball, shown);
  const learnt = known === ball ? ball : learnBrightness(known, shown);
  return {
    centres: learnt === ball ? alone : judged(pass(learnt)),
    prior: {
      radiusU: learnt.radiusU ?? 0.03 * learnt.radius,
      softnessU: learnt.look?.sigmaU ?? 1,
      sweepU: learnt.look?.stretchU ?? 0.15,
    },
  };
}

/** With their covariances judged by the flight; frames follow each other evenly. */
function judged(centres: readonly (CentreMeasurement | Reason)[]): (CentreMeasurement | Reason)[] {
  const flight = centres.flatMap((centre, time) => (isMeasured(centre) ? [{ time, centre }] : []));
  const right = new Map(judgeScatter(flight).map((centre, i) => [flight[i]?.time, centre]));
  return centres.map((centre, time) => right.get(time) ?? centre);
}
