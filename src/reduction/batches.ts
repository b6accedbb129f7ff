import type { Cancellation } from '../core/cancellation';

/**
 * Reads a stream in batches and works on up to `lanes` of them at once; the reader waits while all lanes are
 * taken, so that no more than `size * (lanes + 1)` items are ever held. The first failure ends the reading
 * and is thrown once the batches under way have settled.
 */
export async function inBatches<T>(
  stream: AsyncIterable<T>,
  options: { size: number; lanes: number; cancellation: Cancellation },
  work: (batch: T[]) => Promise<void>,
): Promise<void> {
  const { size, lanes, cancellation } = options;
  const underWay = new Set<Promise<void>>();
  const failures: unknown[] = [];
  const start = async (batch: T[]): Promise<void> => {
    while (underWay.size >= lanes) await Promise.race(underWay);
    if (failures.length > 0) throw failures[0];
    const job = work(batch)
      .catch((error: unknown) => {
        failures.push(error);
      })
      .finally(() => underWay.delete(job));
    underWay.add(job);
  };
  try {
    let batch: T[] = [];
    for await (const item of stream) {
      cancellation.throwIfAborted();
      batch.push(item);
      if (batch.length === size) {
        await start(batch);
        batch = [];
      }
    }
    if (batch.length > 0) await start(batch);
  } finally {
    await Promise.all(underWay);
  }
  if (failures.length > 0) throw failures[0];
}
