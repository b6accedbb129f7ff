import type { FrameRange } from '../core/film';
import type { GreyFrame } from '../core/frame';
import { ExitframeError } from '../core/reason';
import type { FilmApi } from '../protocol/film';

/** Frames around the one on screen, decoded before they are asked for. */
export interface FrameStock {
  /**
   * The frame, decoded next unless it is here. Null: another was asked for meanwhile and this one not come by.
   * Rejects where it cannot be decoded.
   */
  get(index: number): Promise<GreyFrame | null>;
  /** Forgets everything, for a film of so many frames. */
  reset(frameCount: number): void;
}

/**
 * Frames decoded in one go: few for one that is waited for, so that it comes soon and the next jump waits for
 * little; more and more for those ahead, since each run decodes again from the key frame before it.
 */
const SHORTEST_RUN = 8;
const LONGEST_RUN = 64;
/** Of what is kept, so much lies on the side the film is moved towards. */
const SHARE_AHEAD = 0.75;

/** What is kept at most: whichever is reached first. */
export interface StockLimits {
  readonly bytes: number;
  readonly frames: number;
}

interface Waiting {
  readonly frame: Promise<GreyFrame | null>;
  settle(frame: GreyFrame | null): void;
  fail(error: unknown): void;
}

export function createFrameStock(
  film: Pick<FilmApi, 'startRun' | 'next' | 'endRun'>,
  most: StockLimits,
): FrameStock {
  const kept = new Map<number, GreyFrame>();
  const waiting = new Map<number, Waiting>();
  /** Frames of a run that broke off: decoded one by one and only when asked for, so that the others still show. */
  const suspect = new Set<number>();
  let frameCount = 0;
  let generation = 0;
  /** The frame asked for last, and the way the film was moved to it. */
  let focus = 0;
  let way: 1 | -1 = 1;
  /** Frames that fit; known from the first that came. */
  let capacity = SHORTEST_RUN;
  let filling = false;

  const ahead = () => Math.ceil(SHARE_AHEAD * capacity);
  /** How far a frame lies from the focus, those behind counted as farther in proportion. */
  const distance = (index: number) => {
    const steps = (index - focus) * way;
    return steps >= 0 ? steps : (-steps * SHARE_AHEAD) / (1 - SHARE_AHEAD);
  };
  const settle = (index: number, frame: GreyFrame | null) => {
    waiting.get(index)?.settle(frame);
    waiting.delete(index);
  };
  const keep = (frame: GreyFrame) => {
    const fit = Math.floor(most.bytes / Math.max(1, frame.data.byteLength));
    capacity = Math.max(1, Math.min(fit, most.frames));
    kept.set(frame.index, frame);
    while (kept.size > capacity) {
      let farthest = frame.index;
      for (const index of kept.keys()) if (distance(index) > distance(farthest)) farthest = index;
      kept.delete(farthest);
    }
    settle(frame.index, frame);
  };
  /** Whether a frame, `step` from the focus the way the film is moved, is worth decoding ahead. */
  const isOpen = (step: number) => {
    const index = focus + step * way;
    const within = step < ahead() && -step <= capacity - ahead();
    const exists = index >= 0 && index < frameCount;
    return within && exists && !kept.has(index) && !suspect.has(index);
  };
  /** The nearest frame still to be decoded: the one waited for, those ahead, then those behind. */
  const missing = (): number | null => {
    if (waiting.has(focus)) return focus;
    for (const [side, steps] of [
      [1, ahead() - 1],
      [-1, capacity - ahead()],
    ] as const) {
      for (let n = 1; n <= steps; n++) if (isOpen(side * n)) return focus + side * n * way;
    }
    return null;
  };
  /** From a missing frame on, away from the focus, up to the next that is here. */
  const rangeFrom = (index: number, most: number): FrameRange => {
    const from = (index - focus) * way;
    const side = from < 0 ? -1 : 1;
    let last = index;
    if (!suspect.has(index)) {
      for (let n = 1; n < most && isOpen(from + side * n); n++) last = index + side * n * way;
    }
    return { start: Math.min(index, last), end: Math.max(index, last) + 1 };
  };

  /** Decodes a range; gives up where a frame outside what is left of it is waited for. */
  const decode = async ({ start, end }: FrameRange, mine: number): Promise<void> => {
    let run: number | null = null;
    let next = start;
    try {
      run = await film.startRun({ start, end });
      while (next < end) {
        const frames = await film.next(run);
        if (mine !== generation) return;
        if (frames.length === 0) {
          throw new ExitframeError('noFrame', `The film has no frame ${next}.`, undefined, {
            values: { frame: next },
          });
        }
        for (const frame of frames) keep(frame);
        next += frames.length;
        if (waiting.has(focus) && (focus < next || focus >= end)) return;
      }
    } catch (error) {
      if (mine !== generation) return;
      if (end - start === 1) {
        waiting.get(start)?.fail(error);
        waiting.delete(start);
      }
      for (let index = next; index < end; index++) suspect.add(index);
    } finally {
      if (run !== null) await film.endRun(run);
    }
  };

  const fill = async () => {
    if (filling) return;
    filling = true;
    const mine = generation;
    let length = SHORTEST_RUN;
    for (let index = missing(); index !== null; index = missing()) {
      length = waiting.has(index) ? SHORTEST_RUN : Math.min(2 * length, LONGEST_RUN);
      const range = rangeFrom(index, length);
      for (const other of [...waiting.keys()]) {
        if (other < range.start || other >= range.end) settle(other, null);
      }
      await decode(range, mine);
      if (mine !== generation) return;
    }
    for (const index of [...waiting.keys()]) settle(index, null);
    filling = false;
  };

  return {
    get(index) {
      if (index !== focus) way = index > focus ? 1 : -1;
      focus = index;
      const here = kept.get(index);
      const coming = waiting.get(index)?.frame;
      if (here !== undefined || coming !== undefined) {
        void fill();
        return coming ?? Promise.resolve(here ?? null);
      }
      const { promise, resolve, reject } = withResolvers<GreyFrame | null>();
      waiting.set(index, { frame: promise, settle: resolve, fail: reject });
      void fill();
      return promise;
    },
    reset(frames) {
      generation += 1;
      for (const index of [...waiting.keys()]) settle(index, null);
      kept.clear();
      suspect.clear();
      frameCount = frames;
      focus = 0;
      way = 1;
      capacity = SHORTEST_RUN;
      filling = false;
    },
  };
}

function withResolvers<T>() {
  let resolve: (value: T) => void = () => {};
  let reject: (error: unknown) => void = () => {};
  const promise = new Promise<T>((give, fail) => {
    resolve = give;
    reject = fail;
  });
  return { promise, resolve, reject };
}
