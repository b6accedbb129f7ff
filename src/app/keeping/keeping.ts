import { computed, effect } from '@preact/signals';
import { type Reason, reasonOf } from '../../core/reason';
import type { FootageFile } from '../../footage/source';
import type { NotebookEntry } from '../../shot/notebook';
import type { Session } from '../session';
import { type Claim, claimDesk } from './claim';
import {
  copyFootage,
  dropCopies,
  isWorthCopying,
  type KeptFootage,
  type Root,
  withoutCopy,
} from './footage';
import { BUILD, type Left, NOTHING_LEFT, readLeft } from './left';
import { changedPages } from './notebookPages';
import { openRecords, type Records } from './records';
import { streakPacker } from './streakImage';

/** What of the browser keeps the work. */
export interface KeepingPlace {
  /** Rejects where the browser keeps nothing. */
  records(): Promise<Records>;
  /** Null: this page has none. */
  readonly locks: LockManager | null;
  /** Outlasts a reload, and is the tab's own. */
  readonly tab: Storage;
  readonly root: Root;
  estimate(): Promise<StorageEstimate>;
}

export const browserPlace = (): KeepingPlace => ({
  records: () => openRecords(() => Date.now()),
  // Pages served without encryption from another machine have neither locks nor private files.
  locks: (navigator.locks as LockManager | undefined) ?? null,
  tab: sessionStorage,
  root: () => navigator.storage.getDirectory(),
  estimate: () => navigator.storage.estimate(),
});

export interface Keeping {
  /** What the window was left with. */
  readonly left: Left;
  /** Why there is less than was kept; null: all is there. */
  readonly lost: Reason | null;
  /** Keeps the work from now on; `view` gives how the page looks. Ends with what it returns. */
  follow(session: Session, view: () => unknown): () => void;
}

/** Of the tab: the desk on which its work was kept. */
const KEPT = 'exitframe-kept';
/** A pause in working before it is kept, ms. */
const KEEP_AFTER_MS = 250;
/** What could not be kept is tried again after so long, ms. */
const RETRY_AFTER_MS = 3000;
/** Desks of closed windows that are kept, in case the browser opens those again. */
const MOST_FREE = 3;

/** Claims this tab's desk and reads what was left on it. Where nothing can be kept, work goes on without. */
export async function startKeeping(place: KeepingPlace): Promise<Keeping> {
  try {
    const records = await place.records();
    const desks = await records.desks();
    const claim = await claimDesk(place.locks, place.tab, desks);
    const wasKept = place.tab.getItem(KEPT) === claim.desk;
    const lost = wasKept && !desks.has(claim.desk) ? WORK_LOST : null;
    const left =
      claim.from === null ? NOTHING_LEFT : await readLeft(records, claim.from, place.root);
    void tidy(claim, records, place.root);
    const own = claim.from === claim.desk ? left : { ...left, notebook: null, copyOf: () => null };
    return {
      left,
      lost,
      follow: (session, view) => keep(session, view, claim, records, place, own),
    };
  } catch (error) {
    const follow = ({ keeping }: Session) => {
      keeping.problem.value = workNotKept(error);
      return () => {};
    };
    return { left: NOTHING_LEFT, lost: null, follow };
  }
}

async function tidy({ free }: Claim, records: Records, root: Root): Promise<void> {
  for (const desk of free.slice(MOST_FREE)) {
    await records.remove(desk).catch(() => {});
    await dropCopies(root, desk, null).catch(() => {});
  }
}

type Part = 'shot' | 'footage' | 'measured' | 'streak' | 'notebook' | 'planning' | 'view';
/** These are worked on without footage too. */
const WITHOUT_FOOTAGE: ReadonlySet<Part> = new Set(['notebook', 'planning']);

function keep(
  session: Session,
  view: () => unknown,
  { desk, release }: Claim,
  records: Records,
  place: KeepingPlace,
  left: Left,
): () => void {
  const { shots, films, measuring, notebook, planning, player, sample, keeping } = session;
  const leaving = new AbortController();
  let copying = new AbortController();
  let copied: readonly FootageFile[] | null = null;
  /** The copy of `copied`; null: there is none. */
  let held: KeptFootage | null = null;
  /** The notebook's entries as they are kept. */
  let paged: readonly NotebookEntry[] = left.notebook?.file.entries ?? [];

  const copy = async (files: readonly FootageFile[]) => {
    copying.abort();
    const stop = new AbortController();
    copying = stop;
    const first = withoutCopy(files, sample.value?.id ?? null).kind;
    keeping.footage.value = first;
    try {
      const folder = crypto.randomUUID();
      const copies = first !== 'sample' && (await isWorthCopying(files, place.estimate));
      if (copies) {
        keeping.footage.value = 'copying';
        const footage = await copyFootage(place.root, desk, folder, files, stop.signal);
        await records.put(desk, { footage });
        if (stop.signal.aborted) return;
        held = footage;
        keeping.footage.value = 'copy';
      }
      await dropCopies(place.root, desk, copies ? folder : null);
    } catch (error) {
      if (stop.signal.aborted) return;
      keeping.footage.value = first;
      keeping.problem.value = footageNotKept(error);
    }
  };

  const packer = streakPacker();
  const readers: Readonly<Record<Part, () => unknown>> = {
    shot: () => shots.work.value,
    footage: () => held ?? withoutCopy(films.film.value?.files ?? [], sample.value?.id ?? null),
    measured: () => ({ build: BUILD, kept: measuring.kept() }),
    streak: () => {
      const streak = measuring.keptStreak();
      return { build: BUILD, kept: streak && packer.record(streak) };
    },
    notebook: () => ({
      ...{ name: notebook.name.value, count: notebook.entries.value.length },
      isSaved: !notebook.unsaved.value,
    }),
    planning: () => planning.history.value,
    view: () => ({ frame: player.current.value, page: view() }),
  };
  const isMeasured = computed(() => measuring.reduction.value !== null);
  const changed = new Set<Part>();
  let timer: ReturnType<typeof setTimeout> | null = null;
  const write = () => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    const files = films.film.value?.files ?? null;
    const isOpen = shots.work.value !== null && files !== null;
    const isNew = isOpen && files !== copied;
    if (isNew) held = left.copyOf(files);
    if (isNew && held !== null) keeping.footage.value = 'copy';
    else if (isNew) changed.add('footage');
    // Nothing is open yet: what was left must stay as it is until it is taken up.
    const parts = [...changed].filter((part) => isOpen || WITHOUT_FOOTAGE.has(part));
    changed.clear();
    if (parts.length === 0) return;
    const values = Object.fromEntries(parts.map((part) => [part, readers[part]()]));
    const entries = notebook.entries.value;
    const pages = parts.includes('notebook') ? changedPages(entries, paged) : {};
    records.put(desk, { ...values, ...pages }).then(
      () => {
        place.tab.setItem(KEPT, desk);
        if (parts.includes('notebook')) paged = entries;
        if (keeping.problem.value?.code === 'workNotKept') keeping.problem.value = null;
      },
      (error: unknown) => {
        keeping.problem.value = workNotKept(error);
        for (const part of parts) changed.add(part);
        if (!leaving.signal.aborted) timer ??= setTimeout(writeInPieces, RETRY_AFTER_MS);
      },
    );
    if (isNew) copied = files;
    if (isNew && held === null) void copy(files);
  };
  /** Writes once the streak image, which is large, is packed; the page is left in peace between its pieces. */
  const writeInPieces = () => {
    timer = null;
    const isPacked = !changed.has('streak') || packer.advance(measuring.keptStreak());
    if (isPacked) write();
    else timer = setTimeout(writeInPieces, 0);
  };
  const whenever = (part: Part, read: () => unknown) =>
    effect(() => {
      read();
      changed.add(part);
      timer ??= setTimeout(writeInPieces, KEEP_AFTER_MS);
    });
  const stops = [
    whenever('shot', () => [shots.work.value, films.film.value?.files, sample.value]),
    whenever('measured', () => [measuring.reduction.value, measuring.status.value.kind]),
    whenever('streak', () => [measuring.pass.value, isMeasured.value]),
    whenever('notebook', () => [notebook.entries.value, notebook.unsaved.value]),
    whenever('planning', () => planning.history.value),
    whenever('view', () => [player.current.value, view()]),
  ];
  records.whenLost(() => {
    paged = [];
    for (const part of Object.keys(readers) as Part[]) changed.add(part);
    write(); // at once: the page may be left before a pause is over
  });
  addEventListener('pagehide', write, { signal: leaving.signal });
  addEventListener('visibilitychange', write, { signal: leaving.signal });
  return () => {
    write();
    for (const stop of stops) stop();
    leaving.abort();
    copying.abort();
    release();
  };
}

const whyNot = (error: unknown): string =>
  error instanceof DOMException && error.name === 'QuotaExceededError'
    ? 'its storage is full'
    : reasonOf(error).message.replace(/\.$/, '');

const whyNotValues = (error: unknown) => ({
  form: error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : 'other',
  why: whyNot(error),
});

const WORK_LOST: Reason = {
  code: 'workLost',
  message:
    "What this window held is gone: the browser's storage was cleared before it could be kept anew.",
  remedy:
    'Open its shot file, or its footage: inputs typed for it are offered where the browser still has them. Then measure again.',
};

const workNotKept = (error: unknown): Reason => ({
  code: 'workNotKept',
  message: `The browser does not keep this work: ${whyNot(error)}.`,
  remedy:
    'Go on working, and save the shot file and the notebook before you close or reload the window.',
  values: whyNotValues(error),
});

const footageNotKept = (error: unknown): Reason => ({
  code: 'footageNotKept',
  message: `The browser keeps no copy of this footage: ${whyNot(error)}.`,
  remedy: 'Inputs are kept; after a reload you are asked for the footage.',
  values: whyNotValues(error),
});
