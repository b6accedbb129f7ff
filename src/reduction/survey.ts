import { ExitframeError, failure, type Outcome, success } from '../core/reason';
import type { ImagePoint, ImageVector } from '../core/units';
import { flightLine } from '../geometry/flightLine';
import { streakLineFor } from '../image/streak';
import type { Background } from '../image/types';
import type { SealObservation, SealView } from '../seal/types';
import { sealView } from '../seal/view';
import type { Seal } from '../shot/schema';
import type { FrameCandidates, Track } from '../tracking/types';
import { readReference } from './background';
import { ballAtRest } from './ball';
import { inBatches } from './batches';
import { flightPrior } from './flightPrior';
import { linkOnPlane } from './onPlane';
import { codedShiftU, type FramePlace, judgeShake, launcherRect, type Shake } from './shake';
import type { SurveySetup, WatchedSeal } from './types';
import { BATCH_FRAMES, type Work } from './work';

/** A seal as every frame shows it. */
export interface SealFilm {
  readonly view: SealView;
  readonly observations: readonly SealObservation[];
}

/** What one pass over the whole film gave. */
export interface Survey {
  readonly candidates: readonly FrameCandidates[];
  readonly track: Outcome<Track>;
  readonly seal: Outcome<SealFilm>;
  /** The rear seal; null: none is stated. */
  readonly rear: Outcome<SealFilm> | null;
  /** Mean level of each frame over the background's. */
  readonly gains: Float64Array;
  readonly shake: Shake;
}

/** The streak's band covers this share of the ball's radius to each side of the axis. */
const STREAK_BAND = 0.5;

/** One pass over the whole film, its seal and streak laid out along the given direction of travel. */
export async function surveyAlong(
  axis: ImageVector,
  work: Work,
  background: Background,
): Promise<Survey> {
  const { inputs, scene, measurer, onEvent } = work;
  const { shot, info } = inputs;
  const line = flightLine(scene.muzzle.point, axis);
  const view = muzzleSealView(work, line.axis);
  const rearView = rearSealView(work, line.axis);
  const reference = !view.ok && !rearView?.ok ? view : await readReference(work, background);
  const setup: SurveySetup = {
    background,
    ball: ballAtRest(inputs, scene),
    streak: streakLineFor(
      info.width,
      info.height,
      scene.muzzle.point,
      line.axis,
      Math.max(1, STREAK_BAND * scene.ballRadius),
    ),
    seal: watched(view, reference),
    rear: rearView && watched(rearView, reference),
    launcher: launcherRect(scene.muzzle.point, line.axis, scene.ballRadius),
  };
  await measurer.prepare(setup);
  onEvent({ kind: 'streakLine', line: setup.streak, frames: info.frameCount });
  const { candidates, observations, rear, gains, places } = await lookAtAll(work);

  onEvent({ kind: 'progress', stage: 'track', done: 0, total: 1 });
  const track = linkOnPlane(candidates, scene, flightPrior(shot, scene));
  onEvent({ kind: 'progress', stage: 'track', done: 1, total: 1 });
  return {
    candidates,
    track,
    seal: sealFilm(view, reference, observations),
    rear: rearView && sealFilm(rearView, reference, rear),
    gains,
    shake: judgeShake(places, codedShiftU(info.codec)),
  };
}

function muzzleSealView(work: Work, axis: ImageVector): Outcome<SealView> {
  const seal = work.inputs.shot.seals?.muzzle;
  if (!seal) {
    return failure('noSealInView', 'The shot states that no muzzle seal is in view.');
  }
  return viewOfSeal(work, axis, seal, seal.plane?.point ?? work.scene.muzzle.point);
}

/** The rear seal gives way into the tube: its film moves along the flight axis too. */
function rearSealView(work: Work, axis: ImageVector): Outcome<SealView> | null {
  const seal = work.inputs.shot.seals?.rear;
  if (!seal) return null;
  if (seal.plane === null) {
    return failure(
      'rearSealPlaneMissing',
      'The rear seal is stated without its plane, and nothing else tells where that is.',
      "State a point on the rear seal's plane.",
    );
  }
  return viewOfSeal(work, axis, seal, seal.plane.point);
}

function viewOfSeal(
  { inputs: { info }, scene }: Work,
  axis: ImageVector,
  { region }: Seal,
  plane: ImagePoint,
): Outcome<SealView> {
  return sealView({
    plane,
    axis,
    ballRadius: scene.ballRadius,
    region,
    frameWidth: info.width,
    frameHeight: info.height,
  });
}

const watched = (view: Outcome<SealView>, reference: Outcome<Background>): WatchedSeal | null =>
  view.ok && reference.ok ? { view: view.value, reference: reference.value } : null;

function sealFilm(
  view: Outcome<SealView>,
  reference: Outcome<unknown>,
  observations: readonly SealObservation[],
): Outcome<SealFilm> {
  if (!view.ok) return view;
  if (!reference.ok) return reference;
  return success({ view: view.value, observations });
}

async function lookAtAll({ inputs: { info }, film, measurer, onEvent, cancellation }: Work) {
  const total = info.frameCount;
  const candidates: FrameCandidates[] = [];
  const observations: SealObservation[] = [];
  const rear: SealObservation[] = [];
  const gains = new Float64Array(total).fill(1);
  const places = Array.from({ length: total }, (): FramePlace => ({ shift: null, launcher: null }));
  let done = 0;
  await inBatches(
    film.frames({ start: 0, end: total }),
    { size: BATCH_FRAMES, lanes: measurer.lanes, cancellation },
    async (frames) => {
      for (const survey of await measurer.survey(frames)) {
        candidates.push({ frame: survey.frame, candidates: survey.candidates });
        if (survey.seal !== null) observations.push(survey.seal);
        if (survey.rear !== null) rear.push(survey.rear);
        gains[survey.frame] = survey.gain;
        places[survey.frame] = { shift: survey.shift, launcher: survey.launcher };
        onEvent({ kind: 'streakRow', frame: survey.frame, row: survey.streak });
        onEvent({ kind: 'progress', stage: 'survey', done: ++done, total });
      }
    },
  );
  if (done === 0) throw new ExitframeError('noFrames', 'The film gave no frames.');
  // Workers answer in any order.
  candidates.sort((a, b) => a.frame - b.frame);
  observations.sort((a, b) => a.frame - b.frame);
  rear.sort((a, b) => a.frame - b.frame);
  return { candidates, observations, rear, gains, places };
}
