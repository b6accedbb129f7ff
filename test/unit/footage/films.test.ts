import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { FootageInfo } from '../../../src/core/film';
import type { GreyFrame } from '../../../src/core/frame';
import { type Rotation, turnUpright } from '../../../src/footage/rotate';
import { fixture, fixtureReferences, framesOf, hashOf, open, type Reference } from './reading';

// Hashes and times are those of Debian's native ffmpeg 5.1: see the recipe in each frames.json.
const references = await fixtureReferences();

/** What is told of each small film, as it was made (test/fixtures/footage/make.mjs). */
const TOLD: Readonly<Record<string, Partial<FootageInfo>>> = {
  'uneven.mp4': { container: 'mp4', codec: 'avc', width: 98, height: 66, frameCount: 48 },
  'vp9.webm': { container: 'webm', codec: 'vp9', frameCount: 30 },
  'ten-bits.mp4': { codec: 'avc', bitDepth: 10, frameCount: 12 },
  'hevc.mp4': { codec: 'hevc', frameCount: 20, playbackRate: 30 },
  'mjpeg.avi': { container: 'avi', codec: 'mjpeg', playbackRate: 30, bitDepth: 8 },
  'prores.mov': { container: 'mov', codec: 'prores', bitDepth: 10 },
  'ffv1-16.mkv': { container: 'mkv', codec: 'ffv1', bitDepth: 16 },
  'colour.gif': { container: 'gif', codec: 'gif', playbackRate: 10 },
  'trimmed.mp4': { frameCount: 13 },
  'late-start.mp4': { frameCount: 36, playbackRate: 30 },
  'open-groups.mp4': { frameCount: 36 },
  'fragments.mp4': { frameCount: 36 },
  'h264.avi': { container: 'avi', codec: 'avc', frameCount: 36, playbackRate: 30 },
  'stream.m2t': { container: 'mpegts', frameCount: 36 },
  'bare.h264': { container: 'h264', frameCount: 36, playbackRate: null },
  'turned-90.mp4': { width: 48, height: 64, rotation: 90, pixelAspect: 3 / 4 },
  'turned-180.mp4': { width: 64, height: 48, rotation: 180, pixelAspect: 4 / 3 },
  'turned-270.mp4': { width: 48, height: 64, rotation: 270, pixelAspect: 3 / 4 },
  png8: { container: 'image sequence', codec: 'png', bitDepth: 8, playbackRate: null },
  png16: { bitDepth: 16 },
  'png-colour': { bitDepth: 8 },
  tiff16: { codec: 'tiff', bitDepth: 16 },
  bmp: { codec: 'bmp', bitDepth: 8 },
  jpeg: { codec: 'jpeg', bitDepth: 8 },
};

describe.each(Object.entries(TOLD))('%s', (name, told) => {
  const reference = references[name] as Reference;

  it('gives the frames and times the native decoder gives', async () => {
    const source = await open(fixture(name));
    expect(source.info).toMatchObject(told);
    expect(source.info.frameCount).toBe(reference.hashes.length);
    const frames = await framesOf(source);
    expect(frames.map(({ index }) => index)).toEqual(reference.hashes.map((_, i) => i));
    expect(frames.map(({ data }) => hashOf(data))).toEqual(reference.hashes);
    expectSizes(frames, source.info);
    const times = await source.timestamps();
    // An AVI file holds a rate and no times of display: these follow from it.
    const even = reference.hashes.map((_, i) => i / 30);
    if (source.info.playbackRate === null) expect(times).toBeNull();
    else expectTimes(times, reference.timestamps ?? even);
    await source.close();
  });

  it('gives the same frame wherever it is asked for', async () => {
    const source = await open(fixture(name));
    const last = source.info.frameCount - 1;
    for (const index of [last, 0, Math.ceil(last / 2)]) {
      const [frame] = await framesOf(source, { start: index, end: index + 1 });
      expect(hashOf((frame as GreyFrame).data)).toBe(reference.hashes[index]);
    }
    const stepped = await framesOf(source, { start: 1, end: last + 1, step: 2 });
    expect(stepped.map(({ data }) => hashOf(data))).toEqual(
      reference.hashes.filter((_, i) => i % 2 === 1),
    );
    await source.close();
  });
});

const SAMPLES = 'sample-clips';
const samples = (await readdir(SAMPLES)).filter((name) =>
  existsSync(join(SAMPLES, name, 'frames.json')),
);

describe.each(samples)('sample clip %s', (name) => {
  it('gives the frames and times the native decoder gives', async () => {
    const folder = join(SAMPLES, name);
    const reference: Reference = JSON.parse(await readFile(join(folder, 'frames.json'), 'utf8'));
    const clip = (await readdir(folder)).find((file) => /^clip\.\w+$/.test(file));
    const source = await open(clip === undefined ? folder : join(folder, clip));
    const { rotation, frameCount } = source.info;
    expect(frameCount).toBe(reference.hashes.length);
    // The hashes are of the frames as coded.
    const back = ((360 - rotation) % 360) as Rotation;
    let index = 0;
    for await (const { data, width, height } of source.frames({ start: 0, end: frameCount })) {
      expect(hashOf(turnUpright(data, width, height, back))).toBe(reference.hashes[index]);
      index += 1;
    }
    expect(index).toBe(frameCount);
    if (reference.timestamps !== null) expectTimes(await source.timestamps(), reference.timestamps);
  });
});

function expectSizes(frames: readonly GreyFrame[], { width, height, bitDepth }: FootageInfo): void {
  for (const frame of frames) {
    expect(frame).toMatchObject({ width, height, white: 2 ** bitDepth - 1 });
    expect(frame.data).toBeInstanceOf(bitDepth === 8 ? Uint8Array : Uint16Array);
    expect(frame.data).toHaveLength(width * height);
  }
}

function expectTimes(times: Float64Array | null, expected: readonly number[]): void {
  expect(times).toHaveLength(expected.length);
  expected.forEach((time, i) => {
    expect(times?.[i]).toBeCloseTo(time - (expected[0] as number), 12);
  });
}
