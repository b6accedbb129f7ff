import { type Remote, transfer } from 'comlink';
import type { MeasureApi } from '../src/protocol/measure';
import type { FrameMeasurer } from '../src/reduction/types';

/** Measuring workers behind the calls of one measurer: each call goes to a worker that is free. */
export function poolOf(workers: readonly Remote<MeasureApi>[]): FrameMeasurer {
  const free = [...workers];
  const waiting: ((worker: Remote<MeasureApi>) => void)[] = [];

  const borrow = async <T>(use: (worker: Remote<MeasureApi>) => Promise<T>): Promise<T> => {
    const worker =
      free.pop() ?? (await new Promise<Remote<MeasureApi>>((resolve) => waiting.push(resolve)));
    try {
      return await use(worker);
    } finally {
      const next = waiting.shift();
      if (next === undefined) free.push(worker);
      else next(worker);
    }
  };

  return {
    // One batch measured and one under way to each worker keeps them busy.
    lanes: 2 * workers.length,
    prepare: async (setup) => {
      await Promise.all(workers.map((worker) => worker.prepare(setup)));
    },
    survey: (frames) =>
      borrow((worker) =>
        worker.survey(
          transfer(
            [...frames],
            frames.map((frame) => frame.data.buffer),
          ),
        ),
      ),
    centres: (hints) =>
      borrow((worker) =>
        worker.centres(
          transfer(
            [...hints],
            hints.map((hint) => hint.frame.data.buffer),
          ),
        ),
      ),
    inspect: (hint) => borrow((worker) => worker.inspect(transfer(hint, [hint.frame.data.buffer]))),
  };
}
