import { computed, effect, signal, untracked } from '@preact/signals';
import type { ThreadFault } from '../protocol/threadFault';
import type { Setup } from '../shot/setupFile';
import { createCalibration } from './calibration';
import { type RenewableCrew, threadDied } from './crew';
import { completeShot, type ShotDraft, withHash } from './draft';
import type { DraftStore } from './drafts';
import { createFilmStore } from './filmStore';
import { sizeOf } from './footageFiles';
import { rateOfLamp } from './frameLevels';
import { createFrameStock, type StockLimits } from './frameStock';
import { createInspecting } from './inspecting';
import type { Left } from './keeping/left';
import { createKeepingState } from './keeping/state';
import { createMeasuring } from './measuring';
import { createModelComparison } from './modelComparison';
import { createNotebook } from './notebook';
import { createNotices } from './notices';
import { createOpening } from './opening';
import { passageOf } from './passage';
import { createPlanning } from './planning';
import { createPlayer } from './player';
import { createQueue } from './queue';
import { createReadings } from './readings';
import { reductionInputs } from './reductionInputs';
import { createScenery } from './scenery';
import { rememberScene, type SetupSceneStore } from './setupScenes';
import type { Setups } from './setups';
import { createShotStore } from './shotStore';
import { velocityChange } from './velocityChange';

/** Frames kept around the one on screen: enough to drag through without waiting. */
const FRAME_STOCK: StockLimits = { bytes: 32 * 2 ** 20, frames: 256 };
/** A pause in editing before inputs are kept and the result is brought up to date, ms. */
const KEEP_AFTER_MS = 400;
const REFIT_AFTER_MS = 250;
/** Why a measurement failed whose threads cannot do another. */
const SPENT: ReadonlySet<string> = new Set(['visionMissing', 'visionFailed', 'outOfMemory']);

export type Session = ReturnType<typeof createSession>;

/** Everything the page knows and can do, without markup. */
export function createSession(
  crew: RenewableCrew,
  drafts: DraftStore,
  scenes: SetupSceneStore,
  setups: Setups,
) {
  const notices = createNotices();
  const films = createFilmStore(crew);
  const { inputsOf, keepScene } = reductionInputs(films, scenes);
  const shots = createShotStore(() => Date.now());
  const measuring = createMeasuring(crew);
  const player = createPlayer(
    // The crew may be renewed: its film is looked up with every call.
    createFrameStock(
      {
        startRun: (range) => crew.film.startRun(range),
        next: (run) => crew.film.next(run),
        endRun: (run) => crew.film.endRun(run),
      },
      FRAME_STOCK,
    ),
    (error) => notices.report('footage', error),
    (frames) => passageOf(measuring.positions.value, frames),
  );
  const readings = createReadings(shots.draft, films.film);
  const inspecting = createInspecting(crew);
  const scenery = createScenery(
    (onFault) => crew.startScenery(onFault),
    { film: films.film, draft: shots.draft, measuring, readings },
    (reason) => notices.problem('footage', reason),
  );
  const calibration = createCalibration(crew.startCalibrator);
  const models = createModelComparison(crew.startModeller, shots.draft, measuring);
  const notebook = createNotebook(crew.startRegistrar, crew.startModeller);
  const planning = createPlanning(
    crew.startPlanner,
    shots.draft,
    computed(() => films.film.value?.info ?? null),
  );
  /** Whether frames' fits are on the screen, so that they are worth laying open. */
  const inspectionWanted = signal(false);
  const change = velocityChange(shots, measuring);
  const keeping = createKeepingState();
  let recovering = false;
  const queue = createQueue({
    ...{ startBench: crew.startBench, notebook, scenes },
    openDraft: () => shots.draft.value,
  });

  const opening = createOpening({
    ...{ notices, films, shots, drafts },
    preview: (file, layout, index) => crew.film.preview(file, layout, index),
    begin({ info }, left) {
      measuring.reset();
      inspecting.reset();
      calibration.reset();
      models.reset();
      scenery.reset();
      if (left?.measured) measuring.resume(left.measured);
      void player.reset(info.frameCount, left?.frame ?? 0);
    },
  });

  const measure = async () => {
    const draft = shots.draft.value;
    const isOpen = films.state.value.kind === 'open';
    if (draft === null || !isOpen || measuring.status.value.kind === 'running') return;
    const shot = completeShot(draft);
    if (!shot.ok) return notices.problem('ball', shot.reason);
    notices.clearProblems('ball');
    player.pause();
    const before = measuring.reduction.value;
    await measuring.measure(async (identified) => {
      await films.ready();
      const bytes = sizeOf(films.opened().files);
      const megabytes = (share: number) => Math.round((share * bytes) / 1e6);
      const sha256 = await films.identify((share) => identified(megabytes(share), megabytes(1)));
      if (sha256 !== null) shots.recordHash(sha256);
      return inputsOf(withHash(shot.value, sha256), films.opened());
    });
    const { value: status } = measuring.status;
    if (status.kind === 'failed' && SPENT.has(status.reason.code)) {
      crew.retire();
      await replaceThreads();
    }
    const measured = measuring.reduction.value;
    if (measured !== null && measured !== before) keepScene(shot.value, measured);
    showBall();
  };

  /** The open film in new threads. */
  const replaceThreads = async () => {
    // Threads that die of the film are not brought up again and again: the next measurement tries.
    if (recovering) return;
    recovering = true;
    inspecting.reset();
    try {
      await films.ready();
      await player.refresh();
      scenery.resume();
    } catch (error) {
      notices.report('footage', error);
    } finally {
      recovering = false;
    }
  };

  /** Brings a frame with the ball to the screen, where the one shown has none. */
  const showBall = () => {
    const used = measuring.positions.value.filter((one) => one.used);
    const [first] = used;
    if (first !== undefined && !used.some((one) => one.frame === player.current.value)) {
      void player.show(first.frame);
    }
  };

  const refit = async (draft: ShotDraft) => {
    const shot = completeShot(draft);
    if (!shot.ok) return measuring.markOutdated();
    try {
      await measuring.refit(await inputsOf(shot.value, films.opened()));
    } catch (error) {
      notices.report('ball', error);
    }
  };

  const stopKeeping = effect(() => {
    const draft = shots.draft.value;
    const sha256 = films.film.value?.sha256 ?? null;
    if (draft === null || sha256 === null || !shots.edited.value) return;
    const timer = setTimeout(() => {
      const kept = drafts.keep(sha256, draft, Date.now());
      if (!kept.ok) notices.problem('footage', kept.reason);
    }, KEEP_AFTER_MS);
    return () => clearTimeout(timer);
  });
  const stopRefitting = effect(() => {
    const draft = shots.draft.value;
    const running = measuring.status.value.kind === 'running';
    if (draft === null || running || untracked(() => measuring.reduction.value) === null) return;
    const timer = setTimeout(() => void refit(draft), REFIT_AFTER_MS);
    return () => clearTimeout(timer);
  });
  const stopInspecting = inspecting.follow(measuring.pass, () => {
    const measured =
      measuring.reduction.value !== null &&
      measuring.status.value.kind !== 'running' &&
      films.state.value.kind === 'open';
    return inspectionWanted.value && measured ? player.current.value : null;
  });

  return {
    notices,
    films,
    shots,
    measuring,
    player,
    readings,
    scenery,
    /** The streak image as measured, or along an assumed line until it is. */
    streak: computed(() =>
      measuring.streak.value.line === null ? scenery.look.value : measuring.streak.value,
    ),
    calibration,
    models,
    notebook,
    planning,
    inspection: inspecting.state,
    inspectionWanted,
    velocityChange: change,
    ...opening,
    keeping,
    setups,
    queue,
    keepSetupScene: (setup: Setup) => rememberScene(scenes, setup),
    /** Takes up what the window was left with. */
    async resume({ shot, notebook: kept, planning: planned }: Left) {
      if (kept !== null) notebook.resume(kept);
      if (planned !== null) planning.resume(planned);
      if (shot !== null) await opening.resume(shot);
    },
    measure,
    /** A frame of the open film. */
    frame: (index: number) => crew.film.frame(index),
    /** The recording rate from a lamp that flickers `flicker` times a second, filmed in this clip. */
    rateFromLamp: (flicker: number, onShare: (share: number) => void) => {
      const clock = readings.clock.value;
      const read = clock?.ok ? 1 / clock.value.frameInterval : null;
      const expected = shots.draft.value?.timing.recordingRate?.value ?? read;
      return rateOfLamp(crew.film, player.frameCount.value, flicker, expected, onShare);
    },
    /** After a thread died, whose work has failed by that: opens the same footage in new ones; all inputs stay. */
    async recover(fault: ThreadFault) {
      if (recovering) return;
      notices.problem('footage', threadDied(fault));
      await replaceThreads();
    },
    dispose() {
      stopKeeping();
      stopRefitting();
      stopInspecting();
      calibration.reset();
      models.reset();
      scenery.dispose();
      notebook.dispose();
      planning.dispose();
      queue.dispose();
      setups.dispose();
      player.pause();
      crew.dispose();
    },
  };
}
