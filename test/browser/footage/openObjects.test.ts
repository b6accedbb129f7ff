import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { browserPlatform } from '../../../src/footage/browser';
import { openFootage } from '../../../src/footage/open';
import type { FootageFile } from '../../../src/footage/source';
import { loadVision } from '../../../src/image/opencv/vision';
import { carryReasons } from '../../../src/protocol/errors';
import { createMeasurer } from '../../../src/reduction/measurer';
import { reduceShot } from '../../../src/reduction/reduceShot';
import type { ReductionEvent } from '../../../src/reduction/types';
import { parseShot } from '../../../src/shot/parse';
import { readInThread } from '../../../workers/secondReading';
import { watchMats } from '../../fixtures/mats';
import { filesAt, json } from './decoding';

carryReasons();
const CLIP = 'sample-clips/a-clean/clip.mp4';

/** What a reduction opened and must close: decoders, their frames, threads, memory of OpenCV. */
function watchAll() {
  const decoders: VideoDecoder[] = [];
  const frames: VideoFrame[] = [];
  const threads = { started: 0, ended: 0 };
  vi.stubGlobal(
    'VideoDecoder',
    class extends VideoDecoder {
      constructor(init: VideoDecoderInit) {
        super({
          ...init,
          output: (frame) => {
            frames.push(frame);
            init.output(frame);
          },
        });
        decoders.push(this);
      }
    },
  );
  vi.stubGlobal(
    'Worker',
    class extends Worker {
      constructor(url: string | URL, options?: WorkerOptions) {
        super(url, options);
        threads.started++;
      }
      override terminate() {
        threads.ended++;
        super.terminate();
      }
    },
  );
  return { decoders, frames, threads, mats: watchMats() };
}

describe('what a reduction opens is closed', () => {
  let seen: ReturnType<typeof watchAll>;
  beforeEach(async () => {
    await loadVision();
    seen = watchAll();
  });
  afterEach(() => {
    seen.mats.end();
    vi.unstubAllGlobals();
  });

  async function reduce(
    files: readonly FootageFile[],
    onEvent: (event: ReductionEvent, cancel: () => void) => void = () => {},
  ) {
    const parsed = parseShot(JSON.stringify(await json('sample-clips/a-clean/a-clean.shot.json')));
    if (!parsed.ok) throw new Error(parsed.reason.message);
    const source = await openFootage(files, { ...browserPlatform, readAgain: readInThread });
    const abort = new AbortController();
    const { signal } = abort;
    try {
      const inputs = {
        ...{ shot: parsed.value, info: source.info, footageSha256: '', audio: null },
        ...{ timestamps: await source.timestamps(), setupScene: null },
      };
      const film = {
        frames: (range: Parameters<typeof source.frames>[0]) => source.frames(range, signal),
        check: async (ranges: Parameters<NonNullable<typeof source.check>>[0]) =>
          source.check?.(ranges, signal),
      };
      const told = (event: ReductionEvent) => onEvent(event, () => abort.abort());
      return await reduceShot(inputs, film, createMeasurer(), told, signal);
    } finally {
      await source.close();
    }
  }

  async function expectClosed() {
    await vi.waitFor(() => {
      expect(seen.decoders.filter(({ state }) => state !== 'closed')).toEqual([]);
      // A closed frame has no format (WebCodecs, "Close VideoFrame").
      expect(seen.frames.filter(({ format }) => format !== null)).toEqual([]);
      expect(seen.threads.ended).toBe(seen.threads.started);
    });
    expect(seen.mats.left()).toBe(0);
  }

  it('after a whole one', async () => {
    const { result } = await reduce(await filesAt(CLIP));
    expect(result.exitVelocity).toHaveProperty('value');
    expect(seen.decoders.length).toBeGreaterThan(1);
    expect(seen.frames.length).toBeGreaterThan(140);
    expect(seen.threads.started).toBe(1);
    expect(seen.mats.opened()).toBeGreaterThan(100);
    await expectClosed();
  });

  it.each<[string, (event: ReductionEvent) => boolean]>([
    ['in the first pass', (event) => event.kind === 'streakRow' && event.frame === 60],
    ['in the closer look', (event) => event.kind === 'progress' && event.stage === 'survey'],
    ['while centres are measured', (event) => event.kind === 'centre'],
    [
      'while the check is waited for',
      (event) => event.kind === 'progress' && event.stage === 'check',
    ],
  ])('after one cancelled %s', async (_, isThere) => {
    const run = reduce(await filesAt(CLIP), (event, cancel) => {
      if (isThere(event)) cancel();
    });
    await expect(run).rejects.toMatchObject({ name: 'AbortError' });
    expect(seen.frames.length).toBeGreaterThan(50);
    await expectClosed();
  });

  it.each([
    ['its decoder gives up', 1_119_527],
    ['the second decoder refuses', 937_278],
  ])('after one that fails where %s', async (_, at) => {
    const [clip] = (await filesAt(CLIP)) as [FootageFile];
    const bytes = new Uint8Array(await clip.blob.arrayBuffer());
    bytes.fill(0, at, at + 2);
    const run = reduce([{ name: clip.name, blob: new Blob([bytes]) }]);
    await expect(run).rejects.toMatchObject({ code: 'decoderFailed' });
    expect(seen.frames.length).toBeGreaterThan(20);
    await expectClosed();
  });
});
