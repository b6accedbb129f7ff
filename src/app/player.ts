import { batch, signal } from '@preact/signals';
import type { GreyFrame } from '../core/frame';
import type { FrameCache } from './frameCache';

/** Film frames shown a second while playing; slow, because every frame counts. */
export const PLAY_RATES = [2, 5, 10, 25, 50] as const;

/** Frames decoded ahead while playing. */
const AHEAD = 4;

/** Which frame is asked for, which is on screen, and playing. Errors go to `onError`. */
export function createPlayer(cache: FrameCache, onError: (error: unknown) => void) {
  const frameCount = signal(0);
  /** The frame asked for; the image follows as soon as it is decoded. */
  const current = signal(0);
  const shown = signal<GreyFrame | null>(null);
  const playing = signal(false);
  const rate = signal<number>(10);
  let timer: ReturnType<typeof setTimeout> | null = null;
  let request = 0;

  const clamp = (frame: number) =>
    Math.min(Math.max(Math.round(frame), 0), Math.max(0, frameCount.value - 1));

  const load = async (frame: number) => {
    const mine = ++request;
    try {
      const grey = cache.peek(frame) ?? (await cache.get(frame));
      // While playing or scrubbing an older frame may arrive late: only the last asked for is shown.
      if (mine === request) shown.value = grey;
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
  const tick = async () => {
    const started = performance.now();
    const next = current.value + 1;
    if (next >= frameCount.value) return pause();
    await show(next);
    if (!playing.value) return;
    for (let ahead = 1; ahead <= AHEAD && next + ahead < frameCount.value; ahead++) {
      cache.get(next + ahead).catch(() => {}); // asked for again, and reported, when it is shown
    }
    const wait = 1000 / rate.value - (performance.now() - started);
    timer = setTimeout(tick, Math.max(0, wait));
  };
  return {
    frameCount,
    current,
    shown,
    playing,
    rate,
    show,
    step: (frames: number) => {
      pause();
      return show(current.value + frames);
    },
    pause,
    play() {
      if (frameCount.value < 2 || playing.value) return;
      if (current.value >= frameCount.value - 1) current.value = 0;
      playing.value = true;
      void tick();
    },
    /** Starts on other footage, or on none. */
    reset(frames: number, first = 0) {
      pause();
      request += 1;
      cache.clear();
      batch(() => {
        frameCount.value = frames;
        current.value = 0;
        shown.value = null;
      });
      return show(first);
    },
  };
}
