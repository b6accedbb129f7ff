import type { Remote } from 'comlink';
import type { FrameRange } from '../src/core/film';
import type { GreyFrame } from '../src/core/frame';
import { freeMemory } from '../src/footage/freeing';
import type { FilmApi } from '../src/protocol/film';

/** What the film worker gives another thread, which frees it when it is done with it. */
export const supplyFrom = (api: Remote<FilmApi>) => ({
  frames: (range: FrameRange) => framesFrom(api, range),
  done: ({ data }: GreyFrame) => freeMemory([data]),
});

/** Frames as the other thread pulls them. */
async function* framesFrom(api: Remote<FilmApi>, range: FrameRange): AsyncGenerator<GreyFrame> {
  const run = await api.startRun(range);
  try {
    for (;;) {
      const batch = await api.next(run);
      if (batch.length === 0) return;
      yield* batch;
    }
  } finally {
    await api.endRun(run);
  }
}
