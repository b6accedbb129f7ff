import { expose } from 'comlink';
import type { GreyFrame } from '../src/core/frame';
import { freeMemory } from '../src/footage/freeing';
import type { MeasureApi } from '../src/protocol/measure';
import { createMeasurer } from '../src/reduction/measurer';
import type { CentreHint } from '../src/reduction/types';
import { serve } from './serve';

const measurer = createMeasurer();

/** Frames come to this thread for one call each. */
async function using<T>(frames: readonly GreyFrame[], work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } finally {
    freeMemory(frames.map(({ data }) => data));
  }
}

const framesOf = (hints: readonly CentreHint[]) => hints.map(({ frame }) => frame);

const api: MeasureApi = {
  prepare: (setup) => measurer.prepare(setup),
  survey: (frames) => using(frames, () => measurer.survey(frames)),
  centres: (hints) => using(framesOf(hints), () => measurer.centres(hints)),
  inspect: (hint) => using(framesOf([hint]), () => measurer.inspect(hint)),
  attach: async (port) => expose(api, port),
};

serve(api);
