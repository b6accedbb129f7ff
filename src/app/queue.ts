import { batch, computed, signal } from '@preact/signals';
import { type ExitframeError, type Reason, reasonOf } from '../core/reason';
import { stoppedBy, type ThreadFault } from '../protocol/threadFault';
import type { Stage } from '../reduction/types';
import type { Setup } from '../shot/setupFile';
import type { Bench, StartBench } from './crew';
import type { ShotDraft } from './draft';
import { clipsAmong } from './footageFiles';
import type { createNotebook } from './notebook';
import { type ClipMeasured, measureClip } from './queueClip';
import { namesOf } from './queueNames';
import { textFilesOf } from './saving';
import { rememberScene, type SetupSceneStore } from './setupScenes';

export type QueueState =
  | { readonly kind: 'waiting' }
  /** `share` of its stage done, 0..1; null: it is being opened. */
  | { readonly kind: 'measuring'; readonly stage: Stage | null; readonly share: number }
  | { readonly kind: 'done'; readonly measured: ClipMeasured }
  | { readonly kind: 'failed'; readonly reason: Reason }
  | { readonly kind: 'cancelled' };

export interface QueuedClip {
  readonly id: number;
  readonly name: string;
  /** One file, or the images of a sequence in order. */
  readonly files: readonly File[];
  readonly state: QueueState;
}

interface Parts {
  readonly startBench: StartBench;
  readonly notebook: Pick<ReturnType<typeof createNotebook>, 'add'>;
  readonly scenes: SetupSceneStore;
  /** The shot that is open, whose ball, air and launcher the clips share. */
  openDraft(): ShotDraft | null;
}

/** Measures many clips in one setup, one after the other, beside the film on the screen. */
export function createQueue({ startBench, notebook, scenes, openDraft }: Parts) {
  const clips = signal<readonly QueuedClip[]>([]);
  const running = signal(false);
  /** Chosen for the clips; null: nobody chose yet. */
  const setupId = signal<string | null>(null);
  let nextId = 1;
  let stopping: AbortController | null = null;

  const change = (id: number, state: QueueState) => {
    clips.value = clips.value.map((one) => (one.id === id ? { ...one, state } : one));
  };
  const stateOf = (id: number) => clips.value.find((one) => one.id === id)?.state.kind;
  const nextWaiting = () => clips.value.find(({ state }) => state.kind === 'waiting');

  /** One clip to its end, whatever that is. Gives the bench for the next; null: it has to be started anew. */
  const measureOne = async (clip: QueuedClip, setup: Setup, bench: Bench, faults: Faults) => {
    const stop = new AbortController();
    stopping = stop;
    try {
      const measured = await Promise.race([
        measureClip({
          ...{ bench, scenes, setup, clip, open: openDraft(), signal: stop.signal },
          onStage: (stage, share) => {
            if (!stop.signal.aborted) change(clip.id, { kind: 'measuring', stage, share });
          },
        }),
        faults.next,
        aborted(stop.signal),
      ]);
      await notebook.add([...textFilesOf(measured.shot, measured.result), ...clip.files], false);
      change(clip.id, { kind: 'done', measured });
    } catch (error) {
      if (!stop.signal.aborted) change(clip.id, { kind: 'failed', reason: reasonOf(error) });
      else void bench.reduce.cancel();
    }
    stopping = null;
  };

  const cancel = (id: number) => {
    const kind = stateOf(id);
    if (kind !== 'waiting' && kind !== 'measuring') return;
    change(id, { kind: 'cancelled' });
    if (kind === 'measuring') stopping?.abort();
  };

  return {
    clips,
    running,
    setupId,
    /** How many have come to an end, of all. */
    ended: computed(
      () =>
        clips.value.filter(({ state }) => state.kind !== 'waiting' && state.kind !== 'measuring')
          .length,
    ),
    /** Adds clips; gives how many there were among the files. */
    add(files: readonly File[]): number {
      const found = clipsAmong(files);
      const names = namesOf(
        found,
        clips.value.map(({ name }) => name),
      );
      clips.value = [
        ...clips.value,
        ...found.map((some, i) => ({
          ...{ id: nextId++, name: names[i] ?? '', files: some },
          state: { kind: 'waiting' } as const,
        })),
      ];
      return found.length;
    },
    /** Measures all that wait. */
    async run(setup: Setup): Promise<void> {
      if (running.value) return;
      running.value = true;
      rememberScene(scenes, setup);
      let bench: Bench | null = null;
      let faults = faultsOf();
      for (let clip = nextWaiting(); clip !== undefined; clip = nextWaiting()) {
        change(clip.id, { kind: 'measuring', stage: null, share: 0 });
        try {
          bench ??= await Promise.race([startBench(faults.report), faults.next]);
          if (stateOf(clip.id) === 'measuring') await measureOne(clip, setup, bench, faults);
        } catch (error) {
          change(clip.id, { kind: 'failed', reason: reasonOf(error) });
        }
        if (faults.happened()) {
          bench?.dispose();
          bench = null;
          faults = faultsOf();
        }
      }
      bench?.dispose();
      running.value = false;
    },
    cancel,
    cancelAll: () =>
      batch(() => {
        for (const { id } of clips.value) cancel(id);
      }),
    /** Lets one that failed or was cancelled wait again. */
    again(id: number) {
      const kind = stateOf(id);
      if (kind === 'failed' || kind === 'cancelled') change(id, { kind: 'waiting' });
    },
    /** Takes out what has come to an end. */
    clearEnded() {
      clips.value = clips.value.filter(
        ({ state }) => state.kind === 'waiting' || state.kind === 'measuring',
      );
    },
    dispose() {
      this.cancelAll();
    },
  };
}

/** Rejects when the signal comes. */
const aborted = (signal: AbortSignal): Promise<never> =>
  new Promise((_, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason), { once: true });
  });

type Faults = ReturnType<typeof faultsOf>;

/** A bench's threads that die: their answers will not come. */
function faultsOf() {
  let happened = false;
  let reject: (error: ExitframeError) => void = () => {};
  const next = new Promise<never>((_, no) => {
    reject = no;
  });
  // Told of when nothing is measured, it is for nobody.
  next.catch(() => {});
  return {
    next,
    happened: () => happened,
    report(fault: ThreadFault) {
      happened = true;
      reject(
        stoppedBy(
          'queueStopped',
          'A thread that measured this clip stopped.',
          fault,
          'Measure it again; where it stops again, open the clip by itself.',
        ),
      );
    },
  };
}
