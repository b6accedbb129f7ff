import { batch, computed, signal } from '@preact/signals';
import { proxy } from 'comlink';
import type { GreyFrame } from '../core/frame';
import { type Reason, reasonOf } from '../core/reason';
import type { ReduceApi } from '../protocol/reduce';
import type { Reduction, ReductionEvent, ReductionInputs, Stage } from '../reduction/types';
import type { Position } from '../shot/result';
import type { Shot } from '../shot/schema';
import { KeptRows } from './streakRows';
import { createVelocityMemory } from './velocityChange';

export type MeasuringStatus =
  | { readonly kind: 'idle' }
  | {
      readonly kind: 'running';
      /** `identify`: of the film's bytes. */
      readonly stage: Stage | 'starting' | 'identify';
      readonly done: number;
      readonly total: number;
    }
  | { readonly kind: 'done' }
  | { readonly kind: 'failed'; readonly reason: Reason };

/** How a result stands to the inputs as they are now. */
export type Freshness = 'fresh' | 'refitting' | 'measureAgain';

export interface LiveStreak {
  readonly line: Extract<ReductionEvent, { kind: 'streakLine' }>['line'] | null;
  /** Filled further as rows come; `version` grows with every change. */
  readonly rows: ReadonlyMap<number, Float32Array>;
  readonly version: number;
}

/** What was measured, to be kept while the window is away. */
export interface KeptMeasurement {
  readonly shot: Shot;
  readonly reduction: Reduction;
  readonly streak: Pick<LiveStreak, 'line' | 'rows'>;
}

/** A centre to draw: one of the result's positions, or one that has only just been measured. */
export type DrawnPosition = Pick<
  Position,
  'frame' | 'x' | 'y' | 'ux' | 'uy' | 'cov' | 'used' | 'manual'
>;
const AS_IT_CAME = { ux: null, uy: null, cov: null, used: true, manual: false } as const;

const NO_STREAK: LiveStreak = { line: null, rows: new KeptRows(), version: 0 };

/** Runs reductions and holds what they tell: streak rows and positions as they come, then the result. */
export function createMeasuring(crew: {
  readonly reduce: Pick<ReduceApi, 'reduce' | 'refit' | 'cancel'>;
}) {
  const status = signal<MeasuringStatus>({ kind: 'idle' });
  const streak = signal<LiveStreak>(NO_STREAK);
  const live = signal<ReadonlyMap<number, DrawnPosition>>(new Map());
  /** Small pictures of the film that measurements came by. */
  const pictures = signal<readonly GreyFrame[]>([]);
  const reduction = signal<Reduction | null>(null);
  const freshness = signal<Freshness>('fresh');
  /** Which pass over the film the result rests on; grows with every new one. */
  const pass = signal(0);
  /** Why the last refit failed, where it did for another reason than needing the film. */
  const refitProblem = signal<Reason | null>(null);
  const velocities = createVelocityMemory();
  /** The shot that the result stands for. */
  let concluded: Shot | null = null;
  /** Its streak image while that of another measurement fills; null: it is the one shown. */
  let setAside: LiveStreak | null = null;
  let turn = 0;
  let stopping: AbortController | null = null;

  const take = (events: readonly ReductionEvent[]) =>
    batch(() => {
      let { line, version } = streak.value;
      let rows = KeptRows.of(streak.value.rows);
      const positions = new Map(live.value);
      const small = new Map(pictures.value.map((picture) => [picture.index, picture]));
      for (const event of events) {
        if (event.kind === 'streakLine') {
          [line, rows, version] = [event.line, new KeptRows(), version + 1];
        } else if (event.kind === 'streakRow') {
          rows.set(event.frame, event.row);
          version += 1;
        } else if (event.kind === 'smallPicture') {
          small.set(event.picture.index, event.picture);
        } else if (event.kind === 'centre') {
          const { frame, x, y } = event;
          positions.set(frame, { frame, x, y, ...AS_IT_CAME });
        } else {
          const { stage, done, total } = event;
          if (status.value.kind === 'running')
            status.value = { kind: 'running', stage, done, total };
        }
      }
      if (version !== streak.value.version) {
        streak.value = { line, rows: rows.bounded(), version };
      }
      live.value = positions;
      if (small.size > pictures.value.length) pictures.value = [...small.values()];
    });
  const conclude = (shot: Shot, outcome: Reduction) =>
    batch(() => {
      concluded = shot;
      velocities.remember(shot, outcome);
      reduction.value = outcome;
      status.value = { kind: 'done' };
      freshness.value = 'fresh';
      refitProblem.value = null;
    });

  /**
   * Measures the film and reduces the shot; what came before is replaced only when this succeeds.
   * `prepare` gathers the inputs, which may itself take a while, and tells how far it has gone through the film's bytes.
   */
  const measure = async (
    prepare: (identified: (done: number, total: number) => void) => Promise<ReductionInputs>,
  ): Promise<void> => {
    const mine = ++turn;
    const stop = new AbortController();
    stopping = stop;
    const before = { live: live.value, status: status.value };
    if (reduction.value !== null) setAside ??= streak.value;
    batch(() => {
      status.value = { kind: 'running', stage: 'starting', done: 0, total: 0 };
      live.value = new Map();
    });
    const onEvents = (events: readonly ReductionEvent[]) => {
      if (mine === turn) take(events);
    };
    try {
      const preparing = prepare((done, total) => {
        if (mine === turn && !stop.signal.aborted)
          status.value = { kind: 'running', stage: 'identify', done, total };
      });
      const inputs = await orAborted(preparing, stop.signal);
      if (mine !== turn) return;
      const outcome = await crew.reduce.reduce(inputs, proxy(onEvents));
      if (mine !== turn) return;
      batch(() => {
        pass.value += 1;
        setAside = null;
        conclude(inputs.shot, outcome);
      });
    } catch (error) {
      if (mine !== turn) return;
      turn += 1; // what it still has to tell comes too late
      const reason = reasonOf(error);
      batch(() => {
        if (reason.code !== 'cancelled') status.value = { kind: 'failed', reason };
        else status.value = before.status.kind === 'running' ? { kind: 'idle' } : before.status;
        // The result before it stands, with what it was read off.
        if (setAside !== null) {
          streak.value = { ...setAside, version: streak.value.version + 1 };
          live.value = before.live;
          setAside = null;
        }
      });
    }
  };

  /** Brings the result up to date after an edit, without the film where that is possible. */
  const refit = async (inputs: ReductionInputs): Promise<void> => {
    if (reduction.value === null || status.value.kind === 'running') return;
    if (JSON.stringify(inputs.shot) === JSON.stringify(concluded)) {
      turn += 1;
      freshness.value = 'fresh';
      refitProblem.value = null;
      return;
    }
    const mine = ++turn;
    freshness.value = 'refitting';
    try {
      const outcome = await crew.reduce.refit(inputs);
      if (mine === turn) conclude(inputs.shot, outcome);
    } catch (error) {
      if (mine !== turn) return;
      const reason = reasonOf(error);
      freshness.value = 'measureAgain';
      refitProblem.value = reason.code === 'pixelsNeeded' ? null : reason;
    }
  };

  return {
    status,
    streak,
    pictures,
    reduction,
    freshness,
    pass,
    /** The exit velocity concluded from such a draft of late; undefined: none was. */
    velocityOf: velocities.of,
    refitProblem,
    /** Positions to draw: those of the result, or those that have come so far. */
    positions: computed<readonly DrawnPosition[]>(() => {
      const running = status.value.kind === 'running';
      return !running && reduction.value !== null
        ? reduction.value.result.positions
        : [...live.value.values()].sort((a, b) => a.frame - b.frame);
    }),
    measure,
    refit,
    /** What there is to keep besides the streak image; null where nothing is measured. */
    kept(): Omit<KeptMeasurement, 'streak'> | null {
      return reduction.value && concluded && { shot: concluded, reduction: reduction.value };
    },
    /** The streak image of what is kept, whole while another one fills. */
    keptStreak: (): KeptMeasurement['streak'] | null =>
      reduction.value && (setAside ?? streak.value),
    /** Takes up what was kept. An edit that needs the film then asks for it to be measured again. */
    resume({ shot, reduction: outcome, streak: { line, rows } }: KeptMeasurement) {
      batch(() => {
        streak.value = { line, rows: KeptRows.of(rows), version: streak.value.version + 1 };
        conclude(shot, outcome);
      });
    },
    /** The inputs cannot be reduced as they are now. */
    markOutdated() {
      turn += status.value.kind === 'running' ? 0 : 1;
      if (reduction.value !== null) freshness.value = 'measureAgain';
    },
    async cancel() {
      if (status.value.kind !== 'running') return;
      // Before the reduction has begun only this stops it.
      stopping?.abort();
      await crew.reduce.cancel();
    },
    /** Forgets everything: other footage was opened. */
    reset() {
      turn += 1;
      concluded = null;
      setAside = null;
      velocities.forget();
      const running = status.value.kind === 'running';
      batch(() => {
        status.value = { kind: 'idle' };
        streak.value = { ...NO_STREAK, rows: new KeptRows(), version: streak.value.version + 1 };
        live.value = new Map();
        pictures.value = [];
        reduction.value = null;
        freshness.value = 'fresh';
        refitProblem.value = null;
      });
      if (running) void crew.reduce.cancel();
    },
  };
}

/** What the work gives, unless the signal comes first; the work itself may go on unheard. */
function orAborted<T>(work: Promise<T>, signal: AbortSignal): Promise<T> {
  return new Promise((resolve, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason), { once: true });
    work.then(resolve, reject);
  });
}
