import { type Remote, wrap } from 'comlink';
import { ExitframeError } from '../src/core/reason';
import type { FilmApi } from '../src/protocol/film';
import type { MeasureApi } from '../src/protocol/measure';
import type { ReduceApi } from '../src/protocol/reduce';
import { concludeShot } from '../src/reduction/concludeShot';
import { type MeasuredFilm, measureFilm, stillMeasures } from '../src/reduction/measureFilm';
import type { FrameMeasurer, ReductionInputs, SurveySetup } from '../src/reduction/types';
import type { FrameSupply } from '../src/reduction/work';
import { inEventBatches } from './eventBatches';
import { supplyFrom } from './filmSupply';
import { poolOf } from './measurerPool';
import { serve } from './serve';

let film: Remote<FilmApi> | null = null;
let measurer: FrameMeasurer | null = null;
/** What the measurers were last set up with. */
let prepared: SurveySetup | null = null;
/** The film measured last; it stays until the next one is measured to its end. */
let measured: {
  readonly film: MeasuredFilm;
  readonly footage: string;
  readonly setup: SurveySetup | null;
} | null = null;
let running: AbortController | null = null;

/** Tells one film from another. */
const footageOf = ({ footageSha256, info }: ReductionInputs): string =>
  JSON.stringify([footageSha256, info.name, info.width, info.height, info.frameCount]);

/** The same measurer, whose setup is remembered. */
const remembered = (pool: FrameMeasurer): FrameMeasurer => ({
  ...pool,
  async prepare(setup) {
    prepared = setup;
    await pool.prepare(setup);
  },
});

const api: ReduceApi = {
  async connect(filmPort, measurerPorts) {
    film = wrap<FilmApi>(filmPort);
    measurer = remembered(poolOf(measurerPorts.map((port) => wrap<MeasureApi>(port))));
  },
  async reduce(inputs, onEvents) {
    const [filmApi, crew] = [film, measurer];
    if (filmApi === null || crew === null) {
      throw new ExitframeError('notConnected', 'The reducing worker has no film to read.');
    }
    running?.abort();
    const abort = new AbortController();
    running = abort;
    const events = inEventBatches(onEvents);
    try {
      const supply: FrameSupply = {
        ...supplyFrom(filmApi),
        check: (ranges) => filmApi.check(ranges),
      };
      const read = await measureFilm(inputs, supply, crew, events.add, abort.signal);
      // Cancelled after its last frame: a later run may have begun, whose film this must not replace.
      abort.signal.throwIfAborted();
      measured = { film: read, footage: footageOf(inputs), setup: prepared };
      events.flush();
      // It leaves this thread no moment for a timer: each stage is told of at once.
      return concludeShot(inputs, read, (event) => {
        events.add(event);
        events.flush();
      });
    } finally {
      events.drop();
      // A later run's check would end this one's itself.
      if (running === abort) {
        running = null;
        void filmApi.endCheck().catch(() => {});
      }
    }
  },
  async refit(inputs) {
    const serves =
      measured !== null &&
      measured.footage === footageOf(inputs) &&
      stillMeasures(measured.film, inputs);
    if (measured === null || !serves) {
      throw new ExitframeError(
        'pixelsNeeded',
        'This change needs the film to be measured again.',
        'Measure again.',
      );
    }
    return concludeShot(inputs, measured.film);
  },
  async inspect(index) {
    const [filmApi, crew, last] = [film, measurer, measured];
    if (filmApi === null || crew === null || last === null || running !== null) {
      throw new ExitframeError(
        'notMeasured',
        'The fit of a frame can be shown once the film has been measured in this window.',
        'Measure it, or measure it again.',
      );
    }
    const sought = last.film.hintFor(index);
    if (sought === null) return null;
    const frame = await filmApi.frame(index);
    // A run that was cancelled left its own setup behind.
    if (last.setup !== null && prepared !== last.setup) await crew.prepare(last.setup);
    return crew.inspect({ frame, ...sought });
  },
  cancel: async () => running?.abort(),
};

serve(api);
