import { describe, expect, it } from 'vitest';
import { inBatches } from '../../../src/reduction/batches';

async function* count(to: number): AsyncGenerator<number> {
  for (let i = 0; i < to; i++) yield i;
}
const going = { aborted: false, throwIfAborted: () => undefined };
const later = () => new Promise((resolve) => setImmediate(resolve));

describe('inBatches', () => {
  it('works on every item once, never on more than the lanes allow', async () => {
    const seen: number[] = [];
    let now = 0;
    let most = 0;
    await inBatches(count(23), { size: 4, lanes: 3, cancellation: going }, async (batch) => {
      most = Math.max(most, ++now);
      await later();
      await later();
      seen.push(...batch);
      now--;
    });
    expect(seen.sort((a, b) => a - b)).toEqual(Array.from({ length: 23 }, (_, i) => i));
    expect(most).toBe(3);
  });

  it('throws the first failure after the batches under way have settled', async () => {
    let settled = 0;
    const run = inBatches(
      count(100),
      { size: 1, lanes: 2, cancellation: going },
      async ([item]) => {
        await later();
        settled++;
        if (item === 3) throw new Error('frame 3');
      },
    );
    await expect(run).rejects.toThrow('frame 3');
    expect(settled).toBeLessThan(20);
  });

  it('stops reading when cancelled and closes the stream', async () => {
    let closed = false;
    const abort = new AbortController();
    async function* endless() {
      try {
        for (let i = 0; ; i++) yield i;
      } finally {
        closed = true;
      }
    }
    const run = inBatches(
      endless(),
      { size: 2, lanes: 1, cancellation: abort.signal },
      async ([item]) => {
        if (item === 10) abort.abort();
      },
    );
    await expect(run).rejects.toMatchObject({ name: 'AbortError' });
    expect(closed).toBe(true);
  });
});
