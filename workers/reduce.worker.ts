import { expose, type Remote, wrap } from 'comlink';
import type { FrameRange } from '../src/core/film';
import type { GreyFrame } from '../src/core/frame';
import { ExitframeError } from '../src/core/reason';
import { carryReasons } from '../src/protocol/errors';
import type { FilmApi } from '../src/protocol/film';
import type { MeasureApi } from '../src/protocol/measure';
import type { ReduceApi } from '../src/protocol/reduce';
import { concludeShot } from '../src/reduction/concludeShot';
import { type MeasuredFilm, measureFilm, stillMeasures } from '../src/reduction/measureFilm';
import type { FrameMeasurer } from '../src/reduction/types';
import { poolOf } from './measurerPool';

let film: Remote<FilmApi> | null = null;
let measurer: FrameMeasurer | null = null;
let measured: MeasuredFilm | null = null;
let running: AbortController | null = null;

/** Frames of the film worker as the reduction pulls them. */
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

const api: ReduceApi = {
  async connect(filmPort, measurerPorts) {
    film = wrap<FilmApi>(filmPort);
    measurer = poolOf(measurerPorts.map((port) => wrap<MeasureApi>(port)));
  },
  async reduce(inputs, onEvent) {
    const [filmApi, crew] = [film, measurer];
    if (filmApi === null || crew === null) {
      throw new ExitframeError('notConnected', 'The reducing worker has no film to read.');
    }
    running?.abort();
    const abort = new AbortController();
    running = abort;
    measured = null;
    try {
      const frames = (range: FrameRange) => framesFrom(filmApi, range);
      const read = await measureFilm(inputs, { frames }, crew, onEvent, abort.signal);
      // Cancelled after its last frame: a later run may have begun, whose film this must not replace.
      abort.signal.throwIfAborted();
      measured = read;
      return concludeShot(inputs, read, onEvent);
    } finally {
      if (running === abort) running = null;
    }
  },
  async refit(inputs) {
    if (measured === null || !stillMeasures(measured, inputs)) {
      throw new ExitframeError(
        'pixelsNeeded',
        'This change needs the film to be measured again.',
        'Measure again.',
      );
    }
    return concludeShot(inputs, measured);
  },
  async inspect(index) {
    const [filmApi, crew] = [film, measurer];
    const sought = measured?.hintFor(index) ?? null;
    if (filmApi === null || crew === null || sought === null) return null;
    const frame = await filmApi.frame(index);
    return crew.inspect({ frame, at: sought.at }, sought.ball);
  },
  cancel: async () => running?.abort(),
};

carryReasons();
expose(api);
