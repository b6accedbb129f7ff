import type { FootageInfo } from '../core/film';
import type { Plan } from '../shot/planning';
import { type ShotDraft, statedScale } from './draft';

/**
 * A plan with what an open shot states; what it does not state stays as in `plan`. The field of view is told by the
 * shot's first known length, its muzzle by the mark.
 */
export function planFrom(shot: ShotDraft, info: FootageInfo, plan: Plan): Plan {
  const { timing, ball, air, muzzle, coverage } = shot;
  const rate = timing.recordingRate ?? plan.camera.rate;
  const { lengths, cameraDistance } = statedScale(shot.scale);
  const [length] = lengths;
  const camera = {
    ...{ width: info.width, height: info.height, rate, readout: timing.readout },
    exposure: timing.exposure ?? plan.camera.exposure,
  };
  const base = { ...plan, ball, air, coverage, camera };
  if (length === undefined) return base;
  const span = Math.hypot(length.to[0] - length.from[0], length.to[1] - length.from[1]);
  const metresPerPixel = length.length / span;
  const across = info.width * metresPerPixel;
  // The plan's ball flies to the right: what is left of the muzzle lies behind it, whichever way the shot went.
  const behind =
    muzzle === null ? null : Math.min(muzzle.point[0] + 0.5, info.width - 0.5 - muzzle.point[0]);
  return {
    ...base,
    view: {
      across,
      beforeMuzzle:
        behind === null
          ? Math.min(plan.view.beforeMuzzle, across / 4)
          : Math.max(0, behind) * metresPerPixel,
    },
    muzzleU: muzzle?.u ?? plan.muzzleU,
    scale: {
      length: { value: length.length, u: length.u },
      endpointU: length.endpointU,
      depthOffset: { value: length.depthOffset, u: length.depthOffsetU },
      cameraDistance,
    },
  };
}
