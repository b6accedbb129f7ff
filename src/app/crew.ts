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
  dispose(): void;
}

/** A crew that can be replaced as a whole where one of its threads died; used as if it were one. */
export interface RenewableCrew extends Crew {
  renew(): Promise<void>;
  dispose(): void;
}

/**
 * `start` brings up the threads and tells `onFault` of one that died. One that dies while they start makes the
 * start fail, so that nobody waits for its answer.
 */
export async function renewableCrew(
  start: (onFault: (message: string) => void) => Promise<StartedCrew>,
  onFault: (message: string) => void,
): Promise<RenewableCrew> {
  const bringUp = () =>
    new Promise<StartedCrew>((resolve, reject) => {
      let started = false;
      start((message) => {
        if (started) onFault(message);
        else {
          reject(
            new ExitframeError(
              'threadsNotStarted',
              `A background thread did not start: ${message}`,
              'Reload the page.',
            ),
          );
        }
      }).then((crew) => {
        started = true;
        resolve(crew);
      }, reject);
    });
  let crew = await bringUp();
  return {
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
      crew = await bringUp();
    },
    dispose: () => crew.dispose(),
  };
}
