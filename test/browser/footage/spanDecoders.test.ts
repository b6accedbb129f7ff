import { wrap } from 'comlink';
import { afterAll, describe, expect, it } from 'vitest';
import { carryReasons } from '../../../src/protocol/errors';
import type { FilmApi } from '../../../src/protocol/film';

carryReasons();
const worker = new Worker(new URL('../../../workers/film.worker.ts', import.meta.url), {
  type: 'module',
});
const film = wrap<FilmApi>(worker);
afterAll(() => worker.terminate());

const [WIDTH, HEIGHT, FRAMES] = [2048, 1024, 40] as const;

/** 80 MiB of grey, several spans, each frame with a pattern of its own. */
function y4m(frames: number): Blob {
  const text = new TextEncoder();
  const parts: Uint8Array<ArrayBuffer>[] = [
    text.encode(`YUV4MPEG2 W${WIDTH} H${HEIGHT} F30:1 Ip A1:1 Cmono\n`),
  ];
  for (let k = 0; k < frames; k++) {
    const plane = new Uint8Array(WIDTH * HEIGHT).fill(k + 1);
    plane[k] = 255;
    parts.push(text.encode('FRAME\n'), plane);
  }
  return new Blob(parts);
}

async function readAll(range: { start: number; end: number; step?: number }) {
  const got: number[][] = [];
  const run = await film.startRun(range);
  for (;;) {
    const batch = await film.next(run);
    if (batch.length === 0) return got;
    for (const { index, data } of batch) {
      got.push([index, data[index] as number, data[WIDTH * HEIGHT - 1] as number, data.length]);
    }
  }
}

const expected = (indices: readonly number[]) =>
  indices.map((index) => [index, 255, index + 1, WIDTH * HEIGHT]);

describe('a film of frames that stand alone', () => {
  it('comes whole and in order, every so many-th too, though decoded in two threads', async () => {
    const info = await film.open([{ name: 'grey.y4m', blob: y4m(FRAMES) }]);
    expect(info.decoder.name).toBe('ffmpeg');
    expect(info.frameCount).toBe(FRAMES);
    const all = Array.from({ length: FRAMES }, (_, k) => k);
    expect(await readAll({ start: 0, end: FRAMES })).toEqual(expected(all));
    expect(await readAll({ start: 1, end: FRAMES, step: 3 })).toEqual(
      expected(all.filter((k) => k % 3 === 1)),
    );
  });

  it('lets go of a pass at once, and answers for single frames during one', async () => {
    await film.open([{ name: 'grey.y4m', blob: y4m(FRAMES) }]);
    const run = await film.startRun({ start: 0, end: FRAMES });
    const first = await film.next(run);
    expect(first[0]?.index).toBe(0);
    expect((await film.frame(39)).data[39]).toBe(255);
    await film.endRun(run);
    await expect(film.next(run)).rejects.toMatchObject({ code: 'runOver' });
    expect((await film.frame(20)).data[20]).toBe(255);
  });
});
