import { expect, test } from 'vitest';
import type { FrameRange } from '../../../src/core/film';
import type { GreyFrame } from '../../../src/core/frame';
import { holdFrames } from '../../../src/reduction/heldFrames';

/** A film that counts what is decoded of it. */
function countedFilm() {
  const decoded: number[] = [];
  return {
    decoded,
    async *frames({ start, end }: FrameRange): AsyncGenerator<GreyFrame> {
      for (let index = start; index < end; index++) {
        decoded.push(index);
        yield { index, width: 2, height: 2, data: Uint8Array.of(index, 1, 2, 3), white: 255 };
      }
    },
  };
}

async function read(frames: AsyncIterable<GreyFrame>): Promise<number[]> {
  const seen: number[] = [];
  for await (const { data } of frames) {
    seen.push(data[0] as number);
    // As handing it to another thread does.
    structuredClone(data, { transfer: [data.buffer] });
  }
  return seen;
}

test('frames that are held are not decoded again, however often their memory is taken', async () => {
  const film = countedFilm();
  const held = holdFrames(film);
  expect(await read(held.frames({ start: 10, end: 20 }))).toHaveLength(10);
  expect(await read(held.frames({ start: 12, end: 15 }))).toEqual([12, 13, 14]);
  expect(await read(held.frames({ start: 12, end: 18, step: 2 }))).toEqual([12, 14, 16]);
  expect(film.decoded).toHaveLength(10);
});

test('a range of which something is missing is decoded, and no more is held than may be', async () => {
  const film = countedFilm();
  const held = holdFrames(film, 5 * 4);
  await read(held.frames({ start: 0, end: 10 }));
  expect(await read(held.frames({ start: 0, end: 5 }))).toEqual([0, 1, 2, 3, 4]);
  expect(film.decoded).toHaveLength(10);
  expect(await read(held.frames({ start: 4, end: 7 }))).toEqual([4, 5, 6]);
  expect(film.decoded.slice(10)).toEqual([4, 5, 6]);
});
