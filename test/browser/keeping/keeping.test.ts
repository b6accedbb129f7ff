import { signal } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { draftStore } from '../../../src/app/drafts';
import { setNotes } from '../../../src/app/edits';
import { COPIED_UP_TO } from '../../../src/app/keeping/footage';
import { type Keeping, type KeepingPlace, startKeeping } from '../../../src/app/keeping/keeping';
import { openRecords, type Records } from '../../../src/app/keeping/records';
import { createSession, type Session } from '../../../src/app/session';
import { setupSceneStore } from '../../../src/app/setupScenes';
import { createSetups } from '../../../src/app/setups';
import { type FakeCrew, fakeCrew } from '../../fixtures/crew';
import { exampleSeries, seriesFiles } from '../../fixtures/series';
import { stateInputs } from '../../fixtures/stateInputs';

const NAME = 'keeping-test';
const view = signal<unknown>({ step: 'clock' });

interface Window {
  readonly session: Session;
  readonly keeping: Keeping;
  readonly crew: FakeCrew;
  close(): void;
}
const windows: Window[] = [];

const place = (change: Partial<KeepingPlace> = {}): KeepingPlace => ({
  records: () => openRecords(() => Date.now(), indexedDB, NAME),
  locks: navigator.locks,
  tab: sessionStorage,
  root: () => navigator.storage.getDirectory(),
  estimate: () => navigator.storage.estimate(),
  ...change,
});

/** Opens a window as the page does. */
async function openWindow(change: Partial<KeepingPlace> = {}): Promise<Window> {
  const keeping = await startKeeping(place(change));
  const crew = fakeCrew();
  const session = createSession(
    crew,
    draftStore(localStorage),
    setupSceneStore(localStorage),
    createSetups(localStorage),
  );
  await session.resume(keeping.left);
  const stop = keeping.follow(session, () => view.value);
  let isOpen = true;
  const opened = {
    ...{ session, keeping, crew },
    close() {
      if (!isOpen) return;
      isOpen = false;
      stop();
      session.dispose();
    },
  };
  windows.push(opened);
  return opened;
}

const clip = (text = 'film', name = 'clip.mp4') => new File([text], name);
const isKept = ({ session }: Window, how: string) =>
  vi.waitFor(() => expect(session.keeping.footage.value).toBe(how));
const hashed = ({ session }: Window) =>
  vi.waitFor(() => expect(session.films.film.value?.sha256).not.toBeNull());

async function workedWindow(change: Partial<KeepingPlace> = {}) {
  const first = await openWindow(change);
  await first.session.openFiles([clip()]);
  await hashed(first);
  stateInputs(first.session);
  return first;
}

beforeEach(async () => {
  localStorage.clear();
  sessionStorage.clear();
  view.value = { step: 'clock' };
  const records = await place().records();
  for (const desk of (await records.desks()).keys()) await records.remove(desk);
});
afterEach(() => {
  for (const one of windows.splice(0)) one.close();
});

/** A window opened later, which has the draft and its footage. */
async function again(draft: unknown): Promise<Window> {
  const later = await openWindow();
  expect(later.session.shots.draft.value).toEqual(draft);
  expect(later.crew.opened).toEqual(['clip.mp4']);
  return later;
}

describe('after a reload', () => {
  it('stands where it stood: inputs with undo, result, streak image, frame and view', async () => {
    const line = { origin: [5, 16], axis: [1, 0], from: -5, length: 4, halfWidth: 2 } as const;
    const first = await workedWindow();
    first.crew.events = [
      { kind: 'streakLine', line, frames: 20 },
      { kind: 'streakRow', frame: 3, row: Float32Array.of(1, 2, 3, 4) },
      { kind: 'streakRow', frame: 4, row: Float32Array.of(5, 6, 7, 8) },
    ];
    await first.session.measure();
    first.session.shots.edit(setNotes('one'), { label: 'notes' });
    first.session.shots.edit(setNotes('two'), { label: 'notes' });
    first.session.shots.undo();
    await first.session.player.show(7);
    view.value = { step: 'result' };
    await isKept(first, 'copy');
    const result = first.session.measuring.reduction.value?.result;
    const draft = first.session.shots.draft.value;
    first.close();

    const { session, keeping, crew } = await openWindow();
    expect(crew.opened).toEqual(['clip.mp4']);
    expect(keeping.left.view).toEqual({ step: 'result' });
    expect(session.shots.draft.value).toEqual(draft);
    expect(session.measuring.reduction.value?.result).toEqual(result);
    expect(session.measuring.status.value.kind).toBe('done');
    expect(session.measuring.streak.value.line).toEqual(line);
    expect(session.measuring.streak.value.rows.get(3)).toEqual(Float32Array.of(1, 2, 3, 4));
    expect(session.measuring.streak.value.rows.get(4)).toEqual(Float32Array.of(5, 6, 7, 8));
    expect(session.player.current.value).toBe(7);
    expect(crew.measured).toEqual([]);
    session.shots.redo();
    expect(session.shots.draft.value?.notes).toBe('two');
    session.shots.undo();
    session.shots.undo();
    session.shots.undo();
    expect(session.shots.draft.value?.timing.recordingRate).toBeNull();
    expect(session.shots.draft.value?.footage).toEqual(draft?.footage);
  });

  it('knows again which state is in a file', async () => {
    const first = await workedWindow();
    first.session.shots.markSaved();
    first.session.shots.edit(setNotes('later'), { label: 'notes' });
    await isKept(first, 'copy');
    first.close();
    const { session } = await openWindow();
    expect(session.shots.unsaved.value).toBe(true);
    session.shots.undo();
    expect(session.shots.unsaved.value).toBe(false);
  });

  it('copies nothing anew, and shows an edit made just before', async () => {
    const first = await workedWindow();
    await isKept(first, 'copy');
    first.session.shots.edit(setNotes('at the last moment'), { label: 'notes' });
    dispatchEvent(new Event('pagehide'));
    first.close();
    let copies = 0;
    const second = await openWindow({
      async estimate() {
        copies += 1;
        return navigator.storage.estimate();
      },
    });
    await isKept(second, 'copy');
    expect(second.session.shots.draft.value?.notes).toBe('at the last moment');
    expect(copies).toBe(0);
  });

  it('holds the notebook', async () => {
    const first = await openWindow();
    await first.session.notebook.add(seriesFiles(exampleSeries(3)));
    first.session.notebook.markSaved();
    const entries = first.session.notebook.entries.value;
    first.close();
    const { session } = await openWindow();
    expect(session.notebook.entries.value).toEqual(entries);
    expect(session.notebook.unsaved.value).toBe(false);
  });

  it('writes of a large notebook only what was changed', async () => {
    const written: string[][] = [];
    const spying = async (): Promise<Records> => {
      const records = await place().records();
      return {
        ...records,
        async put(desk, parts) {
          await records.put(desk, parts);
          written.push(Object.keys(parts).filter((part) => part.startsWith('notebook')));
        },
      };
    };
    const first = await openWindow({ records: spying });
    const { notebook } = first.session;
    await notebook.add(seriesFiles(exampleSeries(120)));
    await vi.waitFor(() =>
      expect(written.at(-1)).toEqual(['notebook', 'notebook-0', 'notebook-1', 'notebook-2']),
    );
    const name = notebook.entries.value[60]?.name ?? '';
    notebook.setUsed(name, false);
    await vi.waitFor(() => expect(written.at(-1)).toEqual(['notebook', 'notebook-1']));
    notebook.dropUncounted();
    const entries = notebook.entries.value;
    first.close();
    await vi.waitFor(() => expect(written.at(-1)).toContain('notebook-2'));
    written.length = 0;
    const second = await openWindow({ records: spying });
    expect(second.session.notebook.entries.value).toEqual(entries);
    expect(entries).toHaveLength(119);
    // What was read is there already.
    await vi.waitFor(() => expect(written).toEqual([['notebook']]));
    second.close();
  });

  it('holds the plan with what was done to it', async () => {
    const first = await openWindow();
    const { planning } = first.session;
    const before = planning.plan.value;
    planning.change({ name: 'next' }, { label: 'name' });
    planning.edit({ model: 'momentum' }, { label: 'model' });
    first.close();
    const again = (await openWindow()).session.planning;
    expect(again.plan.value).toEqual({ ...before, name: 'next' });
    expect(again.model.value).toBe('momentum');
    again.undo();
    again.undo();
    expect(again.plan.value).toEqual(before);
    again.redo();
    expect(again.plan.value.name).toBe('next');
  });

  it('begins a plan anew where what is kept of one cannot be read', async () => {
    const first = await openWindow();
    const before = first.session.planning.plan.value;
    first.session.planning.change({ name: 'next' }, { label: 'name' });
    first.close();
    const records = await place().records();
    const [desk = ''] = (await records.desks()).keys();
    const kept = (await records.get(desk, 'planning')) as { present: object };
    await records.put(desk, { planning: { ...kept, present: { ...kept.present, plan: {} } } });
    expect((await openWindow()).session.planning.plan.value).toEqual(before);
  });

  it('asks for footage too large to be kept, and takes no other', async () => {
    const big = { estimate: async () => ({ quota: COPIED_UP_TO, usage: COPIED_UP_TO }) };
    const first = await workedWindow(big);
    await isKept(first, 'none');
    const draft = first.session.shots.draft.value;
    first.close();
    const second = await openWindow(big);
    const { session } = second;
    expect(session.awaited.value).toMatchObject({ fileName: null, path: 'clip.mp4' });
    expect(session.shots.draft.value).toBeNull();
    // Left alone it stays: a second reload asks again.
    second.close();
    const third = await openWindow(big);
    third.crew.hashes.set('other.mp4', 'f'.repeat(64));
    await third.session.openFiles([clip('other', 'other.mp4')]);
    const codes = third.session.notices.list.value.map(({ reason }) => reason.code);
    expect(codes).toEqual(['footageMismatch']);
    await third.session.openFiles([clip()]);
    expect(third.session.shots.draft.value).toEqual(draft);
    expect(third.session.awaited.value).toBeNull();
  });

  it('reads the file from disk again where the browser gave a handle and has leave', async () => {
    const full = { estimate: async () => ({ quota: 1, usage: 1 }) };
    const root = await navigator.storage.getDirectory();
    const handle = await root.getFileHandle('disk.mp4', { create: true });
    const { fileOf } = await import('../../../src/app/keeping/fileHandles');
    const first = await openWindow(full);
    await first.session.openFiles([await fileOf(handle)]);
    first.session.shots.edit(setNotes('by handle'), { label: 'notes' });
    await isKept(first, 'handles');
    first.close();
    const { session } = await openWindow(full);
    expect(session.films.film.value?.info.name).toBe('disk.mp4');
    expect(session.shots.draft.value?.notes).toBe('by handle');
  });

  it('leaves out a measurement of another build, and keeps the inputs', async () => {
    const first = await workedWindow();
    await first.session.measure();
    await isKept(first, 'copy');
    first.close();
    const records = await place().records();
    const [desk = ''] = (await records.desks()).keys();
    const measured = (await records.get(desk, 'measured')) as { kept: unknown };
    expect(measured.kept).not.toBeNull();
    await records.put(desk, { measured: { ...measured, build: 'another' } });
    const { session } = await openWindow();
    expect(session.measuring.reduction.value).toBeNull();
    expect(session.shots.draft.value?.timing.recordingRate?.value).toBe(12000);
  });
});

describe('two windows', () => {
  it('keep their work apart', async () => {
    const first = await workedWindow();
    await isKept(first, 'copy');
    const tab = storageOf();
    const second = await openWindow({ tab });
    expect(second.session.shots.draft.value).toBeNull();
    await second.session.openFiles([clip('other', 'second.mp4')]);
    second.session.shots.edit(setNotes('second'), { label: 'notes' });
    await isKept(second, 'copy');
    first.session.shots.edit(setNotes('first'), { label: 'notes' });
    first.close();
    second.close();
    const [again, other] = [await openWindow(), await openWindow({ tab })];
    expect(again.session.shots.draft.value).toMatchObject({ notes: 'first', name: 'clip' });
    expect(other.session.shots.draft.value).toMatchObject({ notes: 'second', name: 'second' });
    expect(again.session.films.film.value?.info.name).toBe('clip.mp4');
  });
});

describe('where the browser keeps nothing', () => {
  it('says so, and work goes on', async () => {
    const { session } = await workedWindow({
      records: () => Promise.reject(new Error('storage is turned off')),
    });
    expect(session.keeping.problem.value?.code).toBe('workNotKept');
    expect(session.keeping.problem.value?.message).toContain('storage is turned off');
    await session.measure();
    expect(session.measuring.status.value.kind).toBe('done');
  });

  it('says that the disk is full, and that it no longer is', async () => {
    let isFull = true;
    const filling = async (): Promise<Records> => {
      const records = await place().records();
      const full = async () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
      return { ...records, put: (desk, parts) => (isFull ? full() : records.put(desk, parts)) };
    };
    const first = await workedWindow({ records: filling });
    const { session } = first;
    await vi.waitFor(() => expect(session.keeping.problem.value?.code).toBe('workNotKept'));
    expect(session.keeping.problem.value?.message).toContain('its storage is full');
    isFull = false;
    // Without another edit, and with all that could not be kept before.
    await vi.waitFor(() => expect(session.keeping.problem.value).toBeNull(), { timeout: 10_000 });
    const draft = session.shots.draft.value;
    first.close();
    await again(draft);
  });

  it('keeps all anew where its storage is cleared under it', async () => {
    const first = await workedWindow();
    await isKept(first, 'copy');
    await first.session.measure();
    await new Promise((resolve, reject) => {
      const clearing = indexedDB.deleteDatabase(NAME);
      clearing.onsuccess = resolve;
      clearing.onblocked = reject;
    });
    const draft = first.session.shots.draft.value;
    first.close();
    const { session } = await again(draft);
    expect(session.measuring.status.value.kind).toBe('done');
  });

  it('says that the work is gone where its storage was cleared while it was away, and keeps anew', async () => {
    const first = await workedWindow();
    expect(first.keeping.lost).toBeNull();
    await isKept(first, 'copy');
    first.close();
    const records = await place().records();
    for (const desk of (await records.desks()).keys()) await records.remove(desk);
    const second = await openWindow();
    expect(second.keeping.lost?.code).toBe('workLost');
    expect(second.session.shots.draft.value).toBeNull();
    await second.session.openFiles([clip()]);
    await isKept(second, 'copy');
    second.close();
    expect((await openWindow()).keeping.lost).toBeNull();
  });

  it('says that footage is not copied, and keeps the inputs all the same', async () => {
    const first = await workedWindow({
      root: () => Promise.reject(new DOMException('not here', 'SecurityError')),
    });
    await vi.waitFor(() =>
      expect(first.session.keeping.problem.value?.code).toBe('footageNotKept'),
    );
    first.close();
    const { session } = await openWindow();
    expect(session.awaited.value?.work.history.present.timing.recordingRate?.value).toBe(12000);
  });
});

/** Another tab's own storage. */
function storageOf(): Storage {
  const items = new Map<string, string>();
  return {
    ...{ length: 0, clear: () => items.clear(), key: () => null },
    getItem: (key) => items.get(key) ?? null,
    setItem: (key, value) => void items.set(key, value),
    removeItem: (key) => void items.delete(key),
  };
}
