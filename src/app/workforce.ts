import { proxy, type Remote, transfer, wrap } from 'comlink';
import type { CalibrateApi } from '../protocol/calibrate';
import { carryReasons } from '../protocol/errors';
import type { FilmApi } from '../protocol/film';
import type { LaunchApi } from '../protocol/launch';
import { watch } from '../protocol/life';
import type { MeasureApi } from '../protocol/measure';
import type { PlanApi } from '../protocol/plan';
import type { ReduceApi } from '../protocol/reduce';
import type { SceneryApi } from '../protocol/scenery';
import type { SeriesApi } from '../protocol/series';
import type { OnFault, Scenery, StartBench, StartCalibrator, StartThread } from './crew';

/** The threads that read and measure a film. */
interface Measurers {
  readonly film: Remote<FilmApi>;
  readonly reduce: Remote<ReduceApi>;
  /** Settles when all of them answer. */
  readonly connected: Promise<void>;
  dispose(): void;
}

/** The threads behind the page. */
export interface Workforce extends Measurers {
  readonly startCalibrator: StartCalibrator;
  readonly startModeller: StartThread<LaunchApi>;
  readonly startRegistrar: StartThread<SeriesApi>;
  readonly startPlanner: StartThread<PlanApi>;
  readonly startScenery: StartThread<Scenery>;
  readonly startBench: StartBench;
}

/** As many as there are cores: decoding stands still while centres are measured. More than this many gain nothing. */
const MOST_MEASURERS = 6;

/** Starts the workers. `onFault` hears of one that died; the workforce must then be disposed of and started anew. */
export function startWorkforce(onFault: OnFault): Workforce {
  carryReasons();
  const measurers = startMeasurers(onFault);
  return {
    ...measurers,
    ...{ startCalibrator, startModeller, startRegistrar, startPlanner, startBench },
    startScenery: sceneryOf(measurers.film),
  };
}

/**
 * Connects the workers, so that frames go from film to measurers without passing the page. What is asked of them before
 * they are fetched waits in their queues.
 */
function startMeasurers(onFault: OnFault): Measurers {
  const filmWorker = new Worker(new URL('../../workers/film.worker.ts', import.meta.url), {
    type: 'module',
  });
  const reduceWorker = new Worker(new URL('../../workers/reduce.worker.ts', import.meta.url), {
    type: 'module',
  });
  const measurerCount = Math.min(navigator.hardwareConcurrency, MOST_MEASURERS);
  const measureWorkers = Array.from(
    { length: measurerCount },
    () =>
      new Worker(new URL('../../workers/measure.worker.ts', import.meta.url), { type: 'module' }),
  );
  const all = [filmWorker, reduceWorker, ...measureWorkers];
  const ends = all.map((worker) => watch(worker, onFault));
  const film = wrap<FilmApi>(filmWorker);
  const reduce = wrap<ReduceApi>(reduceWorker);
  const toFilm = portTo((port) => film.attach(port));
  const toMeasurers = measureWorkers.map((worker) =>
    portTo((port) => wrap<MeasureApi>(worker).attach(port)),
  );
  const ports = toMeasurers.map(({ port }) => port);
  const joined = reduce.connect(transfer(toFilm.port, [toFilm.port]), transfer(ports, ports));
  const attached = [toFilm, ...toMeasurers].map((one) => one.attached);
  return {
    ...{ film, reduce },
    connected: Promise.all([...attached, joined]).then(() => {}),
    dispose: () => {
      for (const end of ends) end();
    },
  };
}

const startBench: StartBench = async (onFault) => {
  let isUp = false;
  const { film, reduce, connected, dispose } = startMeasurers((fault) => {
    if (!isUp) dispose(); // nobody has it yet
    onFault(fault);
  });
  await connected;
  isUp = true;
  return {
    film: {
      open: (files, reading) => film.open(files, reading),
      timestamps: () => film.timestamps(),
      audio: () => film.audio(),
      sha256: () => film.sha256(),
    },
    reduce: {
      reduce: (inputs, onEvents) => reduce.reduce(inputs, proxy(onEvents)),
      cancel: () => reduce.cancel(),
    },
    dispose,
  };
};

const startCalibrator: StartCalibrator = (onFault) => {
  const worker = new Worker(new URL('../../workers/calibrate.worker.ts', import.meta.url), {
    type: 'module',
  });
  const end = watch(worker, onFault);
  const remote = wrap<CalibrateApi>(worker);
  return {
    lineTime: (files, question, onShare) => remote.lineTime(files, question, proxy(onShare)),
    lensFromBoards: (files, size, onShare) => remote.lensFromBoards(files, size, proxy(onShare)),
    lensFromEdges: (frame, edges) => remote.lensFromEdges(frame, edges),
    dispose: end,
  };
};

const startModeller: StartThread<LaunchApi> = (onFault) => {
  const worker = new Worker(new URL('../../workers/launch.worker.ts', import.meta.url), {
    type: 'module',
  });
  const end = watch(worker, onFault);
  const remote = wrap<LaunchApi>(worker);
  return {
    compare: (question, onPart, onShare) => remote.compare(question, proxy(onPart), proxy(onShare)),
    curve: (question, onShare) => remote.curve(question, proxy(onShare)),
    fit: (question, onShare) => remote.fit(question, proxy(onShare)),
    dispose: end,
  };
};

const startRegistrar: StartThread<SeriesApi> = (onFault) => {
  const worker = new Worker(new URL('../../workers/series.worker.ts', import.meta.url), {
    type: 'module',
  });
  const end = watch(worker, onFault);
  const remote = wrap<SeriesApi>(worker);
  return {
    read: (files, onShare) => remote.read(files, proxy(onShare)),
    summarise: (groups, coverage) => remote.summarise(groups, coverage),
    dispose: end,
  };
};

const startPlanner: StartThread<PlanApi> = (onFault) => {
  const worker = new Worker(new URL('../../workers/plan.worker.ts', import.meta.url), {
    type: 'module',
  });
  const end = watch(worker, onFault);
  const remote = wrap<PlanApi>(worker);
  return {
    judge: (plan) => remote.judge(plan),
    sweep: (question, onShare) => remote.sweep(question, proxy(onShare)),
    speed: (question, onShare) => remote.speed(question, proxy(onShare)),
    dispose: end,
  };
};

/** Its frames come from the film worker over a port of its own. */
const sceneryOf =
  (film: Remote<FilmApi>): StartThread<Scenery> =>
  (onFault) => {
    const worker = new Worker(new URL('../../workers/scenery.worker.ts', import.meta.url), {
      type: 'module',
    });
    const end = watch(worker, onFault);
    const remote = wrap<SceneryApi>(worker);
    const { port, attached } = portTo((end) => film.attach(end));
    const connected = Promise.all([attached, remote.connect(transfer(port, [port]))]);
    return {
      async lookThrough(question, onPart) {
        await connected;
        return remote.lookThrough(question, proxy(onPart));
      },
      async stillScene(info, onShare) {
        await connected;
        return remote.stillScene(info, proxy(onShare));
      },
      async flight(question, onShare) {
        await connected;
        return remote.flight(question, proxy(onShare));
      },
      // Ended at once, its pass would stay open in the film worker.
      dispose: () => void remote.stop().finally(end),
    };
  };

/** A port whose other end a worker serves once it has attached it. */
function portTo(attach: (port: MessagePort) => Promise<void>) {
  const { port1, port2 } = new MessageChannel();
  return { port: port1, attached: attach(transfer(port2, [port2])) };
}
