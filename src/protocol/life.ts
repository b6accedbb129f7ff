import { ENDED_SILENTLY, faultOf, type ThreadFault } from './threadFault';

/** Of locks that threads hold for as long as they live: the browser frees them however a thread ends. */
const PREFIX = 'exitframe-thread-';

interface AliveSign {
  readonly heldWhileAlive: string;
}

/**
 * Called once in a thread: takes a lock for its life and tells the page which, since a thread that ends without an error
 * is otherwise not told from one that works long. Settles once that is told. Pages served without encryption have no
 * locks and go without.
 */
export function showLife(scope: {
  readonly navigator: { readonly locks?: LockManager };
  postMessage(sign: AliveSign): void;
}): Promise<void> {
  const { locks } = scope.navigator;
  if (locks === undefined) return Promise.resolve();
  const heldWhileAlive = `${PREFIX}${Date.now()}-${Math.random()}`;
  return new Promise((told) => {
    const held = locks.request(heldWhileAlive, () => {
      scope.postMessage({ heldWhileAlive });
      told();
      return new Promise<never>(() => {});
    });
    held.catch(() => told()); // refused: as without locks
  });
}

/** The lock that a thread's message names; null: it says something else. */
function lifeLockOf(message: unknown): string | null {
  const { heldWhileAlive } = (message ?? {}) as Partial<AliveSign>;
  return typeof heldWhileAlive === 'string' ? heldWhileAlive : null;
}

/** Tells of a thread that dies, with an error or without a word. Gives what ends it, of which nothing is told. */
export function watch(worker: Worker, onFault: (fault: ThreadFault) => void): () => void {
  const ended = new AbortController();
  const { signal } = ended;
  worker.addEventListener(
    'error',
    (event) => {
      event.preventDefault();
      onFault(faultOf(event.message));
    },
    { signal },
  );
  worker.addEventListener(
    'message',
    ({ data }) => {
      const lock = lifeLockOf(data);
      if (lock === null) return;
      // Granted when the thread holds it no more.
      navigator.locks.request(lock, { signal }, () => onFault(ENDED_SILENTLY)).catch(() => {});
    },
    { signal },
  );
  return () => {
    ended.abort();
    worker.terminate();
  };
}
