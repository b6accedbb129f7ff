import { computed, effect, signal, untracked } from '@preact/signals';
import type { FootageFile } from '../footage/source';
import { parseShot } from '../shot/parse';
import type { Shot } from '../shot/schema';
import { createCalibration } from './calibration';
import type { RenewableCrew } from './crew';
import { completeShot, footageOf, footagePaths, newDraft, type ShotDraft } from './draft';
import type { DraftStore } from './drafts';
import { createFilmStore, FootageMismatch, type OpenFilm } from './filmStore';
import { sortFiles } from './footageFiles';
import { createFrameCache } from './frameCache';
import { rateOfLamp } from './frameLevels';
import { createInspecting } from './inspecting';
import { createMeasuring } from './measuring';
import { createModelComparison } from './modelComparison';
import { createNotebook } from './notebook';
import { createNotices } from './notices';
import { createPlanning } from './planning';
import { createPlayer } from './player';
import { createReadings } from './readings';
import { reductionInputs } from './reductionInputs';
import { fetchSample, type Sample } from './samples';
import type { SetupSceneStore } from './setupScenes';
import { createShotStore } from './shotStore';
import { velocityChange } from './velocityChange';

/** Enough for a few hundred frames of the usual size, bytes. */
const FRAME_CACHE_BYTES = 128 * 2 ** 20;
/** A pause in editing before inputs are kept and the result is brought up to date, ms. */
const KEEP_AFTER_MS = 400;
const REFIT_AFTER_MS = 250;

/** A shot file whose footage has still to be chosen. */
export interface AwaitedFootage {
  readonly shot: Shot;
  readonly fileName: string;
  /** The footage it names. */
  readonly path: string;
}

export type Session = ReturnType<typeof createSession>;

/** Everything the page knows and can do, without markup. */
export function createSession(crew: RenewableCrew, drafts: DraftStore, scenes: SetupSceneStore) {
  const notices = createNotices();
  const films = createFilmStore(crew);
  const { inputsOf, keepScene } = reductionInputs(films, scenes);
  const shots = createShotStore(() => Date.now());
  const measuring = createMeasuring(crew);
  const cache = createFrameCache((index) => crew.film.frame(index), FRAME_CACHE_BYTES);
  const player = createPlayer(cache, (error) => notices.report('footage', error));
  const readings = createReadings(shots.draft, films.film);
  const inspecting = createInspecting(crew);
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
  /** The sample that is open, by its folder's name. */
  const sample = signal<Sample | null>(null);
  const awaited = signal<AwaitedFootage | null>(null);

  const begin = (film: OpenFilm, draft: ShotDraft, isSaved: boolean) => {
    notices.list.value = [];
    awaited.value = null;
    sample.value = null;
    measuring.reset();
    inspecting.reset();
    calibration.reset();
    models.reset();
    shots.start(draft, isSaved);
    return player.reset(film.info.frameCount);
  };

  /** Works out the footage's hash and offers what was kept for it. */
  const recognise = async () => {
    try {
      const sha256 = await films.identify();
      if (sha256 === null) return;
      shots.amend((draft) => ({ ...draft, footage: { ...draft.footage, sha256 } }));
      const kept = drafts.find(sha256);
      const now = shots.draft.value;
      if (kept === null || now === null || shots.edited.value) return;
      const draft = { ...kept.draft, footage: now.footage };
      if (JSON.stringify(draft) === JSON.stringify(now)) return;
      notices.inform(
        'footage',
        {
          code: 'earlierInputs',
          message: `Inputs for this footage were kept on ${new Date(kept.savedAt).toLocaleString()}.`,
          remedy: 'Take them over, or go on as it stands.',
        },
        [
          {
            label: 'Take over earlier inputs',
            run: () => shots.edit(() => draft, { label: 'earlier inputs' }),
          },
        ],
      );
    } catch (error) {
      notices.report('footage', error);
    }
  };

  /** Opens footage with a shot made from it, or with a new shot. True where it is open now. */
  const openFootage = async (
    files: readonly FootageFile[],
    shot: Shot | null,
    isSaved = shot !== null,
  ): Promise<boolean> => {
    const paths = files.map((file) => file.name);
    const expected =
      shot === null || shot.footage.sha256 === null
        ? null
        : { sha256: shot.footage.sha256, path: pathText(shot) };
    try {
      const film = await films.open(files, expected);
      if (film === null) return false;
      void begin(film, shot ?? newDraft(film.info, paths, film.timestamps), isSaved);
      void recognise();
      return true;
    } catch (error) {
      const actions =
        error instanceof FootageMismatch && shot !== null
          ? [
              {
                label: 'Take its inputs into a new shot for this footage',
                run: () => {
                  const footage = footageOf(paths, error.found);
                  const edits = { rejectedFrames: [], manualPoints: [], seeds: [] };
                  void openFootage(files, { ...shot, footage, edits }, false);
                },
              },
            ]
          : [];
      notices.report('footage', error, actions);
      return false;
    }
  };

  const openSample = async (chosen: Sample) => {
    try {
      if (await openFootage(await fetchSample(chosen), chosen.shot)) sample.value = chosen;
    } catch (error) {
      notices.report('footage', error);
    }
  };

  /** Opens what was dropped or chosen: footage, a shot file, or both. */
  const openFiles = async (chosen: readonly File[]) => {
    notices.clearProblems('footage');
    const sorted = sortFiles(chosen);
    if (!sorted.ok) return notices.problem('footage', sorted.reason);
    const { footage, shotFile } = sorted.value;
    if (shotFile === null) {
      await openFootage(footage, awaited.value?.shot ?? null);
      return;
    }
    const parsed = parseShot(await shotFile.text());
    if (!parsed.ok) {
      const message = `${shotFile.name}: ${parsed.reason.message}`;
      return notices.problem('footage', { ...parsed.reason, message });
    }
    const film = films.film.value;
    const isOpen = film?.sha256 != null && film.sha256 === parsed.value.footage.sha256;
    if (footage.length > 0) await openFootage(footage, parsed.value);
    else if (isOpen) await openFootage(film.files, parsed.value);
    else {
      const path = pathText(parsed.value);
      awaited.value = { shot: parsed.value, fileName: shotFile.name, path };
    }
  };

  const measure = async () => {
    const draft = shots.draft.value;
    const isOpen = films.state.value.kind === 'open';
    if (draft === null || !isOpen || measuring.status.value.kind === 'running') return;
    const shot = completeShot(draft);
    if (!shot.ok) return notices.problem('ball', shot.reason);
    notices.clearProblems('ball');
    player.pause();
    const before = measuring.reduction.value;
    await measuring.measure(async () => {
      await films.identify();
      return inputsOf(shot.value, films.opened());
    });
    const measured = measuring.reduction.value;
    if (measured !== null && measured !== before) keepScene(shot.value, measured);
    showBall();
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
    calibration,
    models,
    notebook,
    planning,
    inspection: inspecting.state,
    inspectionWanted,
    velocityChange: change,
    sample,
    awaited,
    openSample,
    openFiles,
    measure,
    /** The recording rate from a lamp that flickers `flicker` times a second, filmed in this clip. */
    rateFromLamp: (flicker: number, onShare: (share: number) => void) => {
      const clock = readings.clock.value;
      const read = clock?.ok ? 1 / clock.value.frameInterval : null;
      const expected = shots.draft.value?.timing.recordingRate?.value ?? read;
      return rateOfLamp(crew.film, player.frameCount.value, flicker, expected, onShare);
    },
    /** After a thread died: starts them anew and opens the same footage; all inputs stay. */
    async recover(message: string) {
      const reason = {
        code: 'threadDied',
        message: `A background thread stopped: ${message}`,
        remedy: 'It was started again with the same footage and inputs; measure again.',
      };
      measuring.fail(reason);
      notices.problem('footage', reason);
      inspecting.reset();
      await crew.renew();
      await films.reopen();
      cache.clear();
      await player.show(player.current.value);
    },
    dispose() {
      stopKeeping();
      stopRefitting();
      stopInspecting();
      calibration.reset();
      models.reset();
      notebook.dispose();
      planning.dispose();
      player.pause();
      crew.dispose();
    },
  };
}

const pathText = (shot: Shot) => {
  const [first = '', ...more] = footagePaths(shot.footage);
  return more.length > 0 ? `${first} and ${more.length} more` : first;
};
