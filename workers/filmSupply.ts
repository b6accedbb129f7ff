import type { Remote } from 'comlink';
import type { FrameRange } from '../src/core/film';
import type { GreyFrame } from '../src/core/frame';
import type { FilmApi } from '../src/protocol/film';

/** Frames of the film worker as another thread pulls them. */
export async function* framesFrom(
  api: Remote<FilmApi>,
  range: FrameRange,
): AsyncGenerator<GreyFrame> {
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
