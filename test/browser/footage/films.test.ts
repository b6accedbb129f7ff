import { afterAll, describe, expect, it } from 'vitest';
import type { FootageInfo } from '../../../src/core/film';
import { filesAt, json, pathsIn, type Reference, startDecoder } from './decoding';

// Hashes and times are those of Debian's native ffmpeg 5.1: see the recipe in each frames.json.
const FIXTURES = 'test/fixtures/footage';
const references = await json<Record<string, Reference>>(`${FIXTURES}/frames.json`);

const by = (name: string, message: string) => ({
  name,
  why: expect.objectContaining({ code: 'decoderChosen', message }),
});
const byBrowser = (codec: string) => by('WebCodecs', `This browser decodes ${codec} itself.`);
const byFfmpeg = (why: string) => by('ffmpeg', why);
const images = byFfmpeg(
  'Browsers reduce images to 8 bits a colour; ffmpeg keeps them as they are.',
);

/** Which decoder takes each, with its reason, in Debian's Chromium. */
const TOLD: Readonly<Record<string, Partial<FootageInfo>>> = {
  'uneven.mp4': { decoder: byBrowser('H.264'), container: 'mp4', codec: 'avc' },
  'ten-bits.mp4': { decoder: byBrowser('H.264'), bitDepth: 10 },
  'trimmed.mp4': { decoder: byBrowser('H.264') },
  'late-start.mp4': { decoder: byBrowser('H.264'), playbackRate: 30 },
  'open-groups.mp4': { decoder: byBrowser('H.264') },
  'fragments.mp4': { decoder: byBrowser('H.264') },
  'h264.avi': { decoder: byFfmpeg('No browser reads AVI frame by frame.'), playbackRate: 30 },
  'vp9.webm': { decoder: byBrowser('VP9'), container: 'webm' },
  'av1.mp4': { decoder: byBrowser('AV1') },
  'turned-90.mp4': { decoder: byBrowser('H.264'), rotation: 90, width: 48, pixelAspect: 3 / 4 },
  'turned-180.mp4': { decoder: byBrowser('H.264'), rotation: 180, pixelAspect: 4 / 3 },
  'turned-270.mp4': { decoder: byBrowser('H.264'), rotation: 270, width: 48 },
  'hevc.mp4': { decoder: byFfmpeg('This browser does not decode this HEVC film.') },
  'mjpeg.avi': { decoder: byFfmpeg('No browser decodes Motion-JPEG in AVI.') },
  'prores.mov': { decoder: byFfmpeg('No browser decodes ProRes in MOV.'), bitDepth: 10 },
  'ffv1-16.mkv': { decoder: byFfmpeg('No browser decodes FFV1 in MKV.'), bitDepth: 16 },
  'colour.gif': { decoder: byFfmpeg('No browser decodes GIF frame by frame.') },
  png8: { decoder: images },
  png16: { decoder: images, bitDepth: 16 },
  'png-colour': { decoder: images },
  tiff16: { decoder: images, bitDepth: 16 },
  bmp: { decoder: images },
  jpeg: { decoder: images },
};

const { api, stop } = startDecoder();
afterAll(stop);

describe.each(Object.entries(TOLD))('%s', (name, told) => {
  const reference = references[name] as Reference;

  it('gives the frames and times the native decoder gives', async () => {
    const info = await api.open(await filesAt(`${FIXTURES}/${name}`));
    expect(info).toMatchObject(told);
    expect(info.frameCount).toBe(reference.hashes.length);
    const frames = await api.frames();
    expect(frames.map(({ hash }) => hash)).toEqual(reference.hashes);
    frames.forEach((frame, index) => {
      const { width, height, bitDepth } = info;
      const white = 2 ** bitDepth - 1;
      expect(frame).toMatchObject({ index, width, height, white, deep: bitDepth > 8 });
    });
    const times = await api.timestamps();
    // An AVI file holds a rate and no times of display: these follow from it.
    const even = reference.hashes.map((_, i) => i / 30);
    if (info.playbackRate === null) expect(times).toBeNull();
    else expectTimes(times, reference.timestamps ?? even);
  });

  it('gives the same frame wherever it is asked for', async () => {
    await api.open(await filesAt(`${FIXTURES}/${name}`));
    const last = reference.hashes.length - 1;
    for (const index of [last, 0, Math.ceil(last / 2)]) {
      const [frame] = await api.frames({ start: index, end: index + 1 });
      expect(frame).toMatchObject({ index, hash: reference.hashes[index] });
    }
    const stepped = await api.frames({ start: 1, end: last + 1, step: 2 });
    expect(stepped.map(({ hash }) => hash)).toEqual(reference.hashes.filter((_, i) => i % 2 === 1));
  });
});

const samples = new Set(
  pathsIn('sample-clips').flatMap((path) => /^(.*)\/frames\.json$/.exec(path)?.[1] ?? []),
);

describe.each([...samples])('%s', (folder) => {
  it('gives the frames and times the native decoder gives', async () => {
    const reference = await json<Reference>(`${folder}/frames.json`);
    const clip = pathsIn(folder).find((path) => /\/clip\.\w+$/.test(path));
    const info = await api.open(await filesAt(clip ?? folder));
    expect(info.frameCount).toBe(reference.hashes.length);
    if (reference.timestamps !== null) expectTimes(await api.timestamps(), reference.timestamps);
    if (info.rotation === 0) {
      const frames = await api.frames();
      expect(frames.map(({ hash }) => hash)).toEqual(reference.hashes);
    } else {
      // The hashes are of frames as coded: what ffmpeg's core gives, which the Node tests hold
      // against them, stands for them here.
      const frames = await api.frames();
      await api.open(await filesAt(clip ?? folder), false);
      expect(frames).toEqual(await api.frames());
    }
  });
});

function expectTimes(times: Float64Array | null, expected: readonly number[]): void {
  expect(times).toHaveLength(expected.length);
  expected.forEach((time, i) => {
    expect(times?.[i]).toBeCloseTo(time - (expected[0] as number), 12);
  });
}
