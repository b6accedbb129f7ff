import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { footageFile, nodePlatform } from '../../../src/footage/node';
import { openFootage } from '../../../src/footage/open';
import { footagePage } from '../../fixtures/breadth/page';
import {
  type Case,
  type Cases,
  errorsOf,
  meanStep,
  rangeDifference,
  readingOf,
  type Seen,
  seenOf,
  toldOf,
} from '../../fixtures/breadth/truth';
import { framesOf } from './reading';

const FOLDER = 'test/fixtures/breadth';
const json = async <T>(name: string): Promise<T> =>
  JSON.parse(await readFile(join(FOLDER, name), 'utf8'));
const all = await json<Cases>('cases.json');
const seen: Seen[] = [];

const inNumberOrder = new Intl.Collator('en', { numeric: true });

async function open(one: Case) {
  const path = join(FOLDER, one.name);
  const names = one.name.includes('.') ? [path] : await readdir(path);
  const paths = names
    .sort(inNumberOrder.compare)
    .map((name) => (name === path ? path : join(path, name)));
  const files = await Promise.all(paths.map(footageFile));
  const source = await openFootage(files, nodePlatform, { reading: readingOf(one) });
  const frames = await framesOf(source);
  return { info: source.info, frames, times: await source.timestamps() };
}

const named = (name: string) => all.cases.find((one) => one.name === name) as Case;

/** What the built-in ffmpeg has no decoder for. */
const NOT_HERE = all.cases.filter(({ codec }) => codec === 'AV1');

describe('films of a disc at known places, read without a browser', () => {
  it.each(NOT_HERE)('$name is refused with what to do', async (one) => {
    await expect(open(one)).rejects.toMatchObject({
      code: 'undecodable',
      message: expect.stringContaining(`"${one.name}" is coded as AV1`),
      remedy: expect.stringContaining('convert it'),
    });
  });

  it.each(all.cases.filter((one) => !NOT_HERE.includes(one)))('$name', async (one) => {
    const { info, frames } = await open(one);
    expect(info).toMatchObject(toldOf(one));
    const errors = errorsOf(all, one, frames);
    expect(errors).toHaveLength(info.frameCount);
    expect(Math.max(...errors)).toBeLessThan(one.within);
    seen.push(seenOf(one, info, errors));
  });

  it('gives a film in limited range the same greys as in full range', async () => {
    const [limited, full] = [await open(named('limited.mp4')), await open(named('full.mp4'))];
    // Half a step of each: 0.5 of 255 and 0.5 of 219.
    expect(rangeDifference(limited, full)).toBeLessThan(1.1);
    expect([limited.frames[0]?.clipsAt, full.frames[0]?.clipsAt]).toEqual([235, undefined]);
  });

  it.each(all.cases.filter(({ fields }) => fields !== null))(
    'gives speed and times by the fields of $name',
    async (one) => {
      const { frames, times } = await open(one);
      const [dx, dy] = meanStep(all, one, frames);
      expect(dx).toBeCloseTo(all.scene.step[0] / 2, 1);
      expect(dy).toBeCloseTo(all.scene.step[1] / 2, 1);
      times?.forEach((time, i) => {
        expect(time).toBeCloseTo(0.02 * i, 3);
      });
    },
  );

  // `npx vitest run … -u` of its like in test/browser, then of this file, writes what follows anew.
  it('sees what it saw when the tables were written', async () => {
    await expect(`${JSON.stringify(seen, null, 2)}\n`).toMatchFileSnapshot(
      '../../fixtures/breadth/seen-node.json',
    );
  });

  it('docs/footage.md shows what both platforms saw', async () => {
    const inChromium = await json<Seen[]>('seen-chromium.json');
    await expect(footagePage(seen, inChromium)).toMatchFileSnapshot('../../../docs/footage.md');
  });
});
