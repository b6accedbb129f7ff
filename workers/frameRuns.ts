import type { FrameRange } from '../src/core/film';
import type { GreyFrame } from '../src/core/frame';
import { ExitframeError } from '../src/core/reason';
import type { FrameSource } from '../src/footage/source';

/** Frames handed over at once: enough to hide the hop between threads, little enough to stay small. */
const BATCH_FRAMES = 8;
const BATCH_BYTES = 8 * 1024 * 1024;

interface Run {
  readonly iterator: AsyncIterator<GreyFrame>;
  readonly abort: AbortController;
  /** The batch being decoded while the last one is measured: the only one held. */
  ahead: Promise<GreyFrame[]>;
}

/** Runs through ranges of one film, pulled batch by batch, each one batch ahead of its reader. */
export class FrameRuns {
  private readonly runs = new Map<number, Run>();
  private nextId = 1;

  start(source: FrameSource, range: FrameRange): number {
    const abort = new AbortController();
    const iterator = source.frames(range, abort.signal)[Symbol.asyncIterator]();
    const run: Run = { iterator, abort, ahead: Promise.resolve([]) };
    this.decodeAhead(run);
    const id = this.nextId++;
    this.runs.set(id, run);
    return id;
  }

  async next(id: number): Promise<GreyFrame[]> {
    const run = this.runs.get(id);
    if (run === undefined) {
      throw new ExitframeError('runOver', 'This pass through the film has already ended.');
    }
    const batch = await run.ahead;
    if (batch.length === 0) await this.end(id);
    else this.decodeAhead(run);
    return batch;
  }

  async end(id: number): Promise<void> {
    const run = this.runs.get(id);
    if (run === undefined) return;
    this.runs.delete(id);
    run.abort.abort();
    await run.ahead.catch(() => []);
    await run.iterator.return?.();
  }

  async endAll(): Promise<void> {
    await Promise.all([...this.runs.keys()].map((id) => this.end(id)));
  }

  private decodeAhead(run: Run): void {
    run.ahead = nextBatch(run.iterator);
    // A failure is met by whoever pulls next; until then it must not count as unhandled.
    run.ahead.catch(() => undefined);
  }
}

async function nextBatch(iterator: AsyncIterator<GreyFrame>): Promise<GreyFrame[]> {
  const batch: GreyFrame[] = [];
  let bytes = 0;
  while (batch.length < BATCH_FRAMES && bytes < BATCH_BYTES) {
    const { done, value } = await iterator.next();
    if (done === true) break;
    batch.push(value);
    bytes += value.data.byteLength;
  }
  return batch;
}
