import type { DecodePlatform } from '../src/footage/platform';
import type { DecodeApi } from '../src/protocol/decode';
import { nested } from './nested';

/** Each takes some tens of MiB; more than two outrun who measures. */
const COUNT = 2;

/** Films whose frames stand alone are decoded by threads side by side: one ffmpeg keeps one core busy at most. */
export const startDecoders: NonNullable<DecodePlatform['startDecoders']> = (file, film) => {
  if (navigator.hardwareConcurrency < COUNT) return null;
  const threads = Array.from({ length: COUNT }, () => {
    const thread = nested<DecodeApi>(
      new Worker(new URL('./decode.worker.ts', import.meta.url), { type: 'module' }),
    );
    return { thread, opened: thread.until(thread.api.open(file, film)) };
  });
  for (const { opened } of threads) opened.catch(() => {}); // met by the first span
  let turn = 0;
  return {
    count: COUNT,
    async decode(span) {
      const { thread, opened } = threads[turn++ % COUNT] as (typeof threads)[number];
      await opened;
      return thread.until(thread.api.decode(span));
    },
    end() {
      for (const { thread } of threads) thread.end();
    },
  };
};
