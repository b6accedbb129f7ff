import { browserPlatform } from '../src/footage/browser';
import type { DecodePlatform } from '../src/footage/platform';
import type { SecondReadingApi } from '../src/protocol/secondReading';
import { nested } from './nested';

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
  const thread = nested<SecondReadingApi>(
    new Worker(new URL('./secondReading.worker.ts', import.meta.url), { type: 'module' }),
  );
  const cancel = () => thread.end(signal?.reason);
  signal?.addEventListener('abort', cancel, { once: true });
  try {
    return await thread.until(thread.api.read(file, ranges, core));
  } finally {
    signal?.removeEventListener('abort', cancel);
    thread.end();
  }
};
