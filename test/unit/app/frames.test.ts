import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createFrameCache } from '../../../src/app/frameCache';
import { frameLevels } from '../../../src/app/frameLevels';
import { greyRange } from '../../../src/app/greyRange';
import { createPlayer } from '../../../src/app/player';
import type { GreyFrame } from '../../../src/core/frame';

const flat = (index: number, grey: number, white = 255): GreyFrame => ({
  index,
  width: 10,
  height: 10,
  data: white > 255 ? new Uint16Array(100).fill(grey) : new Uint8Array(100).fill(grey),
  white,
});

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
    const made = createPlayer(createFrameCache(load, 1e6), (error) => errors.push(error));
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

  it('shows only the frame asked for last', async () => {
    const waiting = new Map<number, (frame: GreyFrame) => void>();
    const { reset, show, shown } = player((i) => new Promise((resolve) => waiting.set(i, resolve)));
    void reset(9);
    void show(3);
    void show(4);
    waiting.get(4)?.(flat(4, 4));
    await vi.advanceTimersByTimeAsync(0);
    waiting.get(3)?.(flat(3, 3));
    await vi.advanceTimersByTimeAsync(0);
    expect(shown.value?.index).toBe(4);
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
