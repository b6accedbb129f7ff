import { batch, computed, signal } from '@preact/signals';
import type { GreyFrame } from '../core/frame';
import type { FrameStock } from './frameStock';

/** Film frames shown a second while playing: as slow as is wanted, at most what a screen shows. */
export const PLAY_RATE = { least: 0.1, most: 60, first: 10 } as const;

/** Frames first to last, both played. */
export interface PlaySpan {
  readonly first: number;
  readonly last: number;
}

/**
 * Which frame is asked for, which is on screen, and playing. Errors go to `onError`. `passage` tells the frames that
 * are played again and again where playing repeats; null: all of them.
 */
export function createPlayer(
  stock: FrameStock,
  onError: (error: unknown) => void,
  passage: (frameCount: number) => PlaySpan | null = () => null,
) {
  const frameCount = signal(0);
  /** The frame asked for; the image follows as soon as it is decoded. */
  const current = signal(0);
  const shown = signal<GreyFrame | null>(null);
  const playing = signal(false);
  /** Frames a second. */
  const rate = signal<number>(PLAY_RATE.first);
  /** Whether playing begins anew at its end. */
  const repeats = signal(false);
  let timer: ReturnType<typeof setTimeout> | null = null;
  let request = 0;
  let shownRequest = 0;

  const last = () => Math.max(0, frameCount.value - 1);
  const clamp = (frame: number) => Math.min(Math.max(Math.round(frame), 0), last());

  const load = async (frame: number) => {
    const mine = ++request;
    try {
      const grey = await stock.get(frame);
      // Frames that come while others are asked for are shown on the way, but never an older one after a newer.
      if (grey === null || mine <= shownRequest) return;
      shownRequest = mine;
      shown.value = grey;
    } catch (error) {
      if (mine === request) {
        pause();
        onError(error);
      }
    }
  };
  const show = (frame: number) => {
    if (frameCount.value === 0) return Promise.resolve();
    current.value = clamp(frame);
    return load(current.value);
  };
  const pause = () => {
    playing.value = false;
    if (timer !== null) clearTimeout(timer);
    timer = null;
  };
  const span = (): PlaySpan =>
    (repeats.value ? passage(frameCount.value) : null) ?? { first: 0, last: last() };

  /** `due`: when the frame now shown was to be, ms. */
  const tick = async (due: number) => {
    const mine = timer;
    const { first, last: end } = span();
    if (current.value >= end && !repeats.value) return pause();
    await show(current.value >= end || current.value < first ? first : current.value + 1);
    // Paused meanwhile, or given another rate.
    if (!playing.value || timer !== mine) return;
    const now = performance.now();
    // What a slow frame cost is made up by the next, unless it was more than that.
    const next = Math.max(due + 1000 / rate.value, now);
    timer = setTimeout(() => void tick(next), next - now);
  };
  const wait = () => {
    timer = setTimeout(() => void tick(performance.now()), 1000 / rate.value);
  };
  return {
    frameCount,
    current,
    shown,
    playing,
    rate: computed(() => rate.value),
    repeats,
    /** From now on, also while playing. Held within `PLAY_RATE`. */
    setRate(frames: number) {
      rate.value = Math.min(Math.max(frames, PLAY_RATE.least), PLAY_RATE.most);
      if (timer === null) return;
      clearTimeout(timer);
      wait();
    },
    show,
    step: (frames: number) => {
      pause();
      return show(current.value + frames);
    },
    pause,
    play() {
      if (frameCount.value < 2 || playing.value) return;
      playing.value = true;
      const { first, last: end } = span();
      if (current.value >= end) void show(first);
      wait();
    },
    /** Starts on other footage, or on none. */
    reset(frames: number, first = 0) {
      pause();
      request += 1;
      shownRequest = request;
      stock.reset(frames);
      batch(() => {
        frameCount.value = frames;
        current.value = 0;
        shown.value = null;
      });
      return show(first);
    },
    /** Decodes everything anew, in threads that were started anew. */
    refresh() {
      stock.reset(frameCount.value);
      return show(current.value);
    },
  };
}
