import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { imageFormat, imageHeader } from '../../../src/footage/images/header';
import { nodePlatform } from '../../../src/footage/node';
import { openFootage } from '../../../src/footage/open';
import { exifNotes, pngWith } from '../../fixtures/exif';
import { filesAt, fixture, framesOf, inMemory, open } from './reading';

const WIDE = { width: 48, height: 32 };

describe('image headers', () => {
  it.each([
    ['png8', 'png', { ...WIDE, bits: 8, colour: 0 }],
    ['png16', 'png', { ...WIDE, bits: 16, colour: 0 }],
    ['png-colour', 'png', { ...WIDE, bits: 8, colour: 2 }],
    ['tiff16', 'tiff', { ...WIDE, bits: 16, colour: 1 }],
    ['bmp', 'bmp', { ...WIDE, bits: 8, colour: 24 }],
    ['jpeg', 'jpeg', { ...WIDE, bits: 8, colour: 3 }],
  ] as const)('%s', async (folder, format, header) => {
    for (const { blob } of await filesAt(fixture(folder))) {
      expect(await imageFormat(blob)).toBe(format);
      expect(await imageHeader(blob, format)).toMatchObject(header);
    }
  });

  it('has none where the header breaks off', async () => {
    const bytes = await readFile(fixture('jpeg/0.jpg'));
    expect(await imageHeader(new Blob([bytes.subarray(0, 30)]), 'jpeg')).toBeNull();
  });
});

describe('notes of how the camera was held, in a PNG picture', () => {
  const orientationWith = async (
    notes: Uint8Array<ArrayBuffer>,
    place: 'first' | 'last',
    cut?: number,
  ) => {
    const [file] = await filesAt(fixture('png8'));
    if (file === undefined) throw new Error('fixtures are missing');
    const noted = await pngWith(file.blob, notes, place);
    return (await imageHeader(noted.slice(0, cut), 'png'))?.orientation;
  };

  it.each(['first', 'last'] as const)('count where their chunk comes %s', async (place) => {
    for (const little of [true, false]) {
      expect(await orientationWith(exifNotes(6, little), place)).toEqual({
        mirrored: false,
        rotation: 90,
      });
    }
  });

  it('count for nothing where they are damaged or cut off', async () => {
    const upright = { mirrored: false, rotation: 0 };
    expect(await orientationWith(exifNotes(6, true).slice(0, 12), 'first')).toEqual(upright);
    expect(await orientationWith(exifNotes(99, true), 'first')).toEqual(upright);
    expect(await orientationWith(exifNotes(6, true), 'last', -40)).toEqual(upright);
  });
});

describe('16 bits', () => {
  it('come out of a TIFF file with several images as they went in', async () => {
    const source = await open(fixture('pages.tif'));
    expect(source.info).toMatchObject({ container: 'tiff', frameCount: 3, bitDepth: 16 });
    const frames = await framesOf(source);
    expect(frames).toHaveLength(3);
    frames.forEach(({ data, index }) => {
      // As test/fixtures/footage/make.mjs wrote them.
      const written = Array.from({ length: 200 }, (_, i) => (index * 20_000 + i * 97) % 65_536);
      expect([...data]).toEqual(written);
    });
  });
});

describe('image sequence', () => {
  it('keeps the order given, not that of the names', async () => {
    const files = await filesAt(fixture('png16'));
    const forward = await framesOf(await openFootage(files, nodePlatform));
    const backward = await framesOf(await openFootage([...files].reverse(), nodePlatform));
    expect(backward.map(({ data }) => data)).toEqual(forward.map(({ data }) => data).reverse());
  });

  it('refuses images that are not alike, naming both', async () => {
    const [first] = await filesAt(fixture('png8'));
    const [deep] = await filesAt(fixture('png16'));
    const [other] = await filesAt(fixture('bmp'));
    if (!first || !deep || !other) throw new Error('fixtures are missing');
    for (const files of [
      [first, deep],
      [first, other],
    ]) {
      await expect(openFootage(files, nodePlatform)).rejects.toMatchObject({
        code: 'mixedSizes',
        message: expect.stringContaining(`"${first.name}"`),
      });
    }
  });

  it('says which file is no image, and which is damaged', async () => {
    const [first, second] = await filesAt(fixture('png8'));
    if (!first || !second) throw new Error('fixtures are missing');
    await expect(
      openFootage([first, inMemory('notes.txt', 'not a picture')], nodePlatform),
    ).rejects.toMatchObject({
      code: 'notFootage',
      message: expect.stringContaining('notes.txt'),
    });
    const bytes = new Uint8Array(await second.blob.arrayBuffer());
    const cut = inMemory('cut.png', bytes.subarray(0, bytes.length / 2));
    const source = await openFootage([first, cut], nodePlatform);
    await expect(framesOf(source)).rejects.toMatchObject({
      code: 'decoderFailed',
      message: expect.stringContaining('cut.png'),
    });
  });
});
