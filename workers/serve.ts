import { expose } from 'comlink';
import { carryReasons } from '../src/protocol/errors';
import { showLife } from '../src/protocol/life';

/**
 * Serves the page that started this thread, once that page knows how to tell whether it lives: work that keeps the thread
 * busy would hold the word back, and a thread that ends before it is waited for without end.
 */
export function serve(api: object): void {
  carryReasons();
  const shown = showLife(self);
  const answers = new Proxy(api, {
    get(_, name) {
      const call = Reflect.get(api, name) as (...given: unknown[]) => unknown;
      return async (...given: unknown[]) => {
        await shown;
        return call(...given);
      };
    },
  });
  expose(answers);
}
