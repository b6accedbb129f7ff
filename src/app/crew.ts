import { ExitframeError } from '../core/reason';
import type { CalibrateApi } from '../protocol/calibrate';
import type { FilmApi } from '../protocol/film';
import type { LaunchApi } from '../protocol/launch';
import type { PlanApi } from '../protocol/plan';
import type { ReduceApi } from '../protocol/reduce';
import type { SceneryApi } from '../protocol/scenery';
import type { SeriesApi } from '../protocol/series';

/** A thread started for one piece of work; what is left of it goes with `dispose`. */
export type Thread<Api> = Api & { dispose(): void };

/** `onFault` hears of a thread that died, whose answer will not come. */
export type StartThread<Api> = (onFault: (message: string) => void) => Thread<Api>;

/** Threads that open and measure films beside the one on the screen; started for a queue, ended after it. */
export interface Bench {
  readonly film: Pick<FilmApi, 'open' | 'timestamps' | 'sha256' | 'audio'>;
  readonly reduce: Pick<ReduceApi, 'reduce' | 'cancel'>;
  dispose(): void;
}

/** `onFault` hears of a thread that died: the bench is then of no more use. */
export type StartBench = (onFault: (message: string) => void) => Promise<Bench>;

export type Calibrator = Thread<CalibrateApi>;
export type StartCalibrator = StartThread<CalibrateApi>;

/** What is asked of a thread that makes pictures of the whole film; it is connected to the film already. */
export type Scenery = Omit<SceneryApi, 'connect' | 'stop'>;

/** What the page asks of the background threads. */
export interface Crew {
  readonly film: Pick<
    FilmApi,
    | 'open'
    | 'preview'
    | 'timestamps'
    | 'frame'
    | 'sha256'
    | 'audio'
    | 'startRun'
    | 'next'
    | 'endRun'
  >;
  readonly reduce: Pick<ReduceApi, 'reduce' | 'refit' | 'inspect' | 'cancel'>;
  readonly startCalibrator: StartCalibrator;
  readonly startModeller: StartThread<LaunchApi>;
  readonly startRegistrar: StartThread<SeriesApi>;
  readonly startPlanner: StartThread<PlanApi>;
  readonly startScenery: StartThread<Scenery>;
  readonly startBench: StartBench;
}

interface StartedCrew extends Crew {
  /** Settles when all its threads answer; what is asked before waits in their queues. */
  readonly connected: Promise<void>;
  dispose(): void;
}

/** A crew that can be replaced as a whole where one of its threads died; used as if it were one. */
export interface RenewableCrew extends Crew {
  renew(): Promise<void>;
  dispose(): void;
}

/**
 * `start` brings up the threads and tells `onFault` of one that died. The crew can be asked at once; `started` fails
 * where a thread dies before all answer.
 */
export function renewableCrew(
  start: (onFault: (message: string) => void) => StartedCrew,
  onFault: (message: string) => void,
): { readonly crew: RenewableCrew; readonly started: Promise<void> } {
  const bringUp = () => {
    let isUp = false;
    let refuse: (error: ExitframeError) => void = () => {};
    const dead = new Promise<never>((_, reject) => {
      refuse = reject;
    });
    const crew = start((message) => {
      if (isUp) onFault(message);
      else {
        refuse(
          new ExitframeError(
            'threadsNotStarted',
            `A background thread did not start: ${message}`,
            'Reload the page.',
            { values: { why: message } },
          ),
        );
      }
    });
    const connected = crew.connected.then(() => {
      isUp = true;
    });
    return { crew, started: Promise.race([connected, dead]) };
  };
  const first = bringUp();
  let { crew } = first;
  const renewable: RenewableCrew = {
    get film() {
      return crew.film;
    },
    get reduce() {
      return crew.reduce;
    },
    startCalibrator: (onFault) => crew.startCalibrator(onFault),
    startModeller: (onFault) => crew.startModeller(onFault),
    startRegistrar: (onFault) => crew.startRegistrar(onFault),
    startPlanner: (onFault) => crew.startPlanner(onFault),
    startScenery: (onFault) => crew.startScenery(onFault),
    startBench: (onFault) => crew.startBench(onFault),
    async renew() {
      crew.dispose();
      const next = bringUp();
      crew = next.crew;
      await next.started;
    },
    dispose: () => crew.dispose(),
  };
  return { crew: renewable, started: first.started };
}
