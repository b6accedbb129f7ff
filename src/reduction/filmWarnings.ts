import { fieldsReason } from '../core/film';
import type { ImagePoint } from '../core/units';
import type { FlightLine } from '../geometry/flightLine';
import type { Warning } from '../shot/result';
import type { MeasuredFilm } from './measureFilm';
import type { Sighting } from './positions';
import type { Scene } from './scene';
import type { ReductionInputs } from './types';

/** A step this many times the usual one hides a lost frame; below the lower bound the frame is a repeat. */
const LOST_STEP = 1.7;
const REPEATED_STEP = 0.3;
/** Blur longer than this many radii is more streak than ball. */
const LONG_BLUR_RADII = 2;
const SATURATED_SHARE = 0.2;
/** Brightness of the still scene may wander by this share before the light is said to flicker. */
const STEADY_LIGHT = 0.03;

/** Warnings that only the film itself can give: lost or repeated frames, blur, saturation, unknown exposure, faulty pixels, fields. */
export function filmWarnings(
  { shot, info }: ReductionInputs,
  scene: Scene,
  kept: readonly Sighting[],
  line: FlightLine,
  { gains, faulty, unchecked }: Pick<MeasuredFilm, 'gains' | 'faulty' | 'unchecked'>,
): Warning[] {
  const fields = fieldsReason(info);
  const warnings: Warning[] = fields === null ? [] : [fields];
  if (unchecked !== null) {
    warnings.push({
      code: 'filmUnchecked',
      message: `The browser's decoder may show damage without a word, and the second decoder, in a thread of its own, could not check the film. ${unchecked.message}`,
      values: { ...unchecked.values, because: unchecked.code },
      remedy: 'Measure again, or reduce the shot with the headless command.',
    });
  }
  const dimmest = gains.reduce((a, b) => Math.min(a, b));
  const brightest = gains.reduce((a, b) => Math.max(a, b));
  if (brightest - dimmest > 2 * STEADY_LIGHT) {
    const values = { dimmest: percent(dimmest), brightest: percent(brightest) };
    warnings.push({
      code: 'lightFlickers',
      message: `The still scene's brightness varies between ${values.dimmest} and ${values.brightest} of its usual level.`,
      values,
      remedy:
        'Light the scene with a lamp on direct current, or check that the camera stood still.',
    });
  }
  const points = kept.flatMap(({ frame, centre }) =>
    centre.ok
      ? [
          {
            frame,
            ...centre.value,
            along: line.along(centre.value.flat.x, centre.value.flat.y),
          },
        ]
      : [],
  );
  const steps = points.slice(1).flatMap((point, i) => {
    const before = points[i];
    if (before === undefined) return [];
    const dt =
      scene.clock.timeAt(point.frame, point.x, point.y) -
      scene.clock.timeAt(before.frame, before.x, before.y);
    return [{ from: before.frame, to: point.frame, speed: (point.along - before.along) / dt }];
  });
  const usual = steps.map((step) => step.speed).sort((a, b) => a - b)[steps.length >> 1];
  if (usual !== undefined && usual > 0 && steps.length >= 3) {
    const lost = steps.filter((step) => step.speed > LOST_STEP * usual);
    const repeated = steps.filter((step) => step.speed < REPEATED_STEP * usual);
    if (lost.length > 0) {
      warnings.push({
        code: 'framesLost',
        message: `The ball jumps between frames ${lost.map((s) => `${s.from} and ${s.to}`).join(', ')}: frames seem to be lost there.`,
        values: { form: 'jumps', between: pairs(lost) },
        remedy: 'State the lost frames in the Clock step.',
      });
    }
    if (repeated.length > 0) {
      warnings.push({
        code: 'framesRepeated',
        message: `The ball stands still between frames ${repeated.map((s) => `${s.from} and ${s.to}`).join(', ')}: a frame seems to be repeated.`,
        values: { between: pairs(repeated) },
        remedy:
          'Take the original file of the camera, not a converted copy, or reject the repeats.',
      });
    }
  }
  const exposure = shot.timing.exposure;
  if (exposure === null) {
    warnings.push({
      code: 'exposureUnknown',
      message: 'The exposure time is not given, so motion blur is not modelled.',
      remedy: 'Type the exposure set on the camera.',
    });
  } else if (usual !== undefined && usual * exposure.value > LONG_BLUR_RADII * scene.ballRadius) {
    const blur = (usual * exposure.value).toFixed(0);
    warnings.push({
      code: 'longBlur',
      message: `During one exposure the ball moves ${blur} pixels, more than its diameter.`,
      values: { blur },
      remedy: 'Shorten the exposure and add light.',
    });
  }
  const saturated = points.filter((point) => point.saturated > SATURATED_SHARE);
  if (saturated.length > 0) {
    warnings.push({
      code: 'ballSaturated',
      message: `The ball is overexposed in ${saturated.length} of ${points.length} frames; its outline may be shifted.`,
      values: { saturated: saturated.length, frames: points.length },
      remedy: 'Film with less light, a smaller aperture or a shorter exposure.',
    });
  }
  const passed = faulty.filter((pixel) => isPassed(pixel, points, scene.ballRadius)).length;
  if (passed > 0) {
    warnings.push({
      code: 'faultyPixels',
      message: `Pixels that are dead, hot or flickering where the ball passes: ${passed}. They are left out of every fit.`,
      values: { pixels: passed },
      remedy:
        "Nothing for this shot. Before the next, renew the camera's black balance with the lens covered, or move the view so that the flight misses them.",
    });
  }
  return warnings;
}

/** Whether the ball covers a pixel in one of the frames or on the way between two that follow each other. */
function isPassed(
  [px, py]: ImagePoint,
  places: readonly { readonly x: number; readonly y: number }[],
  radius: number,
): boolean {
  return places.some((place, i) => {
    const next = places[i + 1] ?? place;
    const [dx, dy] = [next.x - place.x, next.y - place.y];
    const way = dx * dx + dy * dy;
    const share = way === 0 ? 0 : ((px - place.x) * dx + (py - place.y) * dy) / way;
    const nearest = Math.max(0, Math.min(1, share));
    return Math.hypot(place.x + nearest * dx - px, place.y + nearest * dy - py) <= radius;
  });
}

/** Frames that follow each other, in numbers: '12–13, 20–21'. */
const pairs = (steps: readonly { readonly from: number; readonly to: number }[]): string =>
  steps.map(({ from, to }) => `${from}–${to}`).join(', ');

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;
