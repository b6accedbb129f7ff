import type { Cancellation } from '../core/cancellation';
import type { Reason } from '../core/reason';
import type { ImagePoint, ImageVector } from '../core/units';
import { faultyPlaces } from '../image/faults';
import { fingerprintOf, type SceneFingerprint } from '../image/sceneFingerprint';
import type { Shot } from '../shot/schema';
import { type MeasuredCentres, measureCentres } from './centres';
import { checkFrames, type FrameCheck } from './checkFrames';
import { passAlong, passOver } from './firstPass';
import { type HeldFrames, holdFrames } from './heldFrames';
import { trackInImage } from './onPlane';
import { type Scene, setScene } from './scene';
import { type SceneSince, sceneSince } from './setupScene';
import { type Survey, streakAlong, surveyAlong } from './survey';
import type { FrameMeasurer, ReductionEvent, ReductionInputs } from './types';
import type { FrameSupply, Work } from './work';

/** Everything read off the pixels of one film; the rest of a reduction needs no frame again. */
export interface MeasuredFilm extends Survey, MeasuredCentres {
  readonly fingerprint: SceneFingerprint;
  /** The camera's faulty pixels. */
  readonly faulty: readonly ImagePoint[];
  /** How the scene stands to that of an earlier shot of the setup; null: there is none. */
  readonly since: SceneSince | null;
  /** Why its frames could not be checked for damage; null: they were, or need not be. */
  readonly unchecked: Reason | null;
  /** The settings it depends on. */
  readonly settings: string;
}

/**
 * Measures a film: scene and streak image, rough places in the frames in which anything moves, the ball's track, its centre in every frame of the
 * track. Throws where the shot does not fit the film, a second decoder finds it damaged or the work is cancelled; a ball that is not found is an outcome.
 */
export async function measureFilm(
  inputs: ReductionInputs,
  film: FrameSupply,
  measurer: FrameMeasurer,
  onEvent: (event: ReductionEvent) => void,
  cancellation: Cancellation,
): Promise<MeasuredFilm> {
  const scene = setScene(inputs);
  const held = holdFrames(film);
  try {
    return await measureAll({ inputs, scene, film, measurer, onEvent, cancellation }, held);
  } finally {
    held.letGo();
  }
}

async function measureAll(overall: Work, held: HeldFrames): Promise<MeasuredFilm> {
  const { inputs, scene, film, onEvent } = overall;
  const check = checkFrames(film, overall.cancellation);
  const cancellation = check?.cancellation ?? overall.cancellation;
  const passing = { ...overall, cancellation };
  const first = await passOver(streakAlong(scene.axis, overall), passing, {
    frame: held.watch,
    settled: (ranges) => check?.add(ranges),
  });
  check?.add(first.worthALook);
  const { background } = first;
  const work: Work = { ...passing, film: held };
  let survey = await surveyAlong(scene.axis, work, first);
  const { track } = survey;
  // Where no direction is stated the first pass only assumed one: seal and streak may belong on another side.
  if (scene.muzzle.axis === null && track.ok) {
    const axis = trackInImage(track.value, scene);
    if (!alongside(axis, scene.axis)) {
      survey = await surveyAlong(axis, work, first);
      await passAlong(streakAlong(axis, overall), passing);
    }
  }
  const centres = survey.track.ok
    ? await measureCentres(work, survey.track.value, survey)
    : NOT_FOUND;
  return {
    ...survey,
    ...centres,
    fingerprint: fingerprintOf(background),
    faulty: faultyPlaces(background),
    since: sceneSince(background, inputs.setupScene),
    settings: pixelSettings(inputs.shot, scene),
    unchecked: check && (await outcomeOf(check, onEvent)),
  };
}

/** Waits for the check: nothing is concluded from frames that may be damaged. */
async function outcomeOf(
  check: FrameCheck,
  onEvent: (event: ReductionEvent) => void,
): Promise<Reason | null> {
  onEvent({ kind: 'progress', stage: 'check', done: 0, total: 1 });
  const unchecked = await check.over();
  onEvent({ kind: 'progress', stage: 'check', done: 1, total: 1 });
  return unchecked;
}

const NOT_FOUND: MeasuredCentres = { centres: new Map(), breakUp: null, hintFor: () => null };

/** Within 45 degrees of each other. */
const alongside = (a: ImageVector, b: ImageVector): boolean =>
  a[0] * b[0] + a[1] * b[1] > Math.SQRT1_2 * Math.hypot(...a) * Math.hypot(...b);

/** Whether a film measured earlier still serves after the shot was edited. */
export const stillMeasures = (measured: MeasuredFilm, inputs: ReductionInputs): boolean =>
  measured.settings === pixelSettings(inputs.shot, setScene(inputs));

/** The settings that pixels are measured with; rounded where a small change does not matter. */
const pixelSettings = (shot: Shot, scene: Scene): string =>
  JSON.stringify([
    scene.muzzle.point,
    scene.muzzle.axis,
    scene.region,
    Math.round(scene.ballRadius * 10),
    shot.timing.exposure?.value ?? null,
    shot.timing.readout,
    Math.round(Math.log(scene.clock.frameInterval) * 100),
    shot.scale.lens,
    shot.scale.plane,
    shot.scale.cameraDistance && Math.round(Math.log(shot.scale.cameraDistance.value) * 20),
    shot.seals?.muzzle && [shot.seals.muzzle.region, shot.seals.muzzle.plane],
    shot.seals?.rear && [shot.seals.rear.region, shot.seals.rear.plane],
    shot.edits.seeds,
  ]);
