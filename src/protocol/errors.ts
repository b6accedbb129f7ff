import { type TransferHandler, transferHandlers } from 'comlink';
import { ExitframeError, type Reason, reasonOf } from '../core/reason';

/** Comlink's own name of the handler that carries what a call threw. */
const THROWN = 'throw';

/**
 * Carries errors over threads with their code and remedy; comlink alone keeps only the message.
 * Call once in every thread that talks comlink.
 */
export function carryReasons(): void {
  const comlinkHandler = transferHandlers.get(THROWN);
  if (comlinkHandler === undefined) throw new Error('comlink has no handler for thrown values');
  const handler: TransferHandler<{ value: unknown }, Reason> = {
    canHandle: (value): value is { value: unknown } => comlinkHandler.canHandle(value),
    serialize: ({ value }) => [reasonOf(value), []],
    deserialize: ({ code, message, remedy, values }) => {
      throw new ExitframeError(code, message, remedy, { values });
    },
  };
  transferHandlers.set(THROWN, handler);
}
