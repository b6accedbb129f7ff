import type { FootageInfo } from '../core/film';
import type { Outcome } from '../core/reason';
import type { MetresPerPixel, Pixels } from '../core/units';
import { validateShot } from '../shot/parse';
import type { Plan } from '../shot/planning';
import { SHOT_FORMAT, SHOT_VERSION, type Shot } from '../shot/schema';

/** Named in a shot file until there is a film. */
const NO_FILM_YET = 'clip.mp4';
/** Share of the picture's height at which the known length lies. */
const LENGTH_AT = 0.9;

export const metresPerPixel = ({ view, camera }: Pick<Plan, 'view' | 'camera'>): MetresPerPixel =>
  view.across / camera.width;

export const ballRadius = (plan: Pick<Plan, 'view' | 'camera' | 'ball'>): Pixels =>
  plan.ball.diameter.value / 2 / metresPerPixel(plan);

/** Span of the known length in the picture. */
export function lengthInPicture({ scale, view, camera }: Plan): Pixels {
  const { length, depthOffset, cameraDistance } = scale;
  const nearness =
    cameraDistance === null ? 1 : cameraDistance.value / (cameraDistance.value + depthOffset.value);
  return (length.value / metresPerPixel({ view, camera })) * nearness;
}

/**
 * The shot file of a plan: what a person would state once it is filmed, ends of the length and muzzle where the plan
 * has them. Failure: `invalidShot`.
 */
export function plannedShot(plan: Plan): Outcome<Shot> {
  const { camera, view, scale } = plan;
  const span = lengthInPicture(plan);
  const left = (camera.width - 1 - span) / 2;
  const row = Math.round(LENGTH_AT * (camera.height - 1));
  return validateShot({
    format: SHOT_FORMAT,
    version: SHOT_VERSION,
    name: plan.name,
    footage: { path: NO_FILM_YET, sha256: null },
    timing: {
      source: 'recordingRate',
      recordingRate: camera.rate,
      exposure: camera.exposure,
      readout: camera.readout,
    },
    scale: {
      lengths: [
        {
          from: [left, row],
          to: [left + span, row],
          length: scale.length.value,
          u: scale.length.u,
          endpointU: scale.endpointU,
          depthOffset: scale.depthOffset.value,
          depthOffsetU: scale.depthOffset.u,
        },
      ],
      cameraDistance: scale.cameraDistance,
    },
    muzzle: {
      point: [view.beforeMuzzle / metresPerPixel(plan) - 0.5, (camera.height - 1) / 2],
      u: plan.muzzleU,
      axis: [1, 0],
    },
    ball: plan.ball,
    air: plan.air,
    coverage: plan.coverage,
    notes: 'Planned: scale and muzzle stand where the plan has them. Mark them on the film.',
  });
}

/** The film that the plan's would be. */
export const plannedFilm = ({ camera }: Plan, frameCount: number): FootageInfo => ({
  ...{ name: NO_FILM_YET, container: 'none', codec: 'raw', rotation: 0, bitDepth: 8 },
  ...{ width: camera.width, height: camera.height, frameCount, playbackRate: null },
  ...{ pixelAspect: 1, interlaced: { stated: null, separated: null } },
  ...{ levels: { black: 0, white: 255 }, hasAudio: false },
  decoder: { name: 'none', why: { code: 'decoderChosen', message: 'Not filmed yet.' } },
});
