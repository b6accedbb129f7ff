import { describe, expect, it } from 'vitest';
import type { FrameRange } from '../../../src/core/film';
import type { GreyFrame } from '../../../src/core/frame';
import type { FrameSource } from '../../../src/footage/source';
import { FrameRuns } from '../../../workers/frameRuns';

/** A film of tiny frames that counts how many were decoded and whether every pass was closed. */
function film(failAt = Infinity) {
  const log = { decoded: 0, closed: 0 };
  const source = {
    async *frames(
      { start, end, step = 1 }: FrameRange,
      signal?: AbortSignal,
    ): AsyncGenerator<GreyFrame> {
      try {
        for (let index = start; index < end; index += step) {
          signal?.throwIfAborted();
          if (index === failAt) throw new Error(`frame ${index} is damaged`);
          log.decoded++;
          yield { index, width: 2, height: 1, data: new Uint8Array([index & 255, 0]), white: 255 };
        }
      } finally {
        log.closed++;
      }
    },
  } as unknown as FrameSource;
  return { source, log };
}

async function pull(runs: FrameRuns, id: number): Promise<number[]> {
  const seen: number[] = [];
  for (;;) {
    const batch = await runs.next(id);
    if (batch.length === 0) return seen;
    seen.push(...batch.map((frame) => frame.index));
  }
}

describe('FrameRuns', () => {
  it('hands out a range in order and closes the pass', async () => {
    const { source, log } = film();
    const runs = new FrameRuns();
    const seen = await pull(runs, runs.start(source, { start: 3, end: 40, step: 2 }));
    expect(seen).toEqual(Array.from({ length: 19 }, (_, i) => 3 + 2 * i));
    expect(log.closed).toBe(1);
  });

  it('decodes one batch ahead and no more', async () => {
    const { source, log } = film();
    const runs = new FrameRuns();
    const id = runs.start(source, { start: 0, end: 1000 });
    await runs.next(id);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(log.decoded).toBeLessThanOrEqual(16);
    await runs.end(id);
    expect(log.closed).toBe(1);
    await expect(runs.next(id)).rejects.toMatchObject({ code: 'runOver' });
  });

  it('serves two passes at once', async () => {
    const { source } = film();
    const runs = new FrameRuns();
    const [a, b] = await Promise.all([
      pull(runs, runs.start(source, { start: 0, end: 20 })),
      pull(runs, runs.start(source, { start: 10, end: 30 })),
    ]);
    expect([a[0], a.length, b[0], b.length]).toEqual([0, 20, 10, 20]);
  });

  it('passes a decoding failure to whoever pulls', async () => {
    const { source } = film(12);
    const runs = new FrameRuns();
    const id = runs.start(source, { start: 0, end: 100 });
    await expect(pull(runs, id)).rejects.toThrow('frame 12 is damaged');
  });
});
