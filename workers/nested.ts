import { type Remote, wrap } from 'comlink';
import { ExitframeError } from '../src/core/reason';
import { watch } from '../src/protocol/life';

/** A thread started by another one. */
export interface Nested<Api> {
  readonly api: Remote<Api>;
  /** What it gives, unless it dies or is ended before: then it throws why. */
  until<T>(given: Promise<T>): Promise<T>;
  /** Ends it at once. */
  end(reason?: unknown): void;
}

export function nested<Api>(worker: Worker): Nested<Api> {
  let lose: (reason: unknown) => void = () => {};
  const lost = new Promise<never>((_, reject) => {
    lose = reject;
  });
  let isOver = false;
  lost.catch(() => {}); // met by whoever waits for something of the thread; nobody may
  const stop = watch(worker, ({ code, message, values }) =>
    lose(new ExitframeError(code, message, undefined, { values })),
  );
  return {
    api: wrap<Api>(worker),
    until: (given) => Promise.race([given, lost]),
    end(reason = new DOMException('The thread was ended.', 'AbortError')) {
      if (isOver) return;
      isOver = true;
      stop();
      lose(reason);
    },
  };
}
