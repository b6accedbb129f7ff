import { readFile } from 'node:fs/promises';
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

/** Where the pictures of an AVI film lie, by their chunks' heads: `00dc` and the length. */
function picturesIn(avi: Buffer): { readonly start: number; readonly end: number }[] {
  const pictures = [];
  for (let at = avi.indexOf('movi') + 4; avi.toString('latin1', at, at + 4) === '00dc'; ) {
    const start = at + 8;
    const end = start + avi.readUInt32LE(at + 4);
    pictures.push({ start, end });
    at = end + (end % 2);
  }
  return pictures;
}

test('nothing before a frame that the decoder can start at is decoded for it', async () => {
  const avi = await readFile('sample-clips/d-mjpeg/clip.avi');
  const { start, end } = picturesIn(avi)[39] as { start: number; end: number };
  avi.fill(0, Math.round(0.3 * start + 0.7 * end), end);
  const source = await openFootage([{ name: 'clip.avi', blob: new Blob([avi]) }], nodePlatform);
  const taken = async (first: number, last: number) => {
    const indices = [];
    for await (const { index } of source.frames({ start: first, end: last + 1 })) {
      indices.push(index);
    }
    return indices;
  };
  try {
    await expect(taken(38, 39)).rejects.toMatchObject({ code: 'decoderFailed' });
    expect(await taken(40, 42)).toEqual([40, 41, 42]);
  } finally {
    await source.close();
  }
});
