import { afterAll, expect, it } from 'vitest';
import type { FootageFile } from '../../../src/footage/source';
import { exifNotes, pngWith } from '../../fixtures/exif';
import { filesAt, startDecoder } from './decoding';

const { api, stop } = startDecoder();
afterAll(stop);

/** A photograph with Exif notes right after the start marker. */
function jpegWith(jpeg: Blob, notes: Uint8Array<ArrayBuffer>): Blob {
  const head = new Uint8Array([0xff, 0xe1, 0, 8 + notes.length]);
  const parts = [jpeg.slice(0, 2), head, new TextEncoder().encode('Exif\0\0'), notes];
  return new Blob([...parts, jpeg.slice(2)], { type: 'image/jpeg' });
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

const KINDS = {
  jpeg: { folder: 'jpeg', noted: jpegWith },
  png: { folder: 'png-8', noted: pngWith },
} as const;

it.each(
  (['jpeg', 'png'] as const).flatMap((kind) =>
    [1, 2, 3, 4, 5, 6, 7, 8].map((orientation) => [kind, orientation] as const),
  ),
)('a %s picture is turned as the browser turns it: %d', async (kind, orientation) => {
  const { folder, noted } = KINDS[kind];
  const pictures = await filesAt(`test/fixtures/breadth/${folder}`);
  const files: FootageFile[] = await Promise.all(
    pictures.map(async ({ name, blob }, i) => ({
      name,
      blob: await noted(blob, exifNotes(orientation, i > 0)),
    })),
  );
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
});
