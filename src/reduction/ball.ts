import type { ImageVector } from '../core/units';
import { imageDirection } from '../geometry/view';
import type { BallModel } from '../image/types';
import type { Readout, Shot } from '../shot/schema';
import type { Track } from '../tracking/types';
import type { Scene } from './scene';
import type { ReductionInputs } from './types';

/** What is known of the ball's image before it has been found. */
export function ballAtRest({ shot }: ReductionInputs, scene: Scene): BallModel {
  const { diameter } = shot.ball;
  const relativeU = Math.hypot(diameter.u / diameter.value, scene.scale.u / scene.scale.value);
  return {
    radius: scene.ballRadius,
    radiusU: scene.ballRadius * Math.max(relativeU, LEAST_RADIUS_SHARE),
    blur: [0, 0],
    region: scene.region,
    ...opticsOf(shot, scene),
  };
}

/** As good as endlessly far away, px: perspective then makes no difference. */
const FAR = 1e7;

function opticsOf({ scale }: Shot, { scale: { view, value } }: Scene): Partial<BallModel> {
  const { lens, pixelAspect } = view;
  const stated = scale.cameraDistance === null ? null : scale.cameraDistance.value / value;
  // A plane marked without focal length or distance does not say how the camera stands to it.
  const unknown = scale.plane !== null || (lens === null && pixelAspect === 1);
  if (view.camera === null && (scale.plane !== null || stated === null) && unknown) return {};
  const { principal, focal, ...plane } = view.camera ?? view.lookingSquarely(stated ?? FAR);
  return {
    camera: { centre: principal, distance: focal, plane },
    ...(lens === null ? {} : { lens }),
    pixelAspect,
  };
}

/** Focus and lighting move the apparent outline by about this share, however well diameter and scale are known. */
const LEAST_RADIUS_SHARE = 0.02;

/** The same with its motion known: blur over the exposure, and what a rolling shutter makes of it. */
export function ballInFlight(inputs: ReductionInputs, scene: Scene, track: Track): BallModel {
  const moved = (seconds: number): ImageVector => [
    track.axis[0] * track.speed * seconds,
    track.axis[1] * track.speed * seconds,
  ];
  const inImage = (seconds: number) => imageDirection(scene.atMuzzle, moved(seconds));
  const ball = ballAtRest(inputs, scene);
  const exposed = inputs.shot.timing.exposure?.value ?? 0;
  const { readout } = inputs.shot.timing;
  const lineTime = readout.lineTime.value;
  return {
    ...ball,
    blur: ball.camera === undefined ? inImage(exposed) : moved(exposed),
    ...(lineTime > 0
      ? { readout: { direction: READOUT[readout.direction], motionPerLine: inImage(lineTime) } }
      : {}),
  };
}

/** The same at another speed, so many times the one it was made with. */
export function atPace(ball: BallModel, pace: number): BallModel {
  const { blur, readout } = ball;
  const times = ([x, y]: ImageVector): ImageVector => [pace * x, pace * y];
  return {
    ...ball,
    blur: times(blur),
    ...(readout === undefined
      ? {}
      : { readout: { ...readout, motionPerLine: times(readout.motionPerLine) } }),
  };
}

const READOUT: Record<Readout['direction'], ImageVector> = {
  down: [0, 1],
  up: [0, -1],
  right: [1, 0],
  left: [-1, 0],
};
