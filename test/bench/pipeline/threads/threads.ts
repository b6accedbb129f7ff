/** The tool's own threads without its page: what a film costs to decode, and to reduce. */
import { proxy } from 'comlink';
import { startWorkforce } from '../../../../src/app/workforce';
import type { FootageInfo } from '../../../../src/core/film';
import { orThrow } from '../../../../src/core/reason';
import type { ReductionEvent, Stage } from '../../../../src/reduction/types';
import { parseShot } from '../../../../src/shot/parse';
import { supplyFrom } from '../../../../workers/filmSupply';
import type { DecodeTiming, PipelinePage, ReduceTiming } from '../timings';

const threads = startWorkforce(({ message }) => {
  throw new Error(message);
});
const input = document.querySelector('input') as HTMLInputElement;
let info: FootageInfo | null = null;

/** As the tool's threads have films decoded: the memory of frames that are done with goes back. */
async function decode(): Promise<DecodeTiming> {
  if (info === null) throw new Error('no film is open');
  const begun = performance.now();
  const film = supplyFrom(threads.film);
  let frames = 0;
  for await (const frame of film.frames({ start: 0, end: info.frameCount })) {
    film.done(frame);
    frames += 1;
  }
  return { frames, seconds: (performance.now() - begun) / 1000 };
}

async function reduce(shotText: string): Promise<ReduceTiming> {
  if (info === null) throw new Error('no film is open');
  const shot = orThrow(parseShot(shotText));
  const timestamps = await threads.film.timestamps();
  const begun = performance.now();
  const since = () => (performance.now() - begun) / 1000;
  let [firstPoint, measured, trialsBegin] = [Number.NaN, Number.NaN, Number.NaN];
  const stages: Partial<Record<Stage, number>> = {};
  const onEvents = (events: readonly ReductionEvent[]) => {
    for (const event of events) {
      if (event.kind === 'centre' && Number.isNaN(firstPoint)) firstPoint = since();
      if (event.kind !== 'progress') continue;
      stages[event.stage] = since();
      if (event.stage === 'fit') measured = since();
      if (event.stage === 'uncertainty' && event.done === 0) trialsBegin = since();
    }
  };
  const inputs = { shot, info, timestamps, footageSha256: null, audio: null };
  const { result } = await threads.reduce.reduce(inputs, proxy(onEvents));
  const { exitVelocity } = result;
  return {
    firstPoint,
    measured,
    seconds: since(),
    trials: (stages.uncertainty ?? Number.NaN) - trialsBegin,
    stages,
    used: result.positions.filter(({ used }) => used).length,
    velocity: 'unavailable' in exitVelocity ? null : exitVelocity.value,
    velocityU: 'unavailable' in exitVelocity ? null : exitVelocity.u,
    warnings: result.warnings.map(({ code }) => code),
  };
}

const page: PipelinePage = {
  async open() {
    const file = input.files?.[0];
    if (file === undefined) throw new Error('no file was chosen');
    await threads.connected;
    info = await threads.film.open([{ name: file.name, blob: file }]);
    return { frames: info.frameCount, decoder: info.decoder.name };
  },
  decode,
  reduce,
};
Object.assign(window, { pipeline: page });
