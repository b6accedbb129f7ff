import { signal } from '@preact/signals';
import { type Reason, reasonOf } from '../core/reason';
import type { ThreadFault } from '../protocol/threadFault';
import type { StartThread, Thread } from './crew';

/** Where a piece of work in a thread of its own stands. */
export type Work<T> =
  | { readonly kind: 'idle' }
  /** `share`: 0..1. */
  | { readonly kind: 'running'; readonly share: number }
  | { readonly kind: 'done'; readonly found: T }
  | { readonly kind: 'failed'; readonly reason: Reason };

/**
 * One kind of work at a time, each in its own thread. Cancelled, what was found before stays. `stopped` is told of a
 * thread that died.
 */
export function createTask<T, Api>(
  start: StartThread<Api>,
  stopped: (fault: ThreadFault) => Reason,
) {
  const state = signal<Work<T>>({ kind: 'idle' });
  let end: (() => void) | null = null;

  return {
    state,
    /** Begins; work that was going on is given up. Resolves once it is over, cancelled too. */
    async run(ask: (thread: Api, onShare: (share: number) => void) => Promise<T>): Promise<void> {
      this.cancel();
      const before = state.value;
      state.value = { kind: 'running', share: 0 };
      let alive = true;
      let thread: Thread<Api> | null = null;
      let over = () => {};
      const settle = (next: Work<T>) => {
        if (!alive) return;
        alive = false;
        end = null;
        thread?.dispose();
        state.value = next;
        over();
      };
      end = () => settle(before);
      // A thread that was ended never answers, so its answer alone cannot be waited for.
      await new Promise<void>((resolve) => {
        over = resolve;
        const work = async () => {
          thread = start((fault) => {
            if (alive) settle({ kind: 'failed', reason: stopped(fault) });
          });
          return ask(thread, (share) => {
            if (alive) state.value = { kind: 'running', share };
          });
        };
        work().then(
          (found) => settle({ kind: 'done', found }),
          (error) => settle({ kind: 'failed', reason: reasonOf(error) }),
        );
      });
    },
    /** The work cannot even begin. */
    refuse(reason: Reason) {
      end?.();
      state.value = { kind: 'failed', reason };
    },
    cancel: () => end?.(),
    /** Gives up what goes on and forgets what was found. */
    reset() {
      end?.();
      state.value = { kind: 'idle' };
    },
  };
}
