import { ExitframeError, type Reason } from '../core/reason';

/** What ended a thread; said behind what it was to do. */
export type ThreadFault = Reason;

/** An error that nothing in the thread caught; without words its file did not come. */
export const faultOf = (message: string | undefined): ThreadFault =>
  message
    ? { code: 'threadFailed', message: `It failed: ${message}.`, values: { said: message } }
    : {
        code: 'threadNotFetched',
        message: 'Its file could not be fetched: network or server may be gone.',
      };

export const ENDED_SILENTLY: ThreadFault = {
  code: 'threadEnded',
  message: 'The browser ended it without giving a reason; memory may have run out.',
};

/** Why work ends whose thread died; `what` says which. */
export const stoppedBy = (code: string, what: string, fault: ThreadFault, remedy: string) =>
  new ExitframeError(code, `${what} ${fault.message}`, remedy, {
    values: { ...fault.values, because: fault.code },
  });

/** Calls that are waited for, refused together when the threads that should answer are dead. */
export function createLifeline() {
  const waiting = new Set<(error: ExitframeError) => void>();
  let dead: ExitframeError | null = null;

  const answered = <T>(ask: () => Promise<T>): Promise<T> =>
    new Promise((resolve, reject) => {
      if (dead !== null) return reject(dead);
      waiting.add(reject);
      Promise.resolve(ask())
        .then(resolve, reject)
        .finally(() => waiting.delete(reject));
    });
  return {
    isDead: () => dead !== null,
    /** Whatever is asked from now on is refused too. */
    cut(error: ExitframeError) {
      dead ??= error;
      for (const refuse of waiting) refuse(dead);
    },
    /** An interface whose calls end with the threads behind it. */
    holds: <Api extends object>(api: Api): Api =>
      new Proxy(api, {
        get(_, name) {
          const call = Reflect.get(api, name) as (...given: unknown[]) => Promise<unknown>;
          return (...given: unknown[]) => answered(() => call(...given));
        },
      }),
  };
}
