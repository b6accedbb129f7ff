import { expose } from 'comlink';
import { carryReasons } from '../src/protocol/errors';
import type { MeasureApi } from '../src/protocol/measure';
import { createMeasurer } from '../src/reduction/measurer';

const measurer = createMeasurer();

const api: MeasureApi = {
  prepare: (setup) => measurer.prepare(setup),
  survey: (frames) => measurer.survey(frames),
  centres: (hints) => measurer.centres(hints),
  inspect: (hint) => measurer.inspect(hint),
  attach: async (port) => expose(api, port),
};

carryReasons();
expose(api);
