import type { Remote } from 'comlink';
import type { FrameRange } from '../src/core/film';
import type { GreyFrame } from '../src/core/frame';
import type { FilmApi } from '../src/protocol/film';
import { freeFrames } from './freeing';

/** What the film worker gives another thread, which frees it when it is done with it. */
export const supplyFrom = (api: Remote<FilmApi>) => ({
  frames: (range: FrameRange) => framesFrom(api, range),
  done: (frame: GreyFrame) => freeFrames([frame]),
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
