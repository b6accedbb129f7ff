import { type Remote, transfer, wrap } from 'comlink';
import { ExitframeError } from '../src/core/reason';
import type { FilmApi } from '../src/protocol/film';
import type { SceneryApi } from '../src/protocol/scenery';
import { readBackground } from '../src/reduction/background';
import { composeFlight, lookThrough } from '../src/reduction/lookThrough';
import { supplyFrom } from './filmSupply';
import { serve } from './serve';
import { transferFrame } from './transferring';

let film: Remote<FilmApi> | null = null;
const abort = new AbortController();

function supply() {
  const api = film;
  if (api === null) {
    throw new ExitframeError('notConnected', 'The thread that looks through films has none.');
  }
  return supplyFrom(api);
}

const api: SceneryApi = {
  async connect(port) {
    film = wrap<FilmApi>(port);
  },
  lookThrough: (question, onPart) => lookThrough(question, supply(), onPart, abort.signal),
  async stillScene(info, onShare) {
    const scene = await readBackground({
      inputs: { info },
      film: supply(),
      onEvent(event) {
        if (event.kind === 'progress') onShare(event.done / event.total);
      },
      cancellation: abort.signal,
    });
    return transfer(scene, [scene.level.buffer]);
  },
  flight: async (question, onShare) =>
    transferFrame(await composeFlight(question, supply(), onShare, abort.signal)),
  stop: async () => abort.abort(),
};

serve(api);
