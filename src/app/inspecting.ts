import { effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import { type Reason, reasonOf } from '../core/reason';
import type { ReduceApi } from '../protocol/reduce';
import type { FrameInspection } from './resultTypes';

/** How far the laying open of one frame has come. */
export type InspectionState =
  /** Nothing is asked for. */
  | { readonly kind: 'none' }
  | { readonly kind: 'loading'; readonly frame: number }
  | { readonly kind: 'ready'; readonly inspection: FrameInspection }
  /** The ball was not looked for in this frame. */
  | { readonly kind: 'outside'; readonly frame: number }
  | { readonly kind: 'failed'; readonly frame: number; readonly reason: Reason };

/** Frames stepped through lately, at under 100 kB each. */
const MOST_KEPT = 200;

/**
 * Lays frames of the measured film open, one at a time: while one is under way only the last frame asked for
 * waits, so that fast stepping neither queues up nor shows a stale answer.
 */
export function createInspecting(crew: { readonly reduce: Pick<ReduceApi, 'inspect'> }) {
  const state = signal<InspectionState>({ kind: 'none' });
  const kept = new Map<number, FrameInspection | null>();
  let wanted: number | null = null;
  let generation = 0;
  let busyWith: number | null = null;

  const tell = (frame: number, inspection: FrameInspection | null) => {
    state.value = inspection === null ? { kind: 'outside', frame } : { kind: 'ready', inspection };
  };
  const keep = (frame: number, inspection: FrameInspection | null) => {
    kept.set(frame, inspection);
    const [oldest] = kept.keys();
    if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
  };
  const work = async () => {
    const mine = generation;
    busyWith = mine;
    let frame = wanted;
    while (frame !== null) {
      let failed: Reason | null = null;
      try {
        const inspection = await crew.reduce.inspect(frame);
        if (mine !== generation) return;
        keep(frame, inspection);
      } catch (error) {
        if (mine !== generation) return;
        failed = reasonOf(error);
      }
      if (frame === wanted) {
        if (failed === null) tell(frame, kept.get(frame) ?? null);
        else state.value = { kind: 'failed', frame, reason: failed };
        break;
      }
      frame = wanted !== null && !kept.has(wanted) ? wanted : null;
    }
    busyWith = null;
  };

  const ask = (frame: number | null) => {
    wanted = frame;
    const known = frame === null ? undefined : kept.get(frame);
    if (frame === null) state.value = { kind: 'none' };
    else if (known !== undefined) tell(frame, known);
    else {
      state.value = { kind: 'loading', frame };
      if (busyWith !== generation) void work();
    }
  };
  const reset = () => {
    generation += 1;
    kept.clear();
    wanted = null;
    state.value = { kind: 'none' };
  };

  return {
    state,
    /** Asks for a frame, or for none. */
    ask,
    /** Forgets everything: the film was measured anew, or another was opened. */
    reset,
    /** Asks for the frame that `frame` names whenever that changes, anew with every pass over the film. */
    follow(pass: ReadonlySignal<number>, frame: () => number | null): () => void {
      let last = pass.peek();
      return effect(() => {
        const now = pass.value;
        const wantedNow = frame();
        untracked(() => {
          if (now !== last) reset();
          last = now;
          ask(wantedNow);
        });
      });
    },
  };
}
