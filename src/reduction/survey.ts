import type { FrameRange } from '../core/film';
import { formatCount } from '../core/format';
import type { GreyFrame } from '../core/frame';
import { failure, type Outcome, success } from '../core/reason';
import { median } from '../core/statistics';
import type { ImagePoint, ImageVector } from '../core/units';
import { flightLine } from '../geometry/flightLine';
import { streakLineFor } from '../image/streak';
import type { Background, StreakLine } from '../image/types';
import type { SealObservation, SealView } from '../seal/types';
import { sealView } from '../seal/view';
import type { Seal } from '../shot/schema';
import type { FrameCandidates, Track } from '../tracking/types';
import { referenceOf } from './background';
import { ballAtRest } from './ball';
import { inBatches } from './batches';
import type { FirstPass } from './firstPass';
import { flightPrior } from './flightPrior';
import { linkOnPlane } from './onPlane';
import { frameCountOf } from './passage';
import { codedShiftU, type FramePlace, judgeShake, launcherRect, type Shake } from './shake';
import type { FrameSurvey, WatchedSeal } from './types';
import { BATCH_FRAMES, type FrameSupply, type Work } from './work';

/** A seal as every frame shows it. */
export interface SealFilm {
  readonly view: SealView;
  readonly observations: readonly SealObservation[];
}

/** What a closer look at the film gave. */
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

/** Where the streak image is read for a direction of travel. */
export function streakAlong(axis: ImageVector, { inputs, scene }: Work): StreakLine {
  const { width, height } = inputs.info;
  const { point } = scene.muzzle;
  const halfWidth = Math.max(1, STREAK_BAND * scene.ballRadius);
  return streakLineFor(width, height, point, flightLine(point, axis).axis, halfWidth);
}

/** A closer look at the frames in which anything moves, the seals laid out along the given direction of travel. */
export async function surveyAlong(
  axis: ImageVector,
  work: Work,
  first: FirstPass,
): Promise<Survey> {
  const { inputs, scene, measurer, onEvent } = work;
  const { shot, info } = inputs;
  const { background } = first;
  const line = flightLine(scene.muzzle.point, axis);
  const view = muzzleSealView(work, line.axis);
  const rearView = rearSealView(work, line.axis);
  const isWatched = frameCountOf(first.worthALook) <= MOST_WATCHED;
  const reference =
    isWatched && (view.ok || rearView?.ok) ? referenceOf(first.atRest, background) : null;
  await measurer.prepare({
    background,
    ball: ballAtRest(inputs, scene),
    seal: watched(view, reference),
    rear: rearView && watched(rearView, reference),
    launcher: launcherRect(scene.muzzle.point, line.axis, scene.ballRadius),
  });
  const { candidates, observations, rear, gains, places } = await lookAt(work, first);

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

/** `reference` null: the seals are not watched. */
const watched = (
  view: Outcome<SealView>,
  reference: Outcome<Background> | null,
): WatchedSeal | null =>
  view.ok && reference?.ok ? { view: view.value, reference: reference.value } : null;

function sealFilm(
  view: Outcome<SealView>,
  reference: Outcome<Background> | null,
  observations: readonly SealObservation[],
): Outcome<SealFilm> {
  if (!view.ok) return view;
  if (reference === null) return watchedTooLong();
  if (!reference.ok) return reference;
  return success({ view: view.value, observations });
}

/** Each surveyed frame keeps a picture of its seals: so many frames are followed, or memory would grow with the clip. */
const MOST_WATCHED = 4096;

const watchedTooLong = (): Outcome<never> =>
  failure(
    'sealFilmTooLong',
    `More than ${formatCount(MOST_WATCHED)} frames need a closer look, too many to follow a seal through.`,
    'Cut the clip to the shot, or take away what moves besides it.',
    { most: formatCount(MOST_WATCHED) },
  );

/** In frames that nothing moves in there is nothing to be found: their light is known from the first pass. */
async function lookAt(work: Work, first: FirstPass) {
  const { film, measurer, onEvent, cancellation } = work;
  const ranges = first.worthALook;
  const total = frameCountOf(ranges);
  const found = new Map<number, FrameSurvey>();
  await inBatches(
    framesIn(film, ranges),
    { size: BATCH_FRAMES, lanes: measurer.lanes, cancellation },
    async (frames) => {
      for (const survey of await measurer.survey(frames)) found.set(survey.frame, survey);
      onEvent({ kind: 'progress', stage: 'survey', done: found.size, total });
    },
  );
  // Workers answer in any order.
  const surveys = [...found.values()].sort((a, b) => a.frame - b.frame);
  const overBackground = median(
    surveys.map(({ frame, gain }) => gain / (first.gains[frame] as number)),
  );
  const gains = first.gains.map((gain, frame) => found.get(frame)?.gain ?? gain * overBackground);
  const places = Array.from(gains, (_, frame): FramePlace | null => found.get(frame) ?? null);
  return {
    candidates: Array.from(gains, (_, frame) => ({
      frame,
      candidates: found.get(frame)?.candidates ?? [],
    })),
    observations: surveys.flatMap(({ seal }) => (seal === null ? [] : [seal])),
    rear: surveys.flatMap(({ rear }) => (rear === null ? [] : [rear])),
    gains,
    places,
  };
}

async function* framesIn(
  film: FrameSupply,
  ranges: readonly FrameRange[],
): AsyncGenerator<GreyFrame> {
  for (const range of ranges) yield* film.frames(range);
}
