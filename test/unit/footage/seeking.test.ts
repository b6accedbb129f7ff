import { expect, test, vi } from 'vitest';
import type { CoreRun } from '../../../src/footage/ffmpeg/core';
import { footageFile, nodePlatform } from '../../../src/footage/node';
import { openFootage } from '../../../src/footage/open';

const runs: CoreRun[] = [];
vi.mock('../../../src/footage/ffmpeg/core', async (original) => {
  const core = await original<typeof import('../../../src/footage/ffmpeg/core')>();
  return {
    ...core,
    runCoreAgain: (module: WebAssembly.Module) => {
      const again = core.runCoreAgain(module);
      return (run: CoreRun) => {
        runs.push(run);
        return again(run);
      };
    },
  };
});

test('a frame far into an AVI film, of one tick a frame, is sought and not counted to from the first', async () => {
  const source = await openFootage(
    [await footageFile('sample-clips/d-mjpeg/clip.avi')],
    nodePlatform,
  );
  try {
    const all: Uint8Array[] = [];
    const { frameCount } = source.info;
    for await (const { data } of source.frames({ start: 0, end: frameCount })) {
      all.push(data as Uint8Array);
    }
    // Halfway before frames 12 and 72 is a third of a microsecond, which is cut off, after the half of a tick.
    for (const index of [1, 12, 40, 72, frameCount - 1]) {
      runs.length = 0;
      for await (const frame of source.frames({ start: index, end: index + 1 })) {
        expect(frame.index).toBe(index);
        expect(frame.data).toEqual(all[index]);
      }
      expect(runs).toHaveLength(1);
      expect(runs[0]?.args).toContain('-ss');
    }
  } finally {
    await source.close();
  }
});
