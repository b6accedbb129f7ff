import { wrap } from 'comlink';
import { ExitframeError } from '../src/core/reason';
import { browserPlatform } from '../src/footage/browser';
import type { DecodePlatform } from '../src/footage/platform';
import { watch } from '../src/protocol/life';
import type { SecondReadingApi } from '../src/protocol/secondReading';

/**
 * Frames read a second time in a thread of its own: ffmpeg keeps its thread busy without a pause, and this one has
 * frames to hand out. Cancelled, that thread is ended at once.
 */
export const readInThread: NonNullable<DecodePlatform['readAgain']> = async (
  file,
  ranges,
  signal,
) => {
  const core = await browserPlatform.loadCore();
  signal?.throwIfAborted();
  const worker = new Worker(new URL('./secondReading.worker.ts', import.meta.url), {
    type: 'module',
  });
  let end = () => {};
  try {
    return await new Promise((resolve, reject) => {
      end = watch(worker, ({ code, message, values }) =>
        reject(new ExitframeError(code, message, undefined, { values })),
      );
      signal?.addEventListener('abort', () => reject(signal.reason), { once: true });
      wrap<SecondReadingApi>(worker).read(file, ranges, core).then(resolve, reject);
    });
  } finally {
    end();
  }
};
