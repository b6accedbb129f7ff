import { batch, computed, signal } from '@preact/signals';
import { reasonOf } from '../core/reason';
import type { LaunchApi } from '../protocol/launch';
import type { SeriesApi } from '../protocol/series';
import { stoppedBy, type ThreadFault } from '../protocol/threadFault';
import type { ShotsRead } from '../series/readShots';
import {
  NOTEBOOK_FORMAT,
  NOTEBOOK_VERSION,
  type Notebook,
  type NotebookEntry,
} from '../shot/notebook';
import type { ModelName } from '../shot/planning';
import type { StartThread } from './crew';
import { footagePaths } from './draft';
import { createFilmShelf, pathOf } from './filmShelf';
import { record, startHistory } from './history';
import { createNotebookCurve, type PlotAxis } from './notebookCurve';
import { type NotebookProblem, readTexts, sortFiles } from './notebookFiles';
import { createNotebookFit } from './notebookFit';
import { createNotebookStatistics } from './notebookStatistics';
import {
  type EntryGroup,
  type Grouping,
  groupsOf,
  mixedBy,
  rowsOf,
  type Sorting,
} from './notebookTable';
import { fetchSampleSeries } from './samples';
import { createTask } from './task';
import { undoing } from './undoing';

/** What was done to the notebook, as undo tells of it. */
export type NotebookEdit =
  | { readonly kind: 'added'; readonly names: readonly string[] }
  | { readonly kind: 'counted'; readonly name: string; readonly used: boolean }
  | { readonly kind: 'dropped' };

/** What the last files brought. */
export interface NotebookNews {
  readonly shots: number;
  /** Of them, those that took the place of one of their name. */
  readonly replaced: number;
}

/** What the statistics are stated with. */
export const NOTEBOOK_COVERAGE = 0.95;

/** Many shots: entries read from files, chosen, grouped and summed up. */
export function createNotebook(
  startRegistrar: StartThread<SeriesApi>,
  startModeller: StartThread<LaunchApi>,
) {
  const history = signal(startHistory<readonly NotebookEntry[], NotebookEdit>([]));
  const entries = computed(() => history.value.present);
  const name = signal('');
  const saved = signal<readonly NotebookEntry[]>([]);
  const problems = signal<readonly NotebookProblem[]>([]);
  const news = signal<NotebookNews | null>(null);
  const films = createFilmShelf();
  const filter = signal('');
  const sorting = signal<Sorting>({ key: 'name', upwards: true });
  const grouping = signal<Grouping>('none');
  const axis = signal<PlotAxis>('barrelLength');
  const shown = signal(false);
  const reading = createTask<ShotsRead, SeriesApi>(startRegistrar, stopped);
  const rows = computed(() => rowsOf(entries.value, filter.value, sorting.value));
  const counted = computed(() => rows.value.filter(({ used }) => used));
  const fit = createNotebookFit(counted, startModeller, stopped);
  const curve = createNotebookCurve(counted, startModeller, stopped);
  const groups = computed<readonly EntryGroup[]>(() => groupsOf(counted.value, grouping.value));
  const mixed = computed(() => mixedBy(groups.value));
  const statistics = createNotebookStatistics(
    { groups, shown },
    NOTEBOOK_COVERAGE,
    startRegistrar,
    stopped,
  );

  const change = (next: readonly NotebookEntry[], label: NotebookEdit) => {
    history.value = record(history.value, next, { label }, 0);
  };
  /** An entry of a name that is there already takes its place. */
  const merge = (more: readonly NotebookEntry[]) => {
    const byName = new Map(entries.value.map((one) => [one.name, one]));
    const replaced = more.filter((one) => byName.has(one.name)).length;
    for (const one of more) byName.set(one.name, one);
    change([...byName.values()], { kind: 'added', names: more.map((one) => one.name) });
    return replaced;
  };

  /** Tells of a file that could not be fetched or written. */
  const report = (path: string, error: unknown) => {
    problems.value = [{ path, reason: reasonOf(error) }];
  };

  const take = async (files: readonly File[], tell: boolean): Promise<void> => {
    const { texts, shots, footage } = sortFiles(files);
    films.keep(footage);
    const found = await readTexts(texts);
    if (name.value === '' && found.name !== null) name.value = found.name;
    const gathered = [...found.entries];
    const wrong = [...found.problems];
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
      news.value = gathered.length === 0 ? null : { shots: gathered.length, replaced };
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
    ...{
      entries,
      name,
      problems,
      news,
      filter,
      sorting,
      grouping,
      axis,
      shown,
      rows,
      counted,
      mixed,
    },
    reading: reading.state,
    cancelReading: reading.cancel,
    statistics: statistics.state,
    cancelStatistics: statistics.cancel,
    fit,
    curve: curve.state,
    cancelCurve: curve.cancel,
    /** What a model says over the range of the shots counted, along the axis chosen. */
    drawCurve: (model: ModelName) => curve.draw(model, axis.value, NOTEBOOK_COVERAGE),
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
        { kind: 'counted', name: entryName, used },
      ),
    /** Takes out what does not count. */
    dropUncounted: () =>
      change(
        entries.value.filter(({ used }) => used),
        { kind: 'dropped' },
      ),
    /** Takes up what the window was left with. */
    resume({ file, isSaved }: { readonly file: Notebook; readonly isSaved: boolean }) {
      batch(() => {
        name.value = file.name;
        history.value = startHistory<readonly NotebookEntry[], NotebookEdit>(file.entries);
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
    dispose() {
      reading.reset();
      statistics.dispose();
      curve.reset();
      fit.reset();
    },
  };
}

const stopped = (fault: ThreadFault) =>
  stoppedBy(
    'notebookStopped',
    'The thread that worked on the notebook stopped.',
    fault,
    'Try again; what is in the notebook is still there.',
  );
