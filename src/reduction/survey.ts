import { ExitframeError, failure, type Outcome, success } from '../core/reason';
import type { ImageVector } from '../core/units';
import { flightLine } from '../geometry/flightLine';
import { streakLineFor } from '../image/streak';
import type { Background } from '../image/types';
import type { SealObservation, SealView } from '../seal/types';
import { sealView } from '../seal/view';
import type { FrameCandidates, Track } from '../tracking/types';
import { readReference } from './background';
import { ballAtRest } from './ball';
import { inBatches } from './batches';
import { flightPrior } from './flightPrior';
import { linkOnPlane } from './onPlane';
import { codedShiftU, type FramePlace, judgeShake, launcherRect, type Shake } from './shake';
import type { SurveySetup } from './types';
import { BATCH_FRAMES, type Work } from './work';

/** The muzzle seal as every frame shows it. */
export interface SealFilm {
  readonly view: SealView;
  readonly observations: readonly SealObservation[];
}

/** What one pass over the whole film gave. */
export interface Survey {
  readonly candidates: readonly FrameCandidates[];
  readonly track: Outcome<Track>;
  readonly seal: Outcome<SealFilm>;
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
  const view = viewOfSeal(work, line.axis);
  const reference = view.ok ? await readReference(work, background) : view;
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
    seal: view.ok && reference.ok ? { view: view.value, reference: reference.value } : null,
    launcher: launcherRect(scene.muzzle.point, line.axis, scene.ballRadius),
  };
  await measurer.prepare(setup);
  onEvent({ kind: 'streakLine', line: setup.streak, frames: info.frameCount });
  const { candidates, observations, gains, places } = await lookAtAll(work);

  onEvent({ kind: 'progress', stage: 'track', done: 0, total: 1 });
  const track = linkOnPlane(candidates, scene, flightPrior(shot, scene));
  onEvent({ kind: 'progress', stage: 'track', done: 1, total: 1 });
  return {
    candidates,
    track,
    seal: sealFilm(view, reference, observations),
    gains,
    shake: judgeShake(places, codedShiftU(info.codec)),
  };
}

function viewOfSeal({ inputs: { shot, info }, scene }: Work, axis: ImageVector): Outcome<SealView> {
  const seal = shot.seals?.muzzle;
  if (!seal) {
    return failure('noSealInView', 'The shot states that no muzzle seal is in view.');
  }
  return sealView({
    plane: seal.plane?.point ?? scene.muzzle.point,
    axis,
    ballRadius: scene.ballRadius,
    region: seal.region,
    frameWidth: info.width,
    frameHeight: info.height,
  });
}

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
  return { candidates, observations, gains, places };
}
