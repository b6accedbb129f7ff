import { expose } from 'comlink';
import { carryReasons } from '../src/protocol/errors';
import { showLife } from '../src/protocol/life';

/** Serves the page that started this thread. */
export function serve(api: object): void {
  carryReasons();
  expose(api);
  showLife(self);
}
