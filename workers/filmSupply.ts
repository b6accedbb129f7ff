import { type Remote, transfer } from 'comlink';
import type { FrameRange } from '../src/core/film';
import type { GreyFrame } from '../src/core/frame';
import { freeMemory } from '../src/footage/freeing';
import { MOST_SPARE } from '../src/footage/spareMemory';
import type { FilmApi } from '../src/protocol/film';

/** What the film worker gives another thread, which hands the memory back with its next question once it is done with it. */
export function supplyFrom(api: Remote<FilmApi>) {
  let waiting: GreyFrame[] = [];
  const handBack = (): ArrayBuffer[] => {
    const memory = waiting.map(({ data }) => data.buffer as ArrayBuffer);
    waiting = [];
    return transfer(memory, memory);
  };
  return {
    frames: (range: FrameRange) => framesFrom(api, range, handBack),
    done(frame: GreyFrame) {
      const { byteLength } = frame.data;
      if (byteLength * (waiting.length + 1) <= MOST_SPARE) waiting.push(frame);
      else freeMemory([frame.data]);
    },
  };
}

/** Frames as the other thread pulls them. */
async function* framesFrom(
  api: Remote<FilmApi>,
  range: FrameRange,
  handBack: () => ArrayBuffer[],
): AsyncGenerator<GreyFrame> {
  const run = await api.startRun(range);
  try {
    for (;;) {
      const batch = await api.next(run, handBack());
      if (batch.length === 0) return;
      yield* batch;
    }
  } finally {
    await api.endRun(run);
  }
}
