import { describe, expect, it } from 'vitest';
import { createFrameCache } from '../../../src/app/frameCache';
import type { GreyFrame } from '../../../src/core/frame';

const frame = (index: number): GreyFrame => ({
  index,
  width: 10,
  height: 10,
  data: new Uint8Array(100),
  white: 255,
});

describe('frame cache', () => {
  it('decodes a frame once, even when it is asked for twice at once', async () => {
    const loads: number[] = [];
    const cache = createFrameCache(async (i) => {
      loads.push(i);
      return frame(i);
    }, 1000);
    const [a, b] = await Promise.all([cache.get(3), cache.get(3)]);
    expect(a).toBe(b);
    expect(await cache.get(3)).toBe(a);
    expect(loads).toEqual([3]);
  });

  it('drops the least recently used frames beyond its bytes', async () => {
    const cache = createFrameCache(async (i) => frame(i), 300);
    for (const i of [1, 2, 3]) await cache.get(i);
    cache.peek(1);
    await cache.get(4);
    expect([1, 2, 3, 4].map((i) => cache.peek(i) !== null)).toEqual([true, false, true, true]);
  });

  it('keeps nothing that was asked for before it was cleared', async () => {
    let release: (frame: GreyFrame) => void = () => {};
    const cache = createFrameCache(
      () =>
        new Promise((resolve) => {
          release = resolve;
        }),
      1000,
    );
    const old = cache.get(1);
    cache.clear();
    release(frame(1));
    await old;
    expect(cache.peek(1)).toBeNull();
  });

  it('asks again after a failure', async () => {
    let tries = 0;
    const cache = createFrameCache(async (i) => {
      tries += 1;
      if (tries === 1) throw new Error('first try');
      return frame(i);
    }, 1000);
    await expect(cache.get(1)).rejects.toThrow('first try');
    expect((await cache.get(1)).index).toBe(1);
  });
});
