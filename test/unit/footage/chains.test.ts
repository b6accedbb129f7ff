import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { jpegHeader } from '../../../src/footage/images/jpeg';
import { nodePlatform } from '../../../src/footage/node';
import { openFootage } from '../../../src/footage/open';
import { requireWhole } from '../../../src/footage/wholeness';
import { inMemory } from './reading';

const film = await readFile('test/fixtures/breadth/h264.mp4');
const opening = (name: string, bytes: Uint8Array) =>
  openFootage([inMemory(name, bytes)], nodePlatform);

/** A file that counts how often it is read. */
function counted(bytes: Uint8Array): { blob: Blob; reads: () => number } {
  const blob = new Blob([bytes as BlobPart]);
  let reads = 0;
  const slice = blob.slice.bind(blob);
  blob.slice = (...of) => {
    reads++;
    return slice(...of);
  };
  return { blob, reads: () => reads };
}

/** So many boxes with nothing in them. */
function emptyBoxes(count: number): Buffer {
  const bytes = Buffer.alloc(8 * count);
  for (let i = 0; i < count; i++) {
    bytes.writeUInt32BE(8, 8 * i);
    bytes.write('free', 8 * i + 4);
  }
  return bytes;
}

describe('boxes without end', () => {
  it('are refused from a hundred thousand on, read many at a time', async () => {
    const { blob, reads } = counted(Buffer.concat([film, emptyBoxes(100_000)]));
    await expect(requireWhole({ name: 'clip.mp4', blob })).rejects.toMatchObject({
      code: 'tooManyParts',
      message: expect.stringContaining('"clip.mp4"'),
      remedy: expect.any(String),
    });
    expect(reads()).toBeLessThan(20);
  });

  it('are read past where they are fewer', async () => {
    const source = await opening('clip.mp4', Buffer.concat([film, emptyBoxes(1000)]));
    expect(source.info.frameCount).toBe(4);
  });
});

/** Directories of images of 8 x 8 pixels, each naming the one `next` gives. */
function tiffOf(count: number, next: (index: number) => number): Buffer {
  const [head, each] = [8, 54];
  const bytes = Buffer.alloc(head + each * count);
  bytes.write('II*\0', 'latin1');
  bytes.writeUInt32LE(head, 4);
  for (let i = 0; i < count; i++) {
    const at = head + each * i;
    bytes.writeUInt16LE(4, at);
    const tags = [
      [256, 8],
      [257, 8],
      [258, 8],
      [262, 1],
    ] as const;
    tags.forEach(([tag, value], j) => {
      const entry = at + 2 + 12 * j;
      bytes.writeUInt16LE(tag, entry);
      bytes.writeUInt16LE(3, entry + 2);
      bytes.writeUInt32LE(1, entry + 4);
      bytes.writeUInt16LE(value, entry + 8);
    });
    const following = next(i);
    bytes.writeUInt32LE(following < 0 ? 0 : head + each * following, at + 50);
  }
  return bytes;
}

describe('a list of images in a TIFF file', () => {
  it.each([
    ['to its first image', 0],
    ['to the image itself', 2],
  ])('is refused where it leads back %s', async (_where, back) => {
    await expect(
      opening(
        'pages.tif',
        tiffOf(3, (i) => (i < 2 ? i + 1 : back)),
      ),
    ).rejects.toMatchObject({
      code: 'imagesLoop',
      message: expect.stringContaining('after 3 images'),
    });
  });

  it('is refused where it does not end', async () => {
    await expect(
      opening(
        'pages.tif',
        tiffOf(200_001, (i) => i + 1),
      ),
    ).rejects.toMatchObject({
      code: 'tooManyImages',
      message: expect.stringContaining('"pages.tif"'),
    });
  });

  it('is refused where it goes on past the end of the file', async () => {
    await expect(
      opening(
        'pages.tif',
        tiffOf(3, (i) => i + 1),
      ),
    ).rejects.toMatchObject({
      code: 'truncated',
    });
  });
});

describe('segments of a JPEG file without end', () => {
  it.each([
    ['fill bytes', Buffer.alloc(2_000_000, 0xff)],
    ['empty notes', Buffer.from('ffe10002'.repeat(500_000), 'hex')],
  ])('%s', async (_what, filling) => {
    const { blob, reads } = counted(Buffer.concat([Buffer.from([0xff, 0xd8]), filling]));
    expect(await jpegHeader(blob)).toBeNull();
    expect(reads()).toBeLessThan(20);
  });
});
