import {
  NOTEBOOK_FORMAT,
  NOTEBOOK_VERSION,
  type Notebook,
  validateNotebook,
} from '../../shot/notebook';
import { type PlanningInputs, readPlanning } from '../../shot/planning';
import { type ShotDraft, validateDraft } from '../draft';
import { type History, mapHistory } from '../history';
import type { KeptMeasurement } from '../measuring';
import type { LeftWork } from '../opening';
import { fetchSample, SAMPLES } from '../samples';
import type { ShotWork } from '../shotStore';
import { askForFootage, findFootage, type KeptFootage, type Root } from './footage';
import { readPages } from './notebookPages';
import type { Records } from './records';
import { type KeptStreak, unpacked } from './streakImage';

/** What a window was left with. */
export interface Left {
  readonly shot: LeftWork | null;
  readonly notebook: KeptNotebook | null;
  readonly planning: History<PlanningInputs> | null;
  /** How the page looked; told by the page alone. */
  readonly view: unknown;
  /** The desk's own copy that these files are; null: they are none. */
  copyOf(files: readonly unknown[]): KeptFootage | null;
}

export interface KeptNotebook {
  readonly file: Notebook;
  readonly isSaved: boolean;
}

interface KeptView {
  readonly frame: number;
  readonly page: unknown;
}

/** Names the build: a built file's name holds its content's hash. */
export const BUILD = import.meta.url;

export const NOTHING_LEFT: Left = {
  ...{ shot: null, notebook: null, planning: null, view: null },
  copyOf: () => null,
};

/** Reads what is kept of a desk; what cannot be read any more is left out. */
export async function readLeft(records: Records, desk: string, root: Root): Promise<Left> {
  const part = (name: string) => records.get(desk, name);
  const view = ((await part('view')) ?? null) as KeptView | null;
  const work = workOf(await part('shot'));
  const footage = ((await part('footage')) ?? { kind: 'none' }) as KeptFootage;
  const measured = ofThisBuild<Omit<KeptMeasurement, 'streak'>>(await part('measured'));
  const image = ofThisBuild<KeptStreak>(await part('streak'));
  const streak = image && (await unpacked(image).catch(() => null));
  const copies = new WeakMap<readonly unknown[], KeptFootage>();
  const sample =
    footage.kind === 'sample' ? SAMPLES.find(({ id }) => id === footage.id) : undefined;
  const files = async () => {
    if (sample !== undefined) return fetchSample(sample);
    // Gone or refused: the person is asked for it.
    const found = await findFootage(root, footage).catch(() => null);
    if (found !== null && footage.kind === 'copy') copies.set(found, footage);
    return found;
  };
  const ask = footage.kind === 'handles' ? () => askForFootage(footage.handles) : null;
  const shot = work && {
    ...{ work, files, ask },
    measured: measured && streak && { ...measured, streak },
    frame: view?.frame ?? 0,
    sampleId: sample?.id ?? null,
  };
  return {
    shot,
    notebook: await readNotebook(part),
    planning: planningOf(await part('planning')),
    view: view?.page ?? null,
    copyOf: (some) => copies.get(some) ?? null,
  };
}

/** Another build may know a measurement in another shape. */
function ofThisBuild<T>(data: unknown): T | null {
  const part = data as { build?: unknown; kept?: T | null } | null | undefined;
  return part?.build === BUILD ? (part.kept ?? null) : null;
}

/** What was kept, as `read` reads it; null: nothing was, or it cannot be read any more. */
function readKept<Kept, T>(data: unknown, read: (kept: Kept) => T): T | null {
  try {
    return data == null ? null : read(data as Kept);
  } catch {
    return null;
  }
}

/** A history of what `read` makes of each of its states. */
const historyOf = <T>(history: History<unknown>, read: (state: unknown) => T): History<T> =>
  mapHistory(history, read) as History<T>;

const workOf = (data: unknown): ShotWork | null =>
  readKept(data, (kept: { readonly history: History<unknown>; readonly saved?: unknown }) => {
    const known = new Map<unknown, ShotDraft>();
    // The same state must stay the same object: that is how it is known to be in a file.
    const draftOf = (value: unknown): ShotDraft => {
      const before = known.get(value);
      if (before !== undefined) return before;
      const draft = validateDraft(value);
      if (!draft.ok) throw new Error(draft.reason.message);
      known.set(value, draft.value);
      return draft.value;
    };
    const history = historyOf(kept.history, draftOf);
    return { history, saved: kept.saved == null ? null : draftOf(kept.saved) };
  });

async function readNotebook(
  part: (name: string) => Promise<unknown>,
): Promise<KeptNotebook | null> {
  const head = await part('notebook');
  if (typeof head !== 'object' || head === null) return null;
  const { name, count, isSaved } = head as Record<'name' | 'count' | 'isSaved', unknown>;
  const file = validateNotebook({
    ...{ format: NOTEBOOK_FORMAT, version: NOTEBOOK_VERSION, name },
    entries: await readPages(part, Number(count)),
  });
  return file.ok ? { file: file.value, isSaved: isSaved === true } : null;
}

const planningOf = (data: unknown): History<PlanningInputs> | null =>
  readKept(data, (history: History<unknown>) =>
    historyOf(history, (state) => {
      const inputs = readPlanning(state);
      if (inputs === null) throw new Error('A kept plan cannot be read.');
      return inputs;
    }),
  );
