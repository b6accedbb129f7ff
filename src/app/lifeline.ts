import type { ExitframeError } from '../core/reason';

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
