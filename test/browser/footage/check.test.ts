import { proxy } from 'comlink';
import { afterAll, describe, expect, it } from 'vitest';
import { startWorkforce } from '../../../src/app/workforce';
import { type Reason, reasonOf } from '../../../src/core/reason';
import type { FootageFile } from '../../../src/footage/source';
import { parseShot } from '../../../src/shot/parse';
import { damaged, SAMPLES, type Sample } from '../../fuzz/samples';
import { filesAt, json, pathsIn } from './decoding';

let died: unknown = null;
const { film, reduce, dispose } = startWorkforce((fault) => {
  died = fault;
});
afterAll(() => {
  dispose();
  expect(died).toBeNull();
});

/** Reads a film to its end, then holds it against the second decoder; why it is refused, and by which of the two. */
async function readAndCheck(
  files: readonly FootageFile[],
): Promise<{ by: 'first' | 'second' | null; why: Reason | null }> {
  let by: 'first' | 'second' = 'first';
  try {
    const info = await film.open(files);
    const whole = { start: 0, end: info.frameCount };
    const run = await film.startRun(whole);
    while ((await film.next(run)).length > 0);
    by = 'second';
    await film.check([whole]);
    return { by: null, why: null };
  } catch (error) {
    return { by, why: reasonOf(error) };
  }
}

describe('damage that this browser shows without a word', () => {
  // Mutants of `npm run fuzz` with seed 1: the browser's decoder reads them to their end.
  it.each([
    ['MP4, H.264', [3, 23, 76]],
    ['MOV, H.264', [101, 137]],
    ['MP4, H.264 and AAC sound', [111, 129]],
  ] as const)('is found by the second decoder in %s', async (name, numbers) => {
    const sample = SAMPLES.find((one) => one.name === name) as Sample;
    const files = await filesAt(sample.path);
    for (const number of numbers) {
      const seen = await readAndCheck((await damaged(sample, files, 1, number)).files);
      expect(seen).toMatchObject({ by: 'second', why: { code: 'decoderFailed' } });
    }
  });

  it('in two bytes of a film keeps it from giving a speed', async () => {
    const [clip] = (await filesAt('sample-clips/a-clean/clip.mp4')) as [FootageFile];
    const bytes = new Uint8Array(await clip.blob.arrayBuffer());
    bytes.fill(0, 937_278, 937_280);
    const files = [{ name: clip.name, blob: new Blob([bytes]) }];
    expect((await readAndCheck(files)).by).toBe('second');
    const parsed = parseShot(JSON.stringify(await json('sample-clips/a-clean/a-clean.shot.json')));
    if (!parsed.ok) throw new Error(parsed.reason.message);
    const inputs = {
      ...{ shot: parsed.value, info: await film.open(files), footageSha256: '' },
      ...{ timestamps: await film.timestamps(), audio: null, setupScene: null },
    };
    const reduced = reduce.reduce(
      inputs,
      proxy(() => {}),
    );
    await expect(reduced).rejects.toMatchObject({ code: 'decoderFailed' });
  });
});

describe('undamaged films', () => {
  const films = ['test/fixtures/footage', 'test/fixtures/breadth']
    .flatMap(pathsIn)
    .filter((path) => /\.(mp4|m4v|mov|mkv)$/.test(path));

  it.each(films)('%s passes', async (path) => {
    expect(await readAndCheck(await filesAt(path))).toMatchObject({ by: null, why: null });
  });
});

describe('a check', () => {
  const whole = async () => {
    const info = await film.open(await filesAt('sample-clips/a-clean/clip.mp4'));
    return { start: 0, end: info.frameCount };
  };

  it('is ended on request, and the film goes on being read', async () => {
    const range = await whole();
    const check = film.check([range]);
    const refused = expect(check).rejects.toMatchObject({ code: 'cancelled' });
    await film.endCheck();
    await refused;
    expect((await film.frame(3)).index).toBe(3);
  });

  it('is ended by another one, and by another film', async () => {
    const range = await whole();
    const first = expect(film.check([range])).rejects.toMatchObject({ code: 'cancelled' });
    const second = expect(film.check([range])).rejects.toMatchObject({ code: 'cancelled' });
    await film.open(await filesAt('test/fixtures/breadth/h264.mp4'));
    await Promise.all([first, second]);
  });
});
