import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { nodePlatform } from '../../../src/footage/node';
import { openFootage } from '../../../src/footage/open';
import { unpacked } from '../../../src/footage/zip';
import { inMemory } from './reading';

const archive = await readFile('test/fixtures/breadth/png-16.zip');
/** Where a record of the archive's list of contents keeps the size unpacked. */
const STATED_SIZE = 24;
const RECORD = Buffer.from('PK\x01\x02', 'latin1');

const opening = (bytes: Uint8Array) => openFootage([inMemory('shot.zip', bytes)], nodePlatform);

/** The archive with another size stated for its second file, which is packed. */
function stating(size: number): Uint8Array {
  const changed = Buffer.from(archive);
  const second = changed.indexOf(RECORD, changed.indexOf(RECORD) + 4);
  changed.writeUInt32LE(size, second + STATED_SIZE);
  return changed;
}

describe('an archive packed by another tool', () => {
  it('is read in the order of its numbers, notes and the folder itself left out', async () => {
    const files = await unpacked(inMemory('shot.zip', archive));
    expect(files.map(({ name }) => name)).toEqual(
      [8, 9, 10, 11].map((number) => `Kügelchen-${number}.png`),
    );
    for (const [i, { blob }] of files.entries()) {
      const packed = await readFile(`test/fixtures/breadth/png-16/disc-${8 + i}.png`);
      expect(Buffer.compare(Buffer.from(await blob.arrayBuffer()), packed)).toBe(0);
    }
  });

  it('is refused where it holds another one', async () => {
    const nested = await readFile('test/fixtures/breadth/nested.zip');
    await expect(opening(nested)).rejects.toMatchObject({ code: 'nestedArchive' });
  });

  it('is refused with what to do where it has a password', async () => {
    const locked = await readFile('test/fixtures/breadth/locked.zip');
    await expect(opening(locked)).rejects.toMatchObject({
      code: 'badArchive',
      remedy: expect.stringContaining('without a password'),
    });
  });
});

describe('a damaged or lying archive', () => {
  it('is refused where a file is larger than it states, before it fills the memory', async () => {
    await expect(opening(stating(10))).rejects.toMatchObject({ code: 'badArchive' });
  });

  it('is refused unread where it states more than is unpacked here', async () => {
    await expect(opening(stating(0xfffffffe))).rejects.toMatchObject({
      code: 'archiveTooLarge',
      message: expect.stringContaining('"shot.zip"'),
    });
  });

  it('is refused where it is cut off', async () => {
    await expect(opening(archive.subarray(0, -40))).rejects.toMatchObject({ code: 'badArchive' });
  });

  it('is refused where it holds no footage', async () => {
    const notes = Buffer.from(archive);
    for (let at = notes.indexOf('.png'); at >= 0; at = notes.indexOf('.png', at)) {
      notes.write('.txt', at);
    }
    await expect(opening(notes)).rejects.toMatchObject({ code: 'emptyArchive' });
  });
});
