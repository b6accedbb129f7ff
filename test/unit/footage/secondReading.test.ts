import { describe, expect, it } from 'vitest';
import type { FrameRange } from '../../../src/core/film';
import { openClip } from '../../../src/footage/ffmpeg/clip';
import { openFilm } from '../../../src/footage/ffmpeg/film';
import { readAgain } from '../../../src/footage/ffmpeg/secondReading';
import { inFields } from '../../../src/footage/fields';
import { GivenFrames } from '../../../src/footage/givenFrames';
import { nodePlatform } from '../../../src/footage/node';
import { planeSum } from '../../../src/footage/planeSum';
import { damaged, SAMPLES, type Sample } from '../../fuzz/samples';
import { filesAt } from './reading';

const bytes = (text: string) => new TextEncoder().encode(text);

describe('sum of a plane', () => {
  // MurmurHash3_x86_32, seed 0: values found in many implementations' tests; from memory.
  it.each([
    ['', 0],
    ['test', 0xba6bd213],
    ['Hello, world!', 0xc0363e43],
    ['The quick brown fox jumps over the lazy dog', 0x2e4ff723],
  ])('of "%s" is that of MurmurHash3', (text, sum) => {
    expect(planeSum(bytes(text))).toBe(sum);
  });

  it('does not depend on where the bytes lie, and is taken of both bytes of a grey value', () => {
    const inside = bytes('..test.').subarray(2, 6);
    expect(planeSum(inside)).toBe(0xba6bd213);
    const deep = Uint16Array.of(0x6574, 0x7473);
    expect(planeSum(deep)).toBe(0xba6bd213);
  });
});

describe('frames given out', () => {
  const plane = (value: number) => new Uint8Array(64).fill(value);
  const given = () => {
    const frames = new GivenFrames(3);
    for (const index of [0, 1, 2]) frames.note(index, plane(index));
    return frames;
  };
  const sums = (...values: number[]) =>
    new Map(values.map((value, index) => [index, planeSum(plane(value))]));

  it('are refused where another decoder reads one otherwise, which is named', () => {
    expect(() => given().holdAgainst({ frameCount: 3, sums: sums(0, 1, 2) })).not.toThrow();
    expect(() => given().holdAgainst({ frameCount: 3, sums: sums(0, 7, 2) })).toThrow(/Frame 1 /);
  });

  it('are refused where another decoder finds more or fewer of them', () => {
    expect(() => given().holdAgainst({ frameCount: 2, sums: sums(0, 1) })).toThrow(
      /3 frames in the film and ffmpeg 2/,
    );
  });

  it('must be the same each time', () => {
    const frames = given();
    frames.note(1, plane(1));
    expect(() => frames.note(1, plane(9))).toThrow(/Frame 1 /);
  });
});

describe('a second reading', () => {
  const sample = SAMPLES[0] as Sample;
  const clipOf = async (number: number | null) => {
    const files = await filesAt(sample.path);
    const [file] = number === null ? files : (await damaged(sample, files, 1, number)).files;
    if (file === undefined) throw new Error('no film');
    return openClip(file, nodePlatform);
  };

  it('sums the frames asked for in any order, as far as there are any', async () => {
    const clip = await clipOf(null);
    const source = await openFilm(clip, nodePlatform);
    const { frameCount } = source.info;
    const ranges: FrameRange[] = [
      { start: 4, end: frameCount + 5 },
      { start: 0, end: 1 },
      { start: 2, end: 6 },
      { start: frameCount + 5, end: frameCount + 9 },
    ];
    const again = await readAgain(clip, nodePlatform, ranges);
    expect(again.frameCount).toBe(frameCount);
    const seen = new Map<number, number>();
    for await (const { index, data } of source.frames({ start: 0, end: frameCount })) {
      if (index !== 1) seen.set(index, planeSum(data));
    }
    expect(again.sums).toEqual(seen);
  });

  it('refuses what ffmpeg finds damaged', async () => {
    const clip = await clipOf(76);
    const reading = readAgain(clip, nodePlatform, [{ start: 0, end: 4 }]);
    await expect(reading).rejects.toMatchObject({ code: 'decoderFailed' });
  });
});

it('fields are checked by the frames that hold them', async () => {
  const asked: (readonly FrameRange[])[] = [];
  const film = await openFilm(
    await openClip((await filesAt(SAMPLES[0]?.path ?? ''))[0] as never, nodePlatform),
    nodePlatform,
  );
  const fields = inFields(
    { ...film, check: async (ranges) => void asked.push(ranges) },
    'topFirst',
  );
  await fields.check?.([
    { start: 1, end: 4 },
    { start: 4, end: 8, step: 2 },
  ]);
  expect(asked).toEqual([
    [
      { start: 0, end: 2, step: 1 },
      { start: 2, end: 4, step: 1 },
    ],
  ]);
  expect(inFields(film, 'topFirst').check).toBeUndefined();
});
