import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { headersOf } from '../../../src/footage/bytes';
import { nodePlatform } from '../../../src/footage/node';
import { openFootage } from '../../../src/footage/open';
import { requireWhole } from '../../../src/footage/wholeness';
import { filesAt, fixture, framesOf, inMemory } from './reading';

const bytesOf = async (path: string) => new Uint8Array(await readFile(path));
const read = async (name: string, bytes: Uint8Array) =>
  framesOf(await openFootage([inMemory(name, bytes)], nodePlatform));

/** The bytes with so many of them replaced, from a place on. */
function replaced(bytes: Uint8Array, at: number, by: readonly number[]): Uint8Array {
  const changed = bytes.slice();
  changed.set(by, at);
  return changed;
}

const placeOf = (bytes: Uint8Array, letters: string, nth = 0): number => {
  let at = -1;
  for (let i = 0; i <= nth; i++) at = Buffer.from(bytes).indexOf(letters, at + 1, 'latin1');
  return at;
};

describe('what a decoder patches up is not shown', () => {
  // ffmpeg says so, gives a picture all the same, and ends as if all were well.
  it.each([
    ['FFV1 in MKV, by the sum of a slice', 'test/fixtures/fuzz/ffv1-16.mkv', 1010, [0]],
    ['FFV1 in AVI, by the sum of a slice', 'test/fixtures/fuzz/ffv1-16.avi', 6785, [255, 127]],
    ['GIF, by codes that are none', fixture('colour.gif'), 3000, [255, 255, 255, 255, 255, 255]],
    ['Motion-JPEG, by codes that are none', fixture('mjpeg.avi'), 12_000, [255, 0, 255, 0, 255, 0]],
  ])('%s', async (_, path, at, by) => {
    const whole = await bytesOf(path);
    expect((await read('clip', whole)).length).toBeGreaterThan(1);
    await expect(read('clip', replaced(whole, at, by))).rejects.toMatchObject({
      code: 'decoderFailed',
      message: expect.stringMatching(/^The film could not be decoded at frame \d+ of \d+: \[/),
    });
  });

  it('PNG, by the sum of a chunk; the file is named', async () => {
    const files = await filesAt(fixture('png16'));
    const last = new Uint8Array(await (files[2]?.blob ?? new Blob()).arrayBuffer());
    const sum = placeOf(last, 'IEND') - 8; // of the chunk before
    const broken = [...files.slice(0, 2), inMemory('2.png', replaced(last, sum, [1, 2, 3, 4]))];
    await expect(framesOf(await openFootage(broken, nodePlatform))).rejects.toMatchObject({
      code: 'decoderFailed',
      message: expect.stringContaining('"2.png"'),
    });
  });

  it('JPEG, by codes that are none', async () => {
    const files = await filesAt(fixture('jpeg'));
    const first = new Uint8Array(await (files[0]?.blob ?? new Blob()).arrayBuffer());
    const at = first.length >> 1;
    const broken = [inMemory('0.jpg', replaced(first, at, [255, 0, 255, 0, 255, 0, 255, 0]))];
    await expect(
      framesOf(await openFootage([...broken, ...files.slice(1)], nodePlatform)),
    ).rejects.toMatchObject({ code: 'decoderFailed' });
  });
});

describe('parts that do not join', () => {
  it.each([
    ['WebM with bytes doubled in a block', 'test/fixtures/breadth/vp9.webm', 699, 3],
    ['MKV with bytes doubled in a block', 'test/fixtures/fuzz/vp9.mkv', 527, 30],
    ['GIF with bytes doubled in an image', 'test/fixtures/breadth/disc.gif', 1131, 12],
  ])('%s', async (_, path, at, length) => {
    const whole = await bytesOf(path);
    await requireWhole(inMemory('clip', whole));
    const doubled = Buffer.concat([whole.subarray(0, at + length), whole.subarray(at)]);
    await expect(requireWhole(inMemory('clip', doubled))).rejects.toMatchObject({
      code: expect.stringMatching(/^(brokenParts|truncated)$/),
    });
  });

  it('WebM whose list of key frames has lost its name, in which a reader never ends', async () => {
    const whole = await bytesOf('test/fixtures/breadth/vp9.webm');
    const cues = Buffer.from(whole).lastIndexOf(Buffer.of(0x1c, 0x53, 0xbb, 0x6b));
    const changed = replaced(whole, cues, [0]);
    await expect(requireWhole(inMemory('clip', changed))).rejects.toMatchObject({
      code: 'brokenParts',
      message: expect.stringContaining(`byte ${cues}`),
    });
  });

  it('GIF that ends between two images', async () => {
    const whole = await bytesOf(fixture('colour.gif'));
    await requireWhole(inMemory('clip', whole));
    await expect(requireWhole(inMemory('clip', whole.subarray(0, -1)))).rejects.toMatchObject({
      code: 'truncated',
    });
  });

  it('MKV of parts without end', async () => {
    const whole = await bytesOf('test/fixtures/fuzz/vp9.mkv');
    const segment = Buffer.from(whole).indexOf(Buffer.of(0x18, 0x53, 0x80, 0x67));
    // A segment of unknown length, full of empty parts.
    const head = [0x18, 0x53, 0x80, 0x67, 0x01, 255, 255, 255, 255, 255, 255, 255];
    const voids = Buffer.alloc(1_000_010);
    for (let i = 0; i < voids.length; i += 2) voids.set([0xec, 0x80], i);
    const film = Buffer.concat([whole.subarray(0, segment), Buffer.from(head), voids]);
    await expect(requireWhole(inMemory('clip', film))).rejects.toMatchObject({
      code: 'tooManyParts',
    });
  });
});

describe('an index that contradicts itself', () => {
  it.each(['h264.mp4', 'h264.mov'])('is refused: %s', async (name) => {
    const whole = await bytesOf(`test/fixtures/breadth/${name}`);
    await requireWhole(inMemory(name, whole));
    const times = placeOf(whole, 'stts') + 12; // how many frames last so long
    expect(new DataView(whole.buffer).getUint32(times)).toBe(4);
    await expect(
      requireWhole(inMemory(name, replaced(whole, times, [0, 0, 0, 2]))),
    ).rejects.toMatchObject({
      code: 'brokenIndex',
      message: expect.stringContaining('times for 2 frames and places for 4'),
    });
  });
});

describe('an archive', () => {
  it('whose list names a picture otherwise than the picture does is refused, not put in another order', async () => {
    const whole = await bytesOf('test/fixtures/breadth/png-16.zip');
    const record = placeOf(whole, 'PK\x01\x02', 1);
    const changed = replaced(whole, record + 46, ['z'.charCodeAt(0)]);
    await expect(read('shot.zip', changed)).rejects.toMatchObject({
      code: 'badArchive',
      message: expect.stringContaining('another name'),
    });
  });
});

it('nothing is read beyond the end of a file, wherever that is asked', async () => {
  const at = headersOf(new Blob([new Uint8Array(100)]));
  expect((await at(90, 20)).byteLength).toBe(10);
  for (const start of [100, 101, 136, 100_000]) expect((await at(start, 12)).byteLength).toBe(0);
});
