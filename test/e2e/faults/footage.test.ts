import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { footageFile, nodePlatform } from '../../../src/footage/node';
import { openFootage } from '../../../src/footage/open';
import {
  clipOf,
  type Film,
  keeps,
  measureButton,
  measured,
  opened,
  openGerman,
  ownFilm,
  rateIsEdited,
  scratchFolder,
  told,
  writeFilm,
} from './steps';

const folder = scratchFolder();

// Inside one picture, so that the file opens and only its decoder comes upon it.
it.each([
  ["the browser's decoder", 'h264', 'damaged.mp4', 6000],
  ['ffmpeg, which patches pictures up', 'motionJpeg', 'damaged.avi', 300],
] as const)(
  'a clip is damaged in its middle, read by %s',
  async (_, sample, name, count) => {
    const bytes = clipOf(sample);
    const middle = bytes.length >> 1;
    bytes.fill(0x55, middle, middle + count);
    await using tool = await openGerman();
    const { page } = tool;
    await opened(page, writeFilm(join(folder, name), bytes, sample));
    await measureButton(page).click();
    await told(page, 'decoderFailed').waitFor();
    expect(await told(page, 'decoderFailed').textContent()).toMatch(
      /Kopieren Sie .*von der Kamera/,
    );
    await rateIsEdited(page);
    expect(await measureButton(page).textContent()).toBe('Messen'); // not again: there is no number
    // The same button measures a whole copy.
    await opened(page, ownFilm(folder));
    await measured(page);
    await rateIsEdited(page);
  },
  600_000,
);

/** The sample as headerless grey, which is read from disk frame by frame and not kept in memory. */
async function greySample(name: string): Promise<Film> {
  const { film } = ownFilm(folder);
  const source = await openFootage([await footageFile(film)], nodePlatform);
  const { width, height, frameCount } = source.info;
  const planes: Uint8Array[] = [];
  for await (const { data } of source.frames({ start: 0, end: frameCount })) {
    planes.push(data as Uint8Array);
  }
  await source.close();
  const raw = { width, height, bits: 8, byteOrder: 'little', skip: 0, gap: 0 };
  return writeFilm(join(folder, name), Buffer.concat(planes), 'motionJpeg', {
    raw,
    fields: 'auto',
  });
}

it('the file is moved away, comes back, and is written over while it is open', async () => {
  const { film, shot } = await greySample('film.gray');
  await using tool = await openGerman();
  const { page } = tool;
  await opened(page, { film, shot });
  const numbers = await measured(page);
  const fails = async () => {
    await measureButton(page).click();
    await told(page, 'unreadable').waitFor();
    expect(await told(page, 'unreadable').textContent()).toContain(
      '„film.gray“ lässt sich nicht mehr lesen',
    );
    await keeps(page, numbers);
  };
  renameSync(film, `${film}.away`);
  await fails();
  renameSync(`${film}.away`, film);
  expect(await measured(page)).toBe(numbers);

  const whole = readFileSync(film);
  writeFileSync(film, Buffer.from(whole).reverse());
  await fails();
  writeFileSync(film, whole);
  await opened(page, { film, shot });
  expect(await measured(page)).toBe(numbers);
}, 900_000);
