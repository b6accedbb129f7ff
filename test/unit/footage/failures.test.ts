import { copyFile, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sha256 } from '../../../src/footage/hash';
import { nodePlatform } from '../../../src/footage/node';
import { openFootage } from '../../../src/footage/open';
import { filesAt, fixture, framesOf, inMemory, open } from './reading';

const bytesOf = async (path: string) => new Uint8Array(await readFile(path));
const opening = (name: string, bytes: Uint8Array | string) =>
  openFootage([inMemory(name, bytes)], nodePlatform);

describe('footage that cannot be opened', () => {
  it('notFootage: text, noise, nothing', async () => {
    const text = 'Dear all, the film is in the other folder.\n'.repeat(99);
    const noise = Uint8Array.from({ length: 50_000 }, (_, i) => (i * i * 7919 + (i >> 3)) % 256);
    for (const bytes of [text, noise]) {
      await expect(opening('letter.mp4', bytes)).rejects.toMatchObject({
        code: 'notFootage',
        message: expect.stringContaining('letter.mp4'),
      });
    }
    await expect(openFootage([], nodePlatform)).rejects.toMatchObject({ code: 'notFootage' });
  });

  it('emptyFile: zero bytes, alone or in a sequence', async () => {
    await expect(opening('empty.mp4', '')).rejects.toMatchObject({ code: 'emptyFile' });
    const sequence = [...(await filesAt(fixture('png8'))), inMemory('empty.png', '')];
    await expect(openFootage(sequence, nodePlatform)).rejects.toMatchObject({
      code: 'emptyFile',
      message: expect.stringContaining('empty.png'),
    });
  });

  it('noVideoTrack: sound only', async () => {
    await expect(open('test/fixtures/sound-only.mp4')).rejects.toMatchObject({
      code: 'noVideoTrack',
    });
  });

  it('singleFrame: a clip of one frame, one image, a TIFF file with one image', async () => {
    for (const path of [
      'test/fixtures/one-frame.mp4',
      fixture('png8/0.png'),
      fixture('tiff16/0.tif'),
    ]) {
      await expect(open(path)).rejects.toMatchObject({ code: 'singleFrame' });
    }
  });

  it('undecodable: a codec for which the core has no decoder', async () => {
    await expect(open(fixture('av1.mp4'))).rejects.toMatchObject({
      code: 'undecodable',
      message: expect.stringContaining('AV1'),
    });
  });
});

describe('truncated films', () => {
  it('MP4 cut before its index, and cut after it', async () => {
    await expect(open('test/fixtures/cut-index.mp4')).rejects.toMatchObject({
      code: 'truncated',
      message: expect.stringContaining('index'),
    });
    await expect(open('test/fixtures/cut-frames.mp4')).rejects.toMatchObject({
      code: 'truncated',
      message: expect.stringContaining('bytes'),
    });
  });

  it.each([
    ['mjpeg.avi', 0.6],
    ['mjpeg.avi', 0.99],
    ['vp9.webm', 0.6],
    ['ffv1-16.mkv', 0.9],
    ['prores.mov', 0.5],
    ['pages.tif', 0.4],
  ])('%s cut to %f', async (name, share) => {
    const bytes = await bytesOf(fixture(name));
    const cut = bytes.subarray(0, Math.round(bytes.length * share));
    await expect(opening(name, cut)).rejects.toMatchObject({ code: 'truncated' });
  });

  it('MP4 at every place it may be cut', async () => {
    const bytes = await bytesOf('test/fixtures/two-frames.mp4');
    for (let share = 0.05; share < 1; share += 0.05) {
      const cut = bytes.subarray(0, Math.round(bytes.length * share));
      await expect(opening('cut.mp4', cut)).rejects.toMatchObject({ code: 'truncated' });
    }
  });
});

describe('damage inside a film', () => {
  it.each(['mjpeg.avi', 'uneven.mp4'])('in %s is told of, not shown', async (name) => {
    const bytes = await bytesOf(fixture(name));
    bytes.fill(0x55, Math.round(bytes.length * 0.45), Math.round(bytes.length * 0.6));
    const read = async () => framesOf(await opening(name, bytes));
    await expect(read()).rejects.toMatchObject({
      code: expect.stringMatching(/^(decoderFailed|truncated)$/),
    });
  });

  it('a few wrong bytes do not pass for a picture the decoder made up', async () => {
    const bytes = await bytesOf(fixture('uneven.mp4'));
    for (let at = 2970; at < 2976; at++) bytes[at] = (bytes[at] as number) ^ 0xa5;
    const source = await opening('uneven.mp4', bytes);
    await expect(framesOf(source)).rejects.toMatchObject({
      code: 'decoderFailed',
      message: expect.stringContaining('frame 8 of 48'),
    });
  });

  it('a sound track no decoder reads leaves the film usable', async () => {
    const bytes = await bytesOf(fixture('click-aac.mp4'));
    for (const name of ['mp4a', 'esds']) {
      bytes.set(Buffer.from('nope'), Buffer.from(bytes).indexOf(name));
    }
    const source = await opening('odd-sound.mp4', bytes);
    expect(await framesOf(source)).toHaveLength(15);
    await expect(source.audio()).rejects.toMatchObject({ code: 'soundUndecodable' });
  });
});

describe('a file that goes away', () => {
  it('is named', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'footage-'));
    try {
      for (const name of ['0.png', '1.png']) {
        await copyFile(fixture(`png8/${name}`), join(folder, name));
      }
      const files = await filesAt(folder);
      const source = await openFootage(files, nodePlatform);
      await rm(join(folder, '1.png'));
      const named = { code: 'unreadable', message: expect.stringContaining('1.png') };
      await expect(framesOf(source)).rejects.toMatchObject(named);
      await expect(sha256(files)).rejects.toMatchObject(named);
    } finally {
      await rm(folder, { recursive: true });
    }
  });
});

describe('cancel', () => {
  it('ends opening, frames and sound with AbortError', async () => {
    const aborted = AbortSignal.abort();
    const files = await filesAt(fixture('click-aac.mp4'));
    await expect(openFootage(files, nodePlatform, { signal: aborted })).rejects.toMatchObject({
      name: 'AbortError',
    });
    const source = await openFootage(files, nodePlatform);
    await expect(source.audio(aborted)).rejects.toMatchObject({ name: 'AbortError' });
    await expect(source.timestamps(aborted)).rejects.toMatchObject({ name: 'AbortError' });
    const cancel = new AbortController();
    const seen: number[] = [];
    const reading = async () => {
      for await (const { index } of source.frames({ start: 0, end: 15 }, cancel.signal)) {
        seen.push(index);
        if (index === 3) cancel.abort();
      }
    };
    await expect(reading()).rejects.toMatchObject({ name: 'AbortError' });
    expect(seen).toEqual([0, 1, 2, 3]);
  });
});
