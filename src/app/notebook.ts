import { batch, computed, effect, signal } from '@preact/signals';
import { isAvailable } from '../core/estimate';
import { ExitframeError, type Reason, reasonOf } from '../core/reason';
import { launcherOf, type StatedLauncher } from '../launch/fromShot';
import type { CurvePoint, CurveQuestion } from '../launch/speedCurve';
import type { LaunchApi } from '../protocol/launch';
import type { SeriesApi } from '../protocol/series';
import type { GroupSummary } from '../series/groups';
import type { ShotsRead } from '../series/readShots';
import {
  NOTEBOOK_FORMAT,
  NOTEBOOK_VERSION,
  type Notebook,
  type NotebookEntry,
  validateNotebook,
} from '../shot/notebook';
import type { ModelName } from '../shot/planning';
import type { StartThread } from './crew';
import { footagePaths } from './draft';
import { createFilmShelf, pathOf } from './filmShelf';
import { record, startHistory } from './history';
import { fromCsv } from './notebookCsv';
import { createNotebookFit } from './notebookFit';
import { type EntryGroup, type Grouping, groupsOf, rowsOf, type Sorting } from './notebookTable';
import { fetchSampleSeries } from './samples';
import { createTask } from './task';
import { undoing } from './undoing';

/** A file that could not be taken, or not in full. */
export interface NotebookProblem {
  readonly path: string;
  readonly reason: Reason;
}

export interface GroupStatistics extends GroupSummary {
  readonly label: string;
}

export type PlotAxis = CurveQuestion['what'];

export interface ModelCurve {
  readonly model: ModelName;
  readonly what: PlotAxis;
  /** Whose launcher it is worked out for. */
  readonly shot: string;
  readonly points: readonly CurvePoint[];
}

/** What the statistics are stated with. */
export const NOTEBOOK_COVERAGE = 0.95;
/** A pause in ticking shots before the statistics follow, ms. */
const SUMMARISE_AFTER_MS = 150;
/** Points of a model curve. */
const CURVE_POINTS = 7;
/** A curve reaches past the shots by this share of their span, or of their value where they have none. */
const REACH = 0.1;
const REACH_ALONE = 0.3;

const TEXT = /\.(shot|result)\.json$/i;
const NOTEBOOK_FILE = /\.notebook\.json$/i;
const CSV = /\.csv$/i;

/** Many shots: entries read from files, chosen, grouped and summed up. */
export function createNotebook(
  startRegistrar: StartThread<SeriesApi>,
  startModeller: StartThread<LaunchApi>,
) {
  const history = signal(startHistory<readonly NotebookEntry[]>([]));
  const entries = computed(() => history.value.present);
  const name = signal('');
  const saved = signal<readonly NotebookEntry[]>([]);
  const problems = signal<readonly NotebookProblem[]>([]);
  /** What the last files brought, in words. */
  const news = signal<string | null>(null);
  const films = createFilmShelf();
  const filter = signal('');
  const sorting = signal<Sorting>({ key: 'name', upwards: true });
  const grouping = signal<Grouping>('none');
  const axis = signal<PlotAxis>('barrelLength');
  const shown = signal(false);
  const reading = createTask<ShotsRead, SeriesApi>(startRegistrar, stopped);
  const statistics = createTask<readonly GroupStatistics[], SeriesApi>(startRegistrar, stopped);
  const curve = createTask<ModelCurve, LaunchApi>(startModeller, stopped);
  const rows = computed(() => rowsOf(entries.value, filter.value, sorting.value));
  const counted = computed(() => rows.value.filter(({ used }) => used));
  const fit = createNotebookFit(counted, startModeller, stopped);
  const groups = computed<readonly EntryGroup[]>(() => groupsOf(counted.value, grouping.value));

  const change = (next: readonly NotebookEntry[], label: string) => {
    history.value = record(history.value, next, { label }, 0);
  };
  /** An entry of a name that is there already takes its place. */
  const merge = (more: readonly NotebookEntry[]) => {
    const byName = new Map(entries.value.map((one) => [one.name, one]));
    const replaced = more.filter((one) => byName.has(one.name)).length;
    for (const one of more) byName.set(one.name, one);
    change(
      [...byName.values()],
      more.length === 1 ? `${more[0]?.name} added` : `${more.length} shots added`,
    );
    return replaced;
  };

  const stopSummarising = effect(() => {
    const now = groups.value;
    if (!shown.value) return;
    const timer = setTimeout(() => {
      if (now.length === 0) return statistics.reset();
      void statistics.run(async (thread) => {
        const parts = now.map((group) => group.entries.map(countedPart));
        const summaries = await thread.summarise(parts, NOTEBOOK_COVERAGE);
        return summaries.map((one, i) => ({ ...one, label: now[i]?.label ?? '' }));
      });
    }, SUMMARISE_AFTER_MS);
    return () => clearTimeout(timer);
  });

  /** Tells of a file that could not be fetched or written. */
  const report = (path: string, error: unknown) => {
    problems.value = [{ path, reason: reasonOf(error) }];
  };

  /** Takes a whole notebook or a table; what cannot be read is told of. */
  const takeTexts = async (files: readonly File[]) => {
    const found: NotebookEntry[] = [];
    const wrong: NotebookProblem[] = [];
    for (const file of files) {
      try {
        if (CSV.test(file.name)) {
          const { entries: some, unknown } = fromCsv(await file.text());
          found.push(...some);
          if (unknown.length > 0) wrong.push({ path: file.name, reason: notTaken(unknown) });
        } else {
          const notebook = validateNotebook(jsonOf(await file.text()));
          if (!notebook.ok) wrong.push({ path: file.name, reason: notebook.reason });
          else {
            found.push(...notebook.value.entries);
            if (name.value === '') name.value = notebook.value.name;
          }
        }
      } catch (error) {
        wrong.push({ path: file.name, reason: reasonOf(error) });
      }
    }
    return { found, wrong };
  };

  const take = async (files: readonly File[], tell: boolean): Promise<void> => {
    const texts = files.filter((file) => NOTEBOOK_FILE.test(file.name) || CSV.test(file.name));
    const shots = files.filter((file) => TEXT.test(file.name));
    films.keep(files.filter((file) => !texts.includes(file) && !shots.includes(file)));
    const { found, wrong } = await takeTexts(texts);
    const gathered = [...found];
    if (shots.length > 0) {
      reading.reset();
      await reading.run((thread, onShare) =>
        thread.read(
          shots.map((file) => ({ path: pathOf(file), blob: file })),
          onShare,
        ),
      );
      const work = reading.state.value;
      if (work.kind === 'done') {
        for (const { path, entry } of work.found.entries) {
          gathered.push(entry);
          films.place(entry.name, path);
        }
        wrong.push(...work.found.problems);
      }
    }
    batch(() => {
      const replaced = gathered.length === 0 ? 0 : merge(gathered);
      if (!tell && wrong.length === 0) return;
      problems.value = wrong;
      news.value = wordsOf(gathered.length, replaced);
    });
  };

  let taking = Promise.resolve();
  /**
   * Shot and result files, footage beside them, notebooks and tables, in any mixture. What is added meanwhile waits
   * its turn. `tell`: what came of it is told, though nothing went wrong.
   */
  const add = (files: readonly File[], tell = true): Promise<void> => {
    taking = taking.then(() => take(files, tell));
    return taking;
  };

  return {
    ...{ entries, name, problems, news, filter, sorting, grouping, axis, shown, rows, counted },
    reading: reading.state,
    cancelReading: reading.cancel,
    statistics: statistics.state,
    fit,
    curve: curve.state,
    cancelStatistics: statistics.cancel,
    cancelCurve: curve.cancel,
    add,
    /** The rendered series that comes with the tool. */
    async addSampleSeries(): Promise<void> {
      try {
        await add(await fetchSampleSeries());
      } catch (error) {
        report('sample series', error);
      }
    },
    report,
    unsaved: computed(() => entries.value !== saved.value && entries.value.length > 0),
    ...undoing(history),
    setUsed: (entryName: string, used: boolean) =>
      change(
        entries.value.map((one) => (one.name === entryName ? { ...one, used } : one)),
        `${entryName} ${used ? 'counted' : 'not counted'}`,
      ),
    /** Takes out what does not count. */
    dropUncounted: () =>
      change(
        entries.value.filter(({ used }) => used),
        'shots not counted taken out',
      ),
    /** Takes up what the window was left with. */
    resume({ file, isSaved }: { readonly file: Notebook; readonly isSaved: boolean }) {
      batch(() => {
        name.value = file.name;
        history.value = startHistory<readonly NotebookEntry[]>(file.entries);
        if (isSaved) saved.value = file.entries;
      });
    },
    markSaved() {
      saved.value = entries.value;
    },
    /** The file that holds everything. */
    file: (): Notebook => ({
      ...{ format: NOTEBOOK_FORMAT, version: NOTEBOOK_VERSION },
      ...{ name: name.value, entries: entries.value },
    }),
    /** The shot file of an entry with as much of its footage as is at hand; null: a table has no film. */
    filmOf({ name: entryName, shot }: NotebookEntry): readonly File[] | null {
      if (shot === null) return null;
      const shotFile = new File([JSON.stringify(shot)], `${entryName}.shot.json`);
      return [shotFile, ...films.find(entryName, footagePaths(shot.footage))];
    },
    /** What a model says over the range of the shots counted, for the first of them whose launcher is known. */
    async drawCurve(model: ModelName): Promise<void> {
      const what = axis.value;
      const known = firstLauncher(counted.value);
      const places = counted.value.flatMap(({ conditions, exitVelocity }) => {
        const place = conditions[what];
        return place !== null && isAvailable(exitVelocity) ? [place.value] : [];
      });
      if (known === null || places.length === 0) return curve.refuse(NO_LAUNCHER);
      const values = spread(places);
      const { shot, stated } = known;
      await curve.run(async (thread, onShare) => {
        const question = { ...stated, model, what, values, coverage: NOTEBOOK_COVERAGE };
        return { model, what, shot, points: await thread.curve(question, onShare) };
      });
    },
    dispose() {
      stopSummarising();
      reading.reset();
      statistics.reset();
      curve.reset();
      fit.reset();
    },
  };
}

const countedPart = ({ name, exitVelocity, own, shared }: NotebookEntry) => ({
  ...{ name, exitVelocity, own, shared },
});

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new ExitframeError(
      'notJson',
      `The file cannot be read: ${error instanceof Error ? error.message : 'not JSON'}.`,
      'Choose a file whose name ends in .notebook.json.',
    );
  }
}

const notTaken = (unknown: readonly string[]): Reason => ({
  code: 'csvColumnsUnknown',
  message: `Columns of other names were not taken over: ${unknown.join(', ')}.`,
  remedy: 'Save a table from here to see the names that are known.',
});

const NO_LAUNCHER: Reason = {
  code: 'noSeriesLauncher',
  message: 'No shot that counts states its whole launcher, so no model can be drawn beside them.',
  remedy:
    'State bore, barrel length, residual pressure and seal burst pressure of one of them on its Models step.',
};

const stopped = (message: string) =>
  new ExitframeError(
    'notebookStopped',
    `The thread that worked on the notebook stopped: ${message}`,
    'Try again; what is in the notebook is still there.',
  );

function wordsOf(count: number, replaced: number): string | null {
  if (count === 0) return null;
  const shots = `${count} shot${count === 1 ? '' : 's'} read`;
  return replaced === 0 ? `${shots}.` : `${shots}; ${replaced} took the place of one of its name.`;
}

function firstLauncher(
  entries: readonly NotebookEntry[],
): { readonly shot: string; readonly stated: StatedLauncher } | null {
  for (const { name, shot } of entries) {
    const stated = shot === null ? null : launcherOf(shot);
    if (stated?.ok) return { shot: name, stated: stated.value };
  }
  return null;
}

/** Evenly over the places and a little beyond. */
function spread(places: readonly number[]): number[] {
  const [low, high] = [Math.min(...places), Math.max(...places)];
  const beyond = high > low ? REACH * (high - low) : REACH_ALONE * high;
  const from = Math.max(0, low - beyond);
  const step = (high + beyond - from) / (CURVE_POINTS - 1);
  return Array.from({ length: CURVE_POINTS }, (_, i) => from + i * step);
}
