import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { frameLevels } from '../../../src/app/frameLevels';
import { createFrameStock } from '../../../src/app/frameStock';
import { greyRange } from '../../../src/app/greyRange';
import { createPlayer } from '../../../src/app/player';
import type { GreyFrame } from '../../../src/core/frame';
import { flat, runsOf } from '../../fixtures/frameRuns';

describe('the greys of a frame', () => {
  it('are stretched to where nearly all pixels lie, also in 16 bit', () => {
    const frame = flat(0, 20_000, 65_535);
    frame.data.fill(30_000, 50);
    const { low, high } = greyRange(frame);
    expect(low).toBeCloseTo(20_000, -2);
    expect(high).toBeCloseTo(30_000, -2);
  });

  it('stay as they are where there is only one', () => {
    expect(greyRange(flat(0, 7))).toEqual({ low: 0, high: 255 });
  });
});

describe('the level of each frame', () => {
  it('is its mean, in the order of the film, and the run is ended', async () => {
    const batches = [[flat(0, 10), flat(1, 20)], [flat(2, 30)], []];
    const ended: number[] = [];
    const film = {
      startRun: async () => 5,
      next: async () => batches.shift() ?? [],
      endRun: async (run: number) => {
        ended.push(run);
      },
    };
    expect([...(await frameLevels(film, 3, () => {}))]).toEqual([10, 20, 30]);
    expect(ended).toEqual([5]);
  });
});

describe('the player', () => {
  beforeEach(() => vi.useFakeTimers());
  afterEach(() => vi.useRealTimers());

  const player = (load: (i: number) => Promise<GreyFrame> = async (i) => flat(i, i)) => {
    const errors: unknown[] = [];
    const made = createPlayer(
      createFrameStock(runsOf(load), { bytes: 1e6, frames: 1000 }),
      (error) => errors.push(error),
      () => ({ first: 1, last: 2 }),
    );
    return { ...made, errors };
  };

  it('keeps to the film', async () => {
    const { reset, show, step, current } = player();
    await reset(5);
    await show(99);
    expect(current.value).toBe(4);
    await step(-99);
    expect(current.value).toBe(0);
  });

  it('plays to the end and stops there', async () => {
    const { reset, play, playing, current, shown } = player();
    await reset(4);
    play();
    await vi.advanceTimersByTimeAsync(1000);
    expect(playing.value).toBe(false);
    expect(current.value).toBe(3);
    expect(shown.value?.index).toBe(3);
  });

  it('never shows an older frame after a newer one', async () => {
    const waiting = new Map<number, (frame: GreyFrame) => void>();
    const { reset, show, shown } = player((i) => new Promise((resolve) => waiting.set(i, resolve)));
    const give = async (...indices: number[]) => {
      await vi.advanceTimersByTimeAsync(0);
      for (const i of indices) waiting.get(i)?.(flat(i, i));
      await vi.advanceTimersByTimeAsync(0);
    };
    void reset(8);
    await give(0, 1, 2, 3);
    void show(7);
    void show(4);
    await give(4, 5, 6, 7);
    expect(shown.value?.index).toBe(4);
  });

  it('plays as slowly as asked, also where that changes while it waits', async () => {
    const { reset, play, setRate, rate, current, shown } = player();
    await reset(100);
    setRate(0.5);
    play();
    await vi.advanceTimersByTimeAsync(1900);
    expect(current.value).toBe(0);
    await vi.advanceTimersByTimeAsync(200);
    expect(shown.value?.index).toBe(1);
    setRate(50);
    await vi.advanceTimersByTimeAsync(1000);
    expect(current.value).toBeGreaterThanOrEqual(50);
    expect(current.value).toBeLessThanOrEqual(51);
    setRate(1e9);
    expect(rate.value).toBe(60);
  });

  it('goes through the passage again and again where it repeats', async () => {
    const { reset, play, pause, repeats, current } = player();
    await reset(6);
    repeats.value = true;
    const seen: number[] = [];
    const stop = current.subscribe((frame) => seen.push(frame));
    play();
    await vi.advanceTimersByTimeAsync(550);
    pause();
    stop();
    expect(seen).toEqual([0, 1, 2, 1, 2, 1]);
  });

  it('stops and tells where a frame cannot be decoded', async () => {
    const { reset, play, playing, errors } = player(async (i) => {
      if (i === 2) throw new Error('broken');
      return flat(i, i);
    });
    await reset(5);
    play();
    await vi.advanceTimersByTimeAsync(1000);
    expect(playing.value).toBe(false);
    expect(errors).toHaveLength(1);
  });
});
