import { proxy, type Remote, transfer, wrap } from 'comlink';
import type { CalibrateApi } from '../protocol/calibrate';
import { carryReasons } from '../protocol/errors';
import type { FilmApi } from '../protocol/film';
import type { LaunchApi } from '../protocol/launch';
import type { MeasureApi } from '../protocol/measure';
import type { PlanApi } from '../protocol/plan';
import type { ReduceApi } from '../protocol/reduce';
import type { SeriesApi } from '../protocol/series';
import type { StartCalibrator, StartThread } from './crew';

/** The threads behind the page. */
export interface Workforce {
  readonly film: Remote<FilmApi>;
  readonly reduce: Remote<ReduceApi>;
  readonly startCalibrator: StartCalibrator;
  readonly startModeller: StartThread<LaunchApi>;
  readonly startRegistrar: StartThread<SeriesApi>;
  readonly startPlanner: StartThread<PlanApi>;
  dispose(): void;
}

/** Decoding and reducing take one thread each; more than this many measurers gain nothing on a clip. */
const MOST_MEASURERS = 6;

/**
 * Starts the workers and connects them, so that frames go from film to measurers without passing the page.
 * `onFault` hears of a worker that died; the workforce must then be disposed of and started anew.
 */
export async function startWorkforce(onFault: (message: string) => void): Promise<Workforce> {
  carryReasons();
  const filmWorker = new Worker(new URL('../../workers/film.worker.ts', import.meta.url), {
    type: 'module',
  });
  const reduceWorker = new Worker(new URL('../../workers/reduce.worker.ts', import.meta.url), {
    type: 'module',
  });
  const measurerCount = Math.min(Math.max(1, navigator.hardwareConcurrency - 1), MOST_MEASURERS);
  const measureWorkers = Array.from(
    { length: measurerCount },
    () =>
      new Worker(new URL('../../workers/measure.worker.ts', import.meta.url), { type: 'module' }),
  );
  const all = [filmWorker, reduceWorker, ...measureWorkers];
  for (const worker of all) tellFaults(worker, onFault);
  const film = wrap<FilmApi>(filmWorker);
  const reduce = wrap<ReduceApi>(reduceWorker);
  const filmPort = await portTo((port) => film.attach(port));
  const measurePorts = await Promise.all(
    measureWorkers.map((worker) => portTo((port) => wrap<MeasureApi>(worker).attach(port))),
  );
  await reduce.connect(transfer(filmPort, [filmPort]), transfer(measurePorts, measurePorts));
  return {
    film,
    reduce,
    startCalibrator,
    startModeller,
    startRegistrar,
    startPlanner,
    dispose: () => {
      for (const worker of all) worker.terminate();
    },
  };
}

const startCalibrator: StartCalibrator = (onFault) => {
  const worker = new Worker(new URL('../../workers/calibrate.worker.ts', import.meta.url), {
    type: 'module',
  });
  tellFaults(worker, onFault);
  const remote = wrap<CalibrateApi>(worker);
  return {
    lineTime: (files, question, onShare) => remote.lineTime(files, question, proxy(onShare)),
    lensFromBoards: (files, size, onShare) => remote.lensFromBoards(files, size, proxy(onShare)),
    lensFromEdges: (frame, edges) => remote.lensFromEdges(frame, edges),
    dispose: () => worker.terminate(),
  };
};

const startModeller: StartThread<LaunchApi> = (onFault) => {
  const worker = new Worker(new URL('../../workers/launch.worker.ts', import.meta.url), {
    type: 'module',
  });
  tellFaults(worker, onFault);
  const remote = wrap<LaunchApi>(worker);
  return {
    compare: (question, onPart, onShare) => remote.compare(question, proxy(onPart), proxy(onShare)),
    curve: (question, onShare) => remote.curve(question, proxy(onShare)),
    fit: (question, onShare) => remote.fit(question, proxy(onShare)),
    dispose: () => worker.terminate(),
  };
};

const startRegistrar: StartThread<SeriesApi> = (onFault) => {
  const worker = new Worker(new URL('../../workers/series.worker.ts', import.meta.url), {
    type: 'module',
  });
  tellFaults(worker, onFault);
  const remote = wrap<SeriesApi>(worker);
  return {
    read: (files, onShare) => remote.read(files, proxy(onShare)),
    summarise: (groups, coverage) => remote.summarise(groups, coverage),
    dispose: () => worker.terminate(),
  };
};

const startPlanner: StartThread<PlanApi> = (onFault) => {
  const worker = new Worker(new URL('../../workers/plan.worker.ts', import.meta.url), {
    type: 'module',
  });
  tellFaults(worker, onFault);
  const remote = wrap<PlanApi>(worker);
  return {
    judge: (plan) => remote.judge(plan),
    sweep: (question, onShare) => remote.sweep(question, proxy(onShare)),
    speed: (question, onShare) => remote.speed(question, proxy(onShare)),
    dispose: () => worker.terminate(),
  };
};

function tellFaults(worker: Worker, onFault: (message: string) => void): void {
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    onFault(event.message || 'A background thread stopped.');
  });
}

/** A port whose other end a worker serves. */
async function portTo(attach: (port: MessagePort) => Promise<void>): Promise<MessagePort> {
  const { port1, port2 } = new MessageChannel();
  await attach(transfer(port2, [port2]));
  return port1;
}
