import type { Cancellation } from '../core/cancellation';
import type { FrameRange } from '../core/film';
import type { GreyFrame } from '../core/frame';
import { ExitframeError, failure, type Outcome, success } from '../core/reason';
import type { ImagePoint, ImageVector } from '../core/units';
import { flightLine } from '../geometry/flightLine';
import { buildBackground } from '../image/background';
import { streakLineFor } from '../image/streak';
import type { Background, BallModel, CentreMeasurement } from '../image/types';
import { REST_FRAMES, sealReference } from '../seal/reference';
import type { SealObservation, SealView } from '../seal/types';
import { sealView } from '../seal/view';
import type { Shot } from '../shot/schema';
import { linkTrack } from '../tracking/link';
import { predictPath } from '../tracking/predict';
import type { FrameCandidates, Track } from '../tracking/types';
import { inBatches } from './batches';
import { orThrow, type Scene, setScene } from './scene';
import type {
  CentreHint,
  FrameMeasurer,
  ReductionEvent,
  ReductionInputs,
  SurveySetup,
} from './types';

/** Where frames come from. */
export interface FrameSupply {
  frames(range: FrameRange): AsyncIterable<GreyFrame>;
}

/** The muzzle seal as every frame shows it. */
export interface SealFilm {
  readonly view: SealView;
  readonly observations: readonly SealObservation[];
}

/** Everything read off the pixels of one film; the rest of a reduction needs no frame again. */
export interface MeasuredFilm {
  /** The settings it depends on. */
  readonly settings: string;
  readonly track: Outcome<Track>;
  readonly centres: ReadonlyMap<number, Outcome<CentreMeasurement>>;
  readonly seal: Outcome<SealFilm>;
  /** Mean level of each frame over the background's. */
  readonly gains: Float64Array;
}

/** Frames that make the background: enough for a median that a passing ball cannot move, few enough to hold. */
const BACKGROUND_FRAMES = 48;
const BACKGROUND_BYTES = 192 * 1024 * 1024;
const BATCH_FRAMES = 8;
/** The streak's band covers this share of the ball's radius to each side of the axis. */
const STREAK_BAND = 0.5;
/** No ball driven by the atmosphere is faster, m/s: the gas's own escape speed into vacuum at 20 degrees is 1716. */
const FASTEST_BALL = 1716;
/** Frames looked at before and after those in which the ball was found roughly. */
const MARGIN_FRAMES = 3;

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
    shot.seals?.muzzle && [shot.seals.muzzle.region, shot.seals.muzzle.plane],
  ]);

/**
 * Measures a film: background, rough places in every frame, the ball's track, its centre in every frame of the
 * track. Throws where the shot does not fit the film or the work is cancelled; a ball that is not found is an outcome.
 */
export async function measureFilm(
  inputs: ReductionInputs,
  film: FrameSupply,
  measurer: FrameMeasurer,
  onEvent: (event: ReductionEvent) => void,
  cancellation: Cancellation,
): Promise<MeasuredFilm> {
  const { shot, info } = inputs;
  const scene = setScene(inputs);
  const line = flightLine(scene.muzzle.point, scene.axis);
  const background = await readBackground(inputs, film, onEvent, cancellation);
  const view = viewOfSeal(inputs, scene, line.axis);
  const reference = view.ok ? await readReference(inputs, film, background, cancellation) : view;
  const setup: SurveySetup = {
    background,
    ball: ballModel(scene, [0, 0]),
    streak: streakLineFor(
      info.width,
      info.height,
      scene.muzzle.point,
      line.axis,
      Math.max(1, STREAK_BAND * scene.ballRadius),
    ),
    seal: view.ok && reference.ok ? { view: view.value, reference: reference.value } : null,
  };
  await measurer.prepare(setup);
  onEvent({ kind: 'streakLine', line: setup.streak, frames: info.frameCount });
  const surveyed = await surveyFilm(inputs, scene, film, measurer, onEvent, cancellation);

  onEvent({ kind: 'progress', stage: 'track', done: 0, total: 1 });
  const track = linkTrack(surveyed.candidates, {
    axis: scene.muzzle.axis,
    muzzle: scene.muzzle.point,
    radius: scene.ballRadius,
    maxSpeed: FASTEST_BALL / scene.scale.value,
    timeOf: scene.clock.timeAt,
    seeds: shot.edits.manualPoints,
  });
  onEvent({ kind: 'progress', stage: 'track', done: 1, total: 1 });
  const centres = track.ok
    ? await measureCentres(inputs, scene, track.value, film, measurer, onEvent, cancellation)
    : new Map<number, Outcome<CentreMeasurement>>();
  return {
    settings: pixelSettings(shot, scene),
    track,
    centres,
    seal: !view.ok
      ? view
      : reference.ok
        ? success({ view: view.value, observations: surveyed.seal })
        : reference,
    gains: surveyed.gains,
  };
}

const ballModel = (scene: Scene, blur: ImageVector): BallModel => ({
  radius: scene.ballRadius,
  blur,
  region: scene.region,
});

async function readBackground(
  { info }: ReductionInputs,
  film: FrameSupply,
  onEvent: (event: ReductionEvent) => void,
  cancellation: Cancellation,
): Promise<Background> {
  const frameBytes = info.width * info.height * (info.bitDepth > 8 ? 2 : 1);
  const wanted = Math.max(
    5,
    Math.min(BACKGROUND_FRAMES, Math.floor(BACKGROUND_BYTES / frameBytes), info.frameCount),
  );
  const step = Math.max(1, Math.floor(info.frameCount / wanted));
  const frames: GreyFrame[] = [];
  for await (const frame of film.frames({ start: 0, end: info.frameCount, step })) {
    cancellation.throwIfAborted();
    frames.push(frame);
    onEvent({ kind: 'progress', stage: 'background', done: frames.length, total: wanted });
    if (frames.length === wanted) break;
  }
  return orThrow(buildBackground(frames));
}

/** The scene with the seal at rest: the clip's first frames. */
async function readReference(
  { info }: ReductionInputs,
  film: FrameSupply,
  background: Background,
  cancellation: Cancellation,
): Promise<Outcome<Background>> {
  const first: GreyFrame[] = [];
  const end = Math.min(REST_FRAMES, info.frameCount);
  for await (const frame of film.frames({ start: 0, end })) {
    cancellation.throwIfAborted();
    first.push(frame);
  }
  return sealReference(first, background);
}

function viewOfSeal(
  { shot, info }: ReductionInputs,
  scene: Scene,
  axis: ImageVector,
): Outcome<SealView> {
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

interface Surveyed {
  readonly candidates: readonly FrameCandidates[];
  readonly seal: readonly SealObservation[];
  readonly gains: Float64Array;
}

async function surveyFilm(
  { info }: ReductionInputs,
  scene: Scene,
  film: FrameSupply,
  measurer: FrameMeasurer,
  onEvent: (event: ReductionEvent) => void,
  cancellation: Cancellation,
): Promise<Surveyed> {
  const total = info.frameCount;
  const candidates: FrameCandidates[] = [];
  const seal: SealObservation[] = [];
  const gains = new Float64Array(total).fill(1);
  let done = 0;
  await inBatches(
    film.frames({ start: 0, end: total }),
    { size: BATCH_FRAMES, lanes: measurer.lanes, cancellation },
    async (frames) => {
      for (const survey of await measurer.survey(frames)) {
        candidates.push({
          frame: survey.frame,
          time: scene.clock.frameTime(survey.frame),
          candidates: survey.candidates,
        });
        if (survey.seal !== null) seal.push(survey.seal);
        gains[survey.frame] = survey.gain;
        onEvent({ kind: 'streakRow', frame: survey.frame, row: survey.streak });
        onEvent({ kind: 'progress', stage: 'survey', done: ++done, total });
      }
    },
  );
  if (done === 0) throw new ExitframeError('noFrames', 'The film gave no frames.');
  // Workers answer in any order.
  candidates.sort((a, b) => a.frame - b.frame);
  seal.sort((a, b) => a.frame - b.frame);
  return { candidates, seal, gains };
}

async function measureCentres(
  { shot, info }: ReductionInputs,
  scene: Scene,
  track: Track,
  film: FrameSupply,
  measurer: FrameMeasurer,
  onEvent: (event: ReductionEvent) => void,
  cancellation: Cancellation,
): Promise<Map<number, Outcome<CentreMeasurement>>> {
  const predict = predictPath(track, scene.clock.timeAt);
  const reach = (shot.timing.exposure?.value ?? 0) * track.speed;
  const ball = ballModel(scene, [track.axis[0] * reach, track.axis[1] * reach]);
  const rough = new Map(track.points.map((point) => [point.frame, point.candidate]));
  const first = (track.points[0]?.frame ?? 0) - MARGIN_FRAMES;
  const last = (track.points.at(-1)?.frame ?? 0) + MARGIN_FRAMES;
  const range = { start: Math.max(0, first), end: Math.min(info.frameCount, last + 1) };
  const centres = new Map<number, Outcome<CentreMeasurement>>();
  const total = range.end - range.start;
  let done = 0;
  const hintFor = (frame: GreyFrame): CentreHint | null => {
    const found = rough.get(frame.index);
    const at: ImagePoint = found ? [found.x, found.y] : predict(frame.index);
    return within(at, scene) ? { frame, at } : null;
  };
  await inBatches(
    film.frames(range),
    { size: BATCH_FRAMES, lanes: measurer.lanes, cancellation },
    async (frames) => {
      const hints = frames.map(hintFor).filter((hint) => hint !== null);
      // Hints lose their pixels to the measuring thread: keep the frame numbers.
      const numbers = hints.map((hint) => hint.frame.index);
      const found = await measurer.centres(hints, ball);
      for (const [i, frame] of numbers.entries()) {
        const centre = found[i] ?? failure('noBall', 'The ball was not measured in this frame.');
        centres.set(frame, centre);
        if (centre.ok) onEvent({ kind: 'centre', frame, x: centre.value.x, y: centre.value.y });
      }
      done += frames.length;
      onEvent({ kind: 'progress', stage: 'centres', done, total });
    },
  );
  return centres;
}

const within = ([x, y]: ImagePoint, { region }: Scene): boolean =>
  x >= region[0] &&
  y >= region[1] &&
  x <= region[0] + region[2] - 1 &&
  y <= region[1] + region[3] - 1;
