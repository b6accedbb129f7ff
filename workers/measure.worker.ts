import { expose } from 'comlink';
import type { MeasureApi } from '../src/protocol/measure';
import { createMeasurer } from '../src/reduction/measurer';
import { serve } from './serve';

const measurer = createMeasurer();

const api: MeasureApi = {
  prepare: (setup) => measurer.prepare(setup),
  survey: (frames) => measurer.survey(frames),
  centres: (hints) => measurer.centres(hints),
  inspect: (hint) => measurer.inspect(hint),
  attach: async (port) => expose(api, port),
};

serve(api);
