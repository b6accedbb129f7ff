import { describe, expect, test } from 'vitest';
import type { FrameRange } from '../../../src/core/film';
import type { GreyFrame } from '../../../src/core/frame';
import { holdFrames } from '../../../src/reduction/heldFrames';

const BYTES = 4;
const frameOf = (index: number): GreyFrame => ({
  ...{ index, width: 2, height: 2, white: 255 },
  data: Uint8Array.of(index % 256, 1, 2, 3),
});

/** A film that counts what is decoded of it. */
function countedFilm() {
  const decoded: number[] = [];
  const done: number[] = [];
  return {
    ...{ decoded, done: ({ index }: GreyFrame) => void done.push(index), given: done },
    async *frames({ start, end, step = 1 }: FrameRange): AsyncGenerator<GreyFrame> {
      for (let index = start; index < end; index += step) {
        decoded.push(index);
        yield frameOf(index);
      }
    },
  };
}

async function read(frames: AsyncIterable<GreyFrame>): Promise<number[]> {
  const seen: number[] = [];
  for await (const { index, data } of frames) {
    expect(data[0]).toBe(index % 256);
    seen.push(index);
    // As handing it to another thread does.
    structuredClone(data, { transfer: [data.buffer] });
  }
  return seen;
}

const upTo = (start: number, end: number) =>
  Array.from({ length: end - start }, (_, i) => start + i);

/** A film of 400 frames gone through once, something moving in those from 200 up to 220. */
function watched(mostBytes?: number) {
  const film = countedFilm();
  const held = holdFrames(film, mostBytes);
  for (let i = 0; i < 400; i++) held.watch(frameOf(i), i >= 200 && i < 220);
  return { film, held };
}

describe('held frames', () => {
  test('are those in which something moves and those around them, however often their memory is taken', async () => {
    const { film, held } = watched();
    expect(await read(held.frames({ start: 136, end: 236 }))).toEqual(upTo(136, 236));
    expect(await read(held.frames({ start: 198, end: 205 }))).toEqual(upTo(198, 205));
    expect(await read(held.frames({ start: 200, end: 206, step: 2 }))).toEqual([200, 202, 204]);
    expect(film.decoded).toEqual([]);
  });

  test('are filled up by decoding what lies between and beside them, in order', async () => {
    const { film, held } = watched();
    expect(await read(held.frames({ start: 130, end: 240 }))).toEqual(upTo(130, 240));
    expect(film.decoded).toEqual([...upTo(130, 136), ...upTo(236, 240)]);
  });

  test('are no more than may be: those that move before those that only come before them', async () => {
    const { film, held } = watched(30 * BYTES);
    expect(await read(held.frames({ start: 136, end: 236 }))).toEqual(upTo(136, 236));
    expect(film.decoded).toHaveLength(100 - 30);
    const few = watched(5 * BYTES);
    expect(await read(few.held.frames({ start: 190, end: 230 }))).toEqual(upTo(190, 230));
    expect(few.film.decoded).toHaveLength(40 - 5);
  });

  test('are given back when they are let go, the others at once, each of them one time', async () => {
    const { film, held } = watched();
    expect(film.given).toEqual([...upTo(0, 136), ...upTo(236, 400 - 64)]);
    held.letGo();
    expect(film.given.toSorted((a, b) => a - b)).toEqual(upTo(0, 400));
    expect(await read(held.frames({ start: 200, end: 203 }))).toEqual(upTo(200, 203));
    expect(film.decoded).toEqual(upTo(200, 203));
    const few = watched(5 * BYTES);
    few.held.letGo();
    expect(few.film.given.toSorted((a, b) => a - b)).toEqual(upTo(0, 400));
  });
});
