import { afterAll, expect, it } from 'vitest';
import type { FootageFile } from '../../../src/footage/source';
import { filesAt, startDecoder } from './decoding';

const { api, stop } = startDecoder();
afterAll(stop);

/** A photograph with an Exif note of its orientation right after the start marker. */
async function noted({ name, blob }: FootageFile, orientation: number, little: boolean) {
  const exif = new DataView(new ArrayBuffer(36));
  exif.setUint16(0, 0xffe1);
  exif.setUint16(2, 34);
  [...'Exif\0\0', ...(little ? 'II' : 'MM')].forEach((letter, i) => {
    exif.setUint8(4 + i, letter.charCodeAt(0));
  });
  exif.setUint16(12, 42, little);
  exif.setUint32(14, 8, little);
  exif.setUint16(18, 1, little); // one entry: the orientation, one short number
  exif.setUint16(20, 274, little);
  exif.setUint16(22, 3, little);
  exif.setUint32(24, 1, little);
  exif.setUint16(28, orientation, little);
  return { name, blob: new Blob([blob.slice(0, 2), exif, blob.slice(2)], { type: 'image/jpeg' }) };
}

/** Greys of a photograph as the browser shows it. */
async function shown(blob: Blob) {
  const bitmap = await createImageBitmap(blob, { imageOrientation: 'from-image' });
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  const context = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
  context.drawImage(bitmap, 0, 0);
  const { data } = context.getImageData(0, 0, bitmap.width, bitmap.height);
  const greys = Array.from({ length: data.length / 4 }, (_, i) => data[4 * i + 1] as number);
  return { width: bitmap.width, height: bitmap.height, greys };
}

const pictures = await filesAt('test/fixtures/breadth/jpeg');

it.each([1, 2, 3, 4, 5, 6, 7, 8])(
  'a photograph is turned as the browser turns it: %d',
  async (orientation) => {
    const files = await Promise.all(pictures.map((one, i) => noted(one, orientation, i > 0)));
    const info = await api.open(files);
    const frames = await api.greyFrames();
    expect(frames).toHaveLength(pictures.length);
    for (const [i, frame] of frames.entries()) {
      const { width, height, greys } = await shown((files[i] as FootageFile).blob);
      expect([info.width, info.height, frame.width, frame.height]).toEqual([
        width,
        height,
        width,
        height,
      ]);
      const off = greys.map((grey, at) => Math.abs(grey - (frame.data[at] as number)));
      // Two decoders round alike to a grey value or two; a turn that is wrong misses by a hundred.
      expect(Math.max(...off)).toBeLessThan(6);
    }
  },
);
