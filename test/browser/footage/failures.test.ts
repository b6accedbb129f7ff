import { afterAll, describe, expect, it } from 'vitest';
import type { FootageFile } from '../../../src/footage/source';
import { filesAt, startDecoder } from './decoding';

const { api, stop } = startDecoder();
afterAll(stop);

const one = async (path: string): Promise<FootageFile> => (await filesAt(path))[0] as FootageFile;
const cutTo = ({ name, blob }: FootageFile, share: number): FootageFile => ({
  name,
  blob: blob.slice(0, Math.round(blob.size * share)),
});
const text = (name: string, content: string): FootageFile => ({ name, blob: new Blob([content]) });
const FOOTAGE = 'test/fixtures/footage';

describe('footage that cannot be read', () => {
  it.each([
    [
      'notFootage',
      async () => [text('letter.mp4', 'Dear all, it is in the other folder.'.repeat(99))],
    ],
    ['emptyFile', async () => [text('empty.mp4', '')]],
    ['noVideoTrack', async () => filesAt('test/fixtures/sound-only.mp4')],
    ['singleFrame', async () => filesAt('test/fixtures/one-frame.mp4')],
    ['singleFrame', async () => filesAt(`${FOOTAGE}/png8/0.png`)],
    ['truncated', async () => filesAt('test/fixtures/cut-index.mp4')],
    ['truncated', async () => filesAt('test/fixtures/cut-frames.mp4')],
    ['truncated', async () => [cutTo(await one(`${FOOTAGE}/vp9.webm`), 0.6)]],
    ['truncated', async () => [cutTo(await one(`${FOOTAGE}/mjpeg.avi`), 0.6)]],
    [
      'mixedSizes',
      async () => [await one(`${FOOTAGE}/png8/0.png`), await one(`${FOOTAGE}/png16/0.png`)],
    ],
  ])('%s', async (code, files) => {
    expect(await api.failure(await files())).toMatchObject({ code, message: expect.any(String) });
  });

  it('a damaged picture ends in an error, not in a wrong picture', async () => {
    const { name, blob } = await one(`${FOOTAGE}/uneven.mp4`);
    const bytes = new Uint8Array(await blob.arrayBuffer());
    bytes.fill(0x55, bytes.length / 2, bytes.length / 2 + 3000);
    const reason = await api.failure([{ name, blob: new Blob([bytes]) }]);
    expect(reason?.code).toMatch(/decoderFailed|truncated/);
  });
});

/** So many boxes with nothing in them. */
function emptyBoxes(count: number): Blob {
  const view = new DataView(new ArrayBuffer(8 * count));
  for (let i = 0; i < count; i++) {
    view.setUint32(8 * i, 8);
    view.setUint32(8 * i + 4, 0x66726565); // free
  }
  return new Blob([view]);
}

describe('boxes without end', () => {
  const film = one('test/fixtures/breadth/h264.mp4');

  it('are refused behind a film', async () => {
    const { name, blob } = await film;
    const reason = await api.failure([{ name, blob: new Blob([blob, emptyBoxes(100_000)]) }]);
    expect(reason).toMatchObject({ code: 'tooManyParts' });
  });

  it('are refused inside its index', async () => {
    const { name, blob } = await film;
    const inside = emptyBoxes(1_000_000);
    const head = new DataView(new ArrayBuffer(8));
    head.setUint32(0, 8 + inside.size);
    head.setUint32(4, 0x6d6f6f76); // moov
    const kind = blob.slice(0, 32);
    const reason = await api.failure([{ name, blob: new Blob([kind, head, inside]) }]);
    expect(reason?.code).toMatch(/notFootage|noVideoTrack/);
  });
});

describe('cancel', () => {
  it.each(['uneven.mp4', 'mjpeg.avi'])('ends the frames of %s', async (name) => {
    await api.open(await filesAt(`${FOOTAGE}/${name}`));
    const { seen, reason } = await api.cancelAt(5);
    expect(seen).toEqual([0, 1, 2, 3, 4, 5]);
    expect(reason.code).toBe('cancelled');
    const [frame] = await api.frames({ start: 2, end: 3 }); // and it goes on afterwards
    expect(frame?.index).toBe(2);
  });
});

describe('the same in the browser as on the command line', () => {
  it('sound', async () => {
    await api.open(await filesAt(`${FOOTAGE}/click-aac.mp4`));
    const track = await api.audio();
    if (track === null) throw new Error('no sound track');
    const loudest = track.samples.reduce(
      (at, value, i, all) => (Math.abs(value) > Math.abs(all[at] as number) ? i : at),
      0,
    );
    // test/fixtures/footage/make.mjs: a click 0.25 s after the first frame.
    expect(track.firstSampleTime + loudest / track.sampleRate).toBeCloseTo(0.25, 9);
  });

  it('hash', async () => {
    // The one-block example of NIST FIPS 180, "abc". From memory.
    expect(await api.sha256([text('a', 'a'), text('bc', 'bc')])).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });
});
