import { batch, signal } from '@preact/signals';
import { AS_FOUND, type RawLayout, type Reading } from '../core/film';
import { reasonOf } from '../core/reason';
import type { FootageFile } from '../footage/source';
import type { FilmApi } from '../protocol/film';
import { parseShot } from '../shot/parse';
import type { Result } from '../shot/result';
import { completeShot, footageOf, footagePaths, newDraft, readAnew, type ShotDraft } from './draft';
import type { DraftStore } from './drafts';
import {
  type createFilmStore,
  FootageMismatch,
  type NamedFootage,
  type OpenFilm,
} from './filmStore';
import { fetchFirstLook } from './firstLook';
import { headerlessOf, sortFiles } from './footageFiles';
import type { KeptMeasurement } from './measuring';
import type { createNotices } from './notices';
import { firstClear } from './passage';
import { createRawQuestion } from './rawQuestion';
import { fetchSample, SAMPLES, type Sample } from './samples';
import { type createShotStore, type ShotWork, workOn } from './shotStore';

/** Work on a shot as it stood when the window was left. */
export interface LeftWork {
  readonly work: ShotWork;
  readonly measured: KeptMeasurement | null;
  readonly frame: number;
  /** Name of the sample it is. */
  readonly sampleId: string | null;
  /** Its footage, where it can be had without asking. */
  files(): Promise<readonly FootageFile[] | null>;
  /** Asks the browser for leave to read the file again; null: the file has to be chosen. */
  readonly ask: (() => Promise<readonly FootageFile[] | null>) | null;
}

/** What was measured of a film before, and the frame it stood at. */
type Begun = Pick<LeftWork, 'measured' | 'frame'>;

/** Work whose footage has still to be chosen. */
export interface AwaitedFootage extends NamedFootage {
  readonly work: ShotWork;
  /** The shot file that came alone; null: what the window was left with. */
  readonly fileName: string | null;
  readonly left: LeftWork | null;
}

interface Parts {
  readonly notices: ReturnType<typeof createNotices>;
  readonly films: ReturnType<typeof createFilmStore>;
  readonly shots: ReturnType<typeof createShotStore>;
  readonly drafts: DraftStore;
  readonly preview: FilmApi['preview'];
  /** Puts what was done with the film before away, and takes up what was measured of this one. */
  begin(film: OpenFilm, left: Begun | null): void;
}

/** In English; the page says it in its language by the value. */
const MOMENT = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeStyle: 'short' });

/** Opening footage, with a new shot, one from a file, a sample, or what the window was left with. */
export function createOpening({ notices, films, shots, drafts, preview, begin }: Parts) {
  const rawQuestion = createRawQuestion(preview);
  /** The sample that is open. */
  const sample = signal<Sample | null>(null);
  const awaited = signal<AwaitedFootage | null>(null);
  /** What the first sample's measurement says; there before its film, and without the threads. */
  const firstLook = signal<Result | null>(null);

  /** Works out the footage's hash and offers what was kept for it. */
  const recognise = async () => {
    try {
      const sha256 = await films.identify();
      if (sha256 === null) return;
      shots.recordHash(sha256);
      const kept = drafts.find(sha256);
      const now = shots.draft.value;
      if (kept === null || now === null || shots.edited.value) return;
      const draft = { ...kept.draft, footage: now.footage };
      if (JSON.stringify(draft) === JSON.stringify(now)) return;
      notices.inform(
        'footage',
        {
          code: 'earlierInputs',
          message: `Inputs for this footage were kept on ${MOMENT.format(new Date(kept.savedAt))}.`,
          remedy: 'Take them over, or go on as it stands.',
          values: { savedAt: new Date(kept.savedAt).getTime() },
        },
        [
          {
            does: 'takeOverInputs' as const,
            run: (words: string) => shots.edit(() => draft, { label: words }),
          },
        ],
      );
    } catch (error) {
      notices.report('footage', error);
    }
  };

  /** What can be done about footage that is not what the shot was made from. */
  const insteadOf = (
    error: unknown,
    paths: readonly string[],
    work: ShotWork | null,
    more: Files,
  ) =>
    error instanceof FootageMismatch && work !== null
      ? [
          {
            does: 'inputsIntoNewShot' as const,
            run: () => {
              const { present } = work.history;
              const footage = footageOf(paths, error.found, present.footage.reading);
              void openFootage(more, workOn(readAnew(present, footage), false));
            },
          },
        ]
      : [];

  /** Opens footage with work on it, or with a new shot. True where it is open now. */
  const openFootage = async (
    files: Files,
    work: ShotWork | null,
    { left = null, from = null, raw = null }: OpeningWith = {},
  ): Promise<boolean> => {
    const paths = files.map((file) => file.name);
    const footage = work?.history.present.footage;
    const reading = footage?.reading ?? { ...AS_FOUND, raw };
    const expected =
      footage === undefined || footage.sha256 === null
        ? null
        : { sha256: footage.sha256, ...named(footage) };
    try {
      const film = await films.open(files, expected, reading);
      if (film === null) return false;
      batch(() => {
        notices.list.value = [];
        awaited.value = null;
        sample.value = from;
        shots.start(work ?? workOn(newDraft(film.info, paths, film.timestamps, reading), false));
        begin(film, left);
      });
      void recognise();
      return true;
    } catch (error) {
      const instead = [...insteadOf(error, paths, work, files), ...headerless(error, files, work)];
      notices.report('footage', error, instead);
      return false;
    }
  };

  /** What no decoder knows may still be pixels without a header. */
  const headerless = (error: unknown, files: Files, work: ShotWork | null) => {
    const [file] = files;
    const isUnknown = reasonOf(error).code === 'notFootage' && work === null;
    return isUnknown && file !== undefined && files.length === 1
      ? [{ does: 'readAsGrey' as const, run: () => rawQuestion.ask(file) }]
      : [];
  };

  const openSample = async (chosen: Sample) => {
    try {
      await openFootage(await fetchSample(chosen), workOn(chosen.shot, true), { from: chosen });
    } catch (error) {
      notices.report('footage', error);
    }
  };

  /** True where the page should begin with something and a person was quicker. */
  const isOtherChosen = () => films.state.value.kind !== 'none' || awaited.value !== null;

  /** Opens the sample that the page begins with, measured already, unless something else was opened meanwhile. */
  const openFirst = async (chosen: Sample) => {
    try {
      const reduction = await fetchFirstLook();
      firstLook.value = reduction?.result ?? null;
      const files = await fetchSample(chosen);
      if (isOtherChosen()) return;
      const shot = completeShot(chosen.shot);
      const streak = { line: null, rows: new Map() };
      const measured = reduction && shot.ok ? { shot: shot.value, reduction, streak } : null;
      // Its first frame shows an empty scene; a person is to see what is measured.
      const frame = firstClear(reduction?.result.positions ?? [], chosen.shot.ball.diameter.value);
      const left = { measured, frame: frame ?? 0 };
      await openFootage(files, workOn(chosen.shot, true), { left, from: chosen });
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
      const waiting = awaited.value;
      const file = headerlessOf(footage);
      if (file !== null && waiting === null) return rawQuestion.ask(file);
      await openFootage(footage, waiting?.work ?? null, { left: waiting?.left ?? null });
      return;
    }
    const parsed = parseShot(await shotFile.text());
    if (!parsed.ok) {
      const message = `${shotFile.name}: ${parsed.reason.message}`;
      const values = { ...parsed.reason.values, about: shotFile.name };
      return notices.problem('footage', { ...parsed.reason, message, values });
    }
    const work = workOn(parsed.value, true);
    const film = films.film.value;
    const isOpen = film?.sha256 != null && film.sha256 === parsed.value.footage.sha256;
    if (footage.length > 0) await openFootage(footage, work);
    else if (isOpen) await openFootage(film.files, work);
    else {
      const footageNamed = named(parsed.value.footage);
      awaited.value = { work, fileName: shotFile.name, ...footageNamed, left: null };
    }
  };

  const openLeft = async (left: LeftWork, files: Files | null) => {
    const from = SAMPLES.find((one) => one.id === left.sampleId) ?? null;
    const isOpen = files !== null && (await openFootage(files, left.work, { left, from }));
    if (isOpen || isOtherChosen()) return;
    awaited.value = {
      ...{ work: left.work, fileName: null, left },
      ...named(left.work.history.present.footage),
    };
  };

  const found = async (find: () => Promise<Files | null>): Promise<Files | null> => {
    try {
      return await find();
    } catch (error) {
      notices.report('footage', error);
      return null;
    }
  };

  return {
    sample,
    awaited,
    firstLook,
    openFirst,
    rawQuestion,
    /** Opens the file whose layout was asked for. */
    async openRaw(): Promise<void> {
      const asked = rawQuestion.asked.value;
      if (asked === null) return;
      rawQuestion.put();
      notices.clearProblems('footage');
      await openFootage([asked.file], null, { raw: asked.layout });
    },
    /** Reads the open film's fields another way; what was stated of its frames by number is gone. */
    async readFields(fields: Reading['fields']): Promise<void> {
      const film = films.film.value;
      const draft = shots.draft.value;
      if (film === null || draft === null) return;
      const footage = { ...draft.footage, reading: { ...film.reading, fields } };
      const from = sample.value;
      await openFootage(film.files, workOn(readAnew(draft, footage), false), { from });
    },
    openSample,
    openFiles,
    /** Opens what the window was left with, or asks for its footage, unless something else was opened meanwhile. */
    async resume(left: LeftWork) {
      const files = await found(left.files);
      if (!isOtherChosen()) await openLeft(left, files);
    },
    /** Opens the footage that is waited for, after asking the browser for leave. */
    async askForAwaited() {
      const left = awaited.value?.left ?? null;
      if (left?.ask) await openLeft(left, await found(left.ask));
    },
  };
}

type Files = readonly FootageFile[];

interface OpeningWith {
  readonly left?: Begun | null;
  readonly from?: Sample | null;
  /** Layout of headerless grey for a new shot. */
  readonly raw?: RawLayout | null;
}

const named = (footage: ShotDraft['footage']): NamedFootage => {
  const [path = '', ...others] = footagePaths(footage);
  return { path, more: others.length };
};
