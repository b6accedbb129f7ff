import type { CalibrateApi } from '../protocol/calibrate';
import type { FilmApi } from '../protocol/film';
import type { LaunchApi } from '../protocol/launch';
import type { PlanApi } from '../protocol/plan';
import type { ReduceApi } from '../protocol/reduce';
import type { SceneryApi } from '../protocol/scenery';
import type { SeriesApi } from '../protocol/series';
import { ENDED_SILENTLY, stoppedBy, type ThreadFault } from '../protocol/threadFault';
import { createLifeline } from './lifeline';

/** A thread started for one piece of work; what is left of it goes with `dispose`. */
export type Thread<Api> = Api & { dispose(): void };

/** Hears of a thread that died. */
export type OnFault = (fault: ThreadFault) => void;

/** `onFault` hears of a thread that died, whose answer will not come. */
export type StartThread<Api> = (onFault: OnFault) => Thread<Api>;

/** Threads that open and measure films beside the one on the screen; started for a queue, ended after it. */
export interface Bench {
  readonly film: Pick<FilmApi, 'open' | 'timestamps' | 'sha256' | 'audio'>;
  readonly reduce: Pick<ReduceApi, 'reduce' | 'cancel'>;
  dispose(): void;
}

/** `onFault` hears of a thread that died: the bench is then of no more use, and never comes where it was not up. */
export type StartBench = (onFault: OnFault) => Promise<Bench>;

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
    | 'close'
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

/**
 * A crew that can be replaced as a whole where one of its threads died; used as if it were one. What is asked of film
 * and measurers fails with `threadDied` where they are dead.
 */
export interface RenewableCrew extends Crew {
  /** How often it was replaced. */
  generation(): number;
  /** Settles when its threads answer; brings them up anew where one has died. Rejects where they do not come up. */
  ready(): Promise<void>;
  /** Has them replaced: they live, but can do their work no more. */
  retire(): void;
  dispose(): void;
}

/**
 * `start` brings up the threads and tells `onFault` of one that died. The crew can be asked at once; `started` fails
 * where a thread dies before all answer.
 */
export function renewableCrew(
  start: (onFault: OnFault) => StartedCrew,
  onFault: OnFault,
): { readonly crew: RenewableCrew; readonly started: Promise<void> } {
  const bringUp = () => {
    const lifeline = createLifeline();
    let isUp = false;
    const threads = start((fault) => {
      if (lifeline.isDead()) return;
      lifeline.cut(isUp ? threadDied(fault) : notStarted(fault));
      if (isUp) onFault(fault);
    });
    const { connected } = lifeline.holds({ connected: () => threads.connected });
    const up = connected().then(() => {
      isUp = true;
    });
    up.catch(() => {}); // told to whoever waits for it; nobody may
    return {
      ...{ threads, lifeline, up },
      film: lifeline.holds(threads.film),
      reduce: lifeline.holds(threads.reduce),
    };
  };
  let generation = 0;
  let crew = bringUp();
  const started = crew.up;
  const renewable: RenewableCrew = {
    get film() {
      return crew.film;
    },
    get reduce() {
      return crew.reduce;
    },
    startCalibrator: (tell) => crew.threads.startCalibrator(tell),
    startModeller: (tell) => crew.threads.startModeller(tell),
    startRegistrar: (tell) => crew.threads.startRegistrar(tell),
    startPlanner: (tell) => crew.threads.startPlanner(tell),
    startScenery: (tell) => crew.threads.startScenery(tell),
    startBench: (tell) => crew.threads.startBench(tell),
    generation: () => generation,
    ready() {
      if (crew.lifeline.isDead()) {
        crew.threads.dispose();
        crew = bringUp();
        generation += 1;
      }
      return crew.up;
    },
    retire: () => crew.lifeline.cut(threadDied(ENDED_SILENTLY)),
    dispose: () => crew.threads.dispose(),
  };
  return { crew: renewable, started };
}

/** Why what was asked of a thread is refused once it is dead. */
export const threadDied = (fault: ThreadFault) =>
  stoppedBy(
    'threadDied',
    'A background thread stopped.',
    fault,
    'Inputs and result are kept, and it is started again: measure again. If it stops each time, close other tabs and programs, or reload the page.',
  );

const notStarted = (fault: ThreadFault) =>
  stoppedBy(
    'threadsNotStarted',
    'A background thread did not start.',
    fault,
    'Inputs and result are kept: try again, or reload the page.',
  );
