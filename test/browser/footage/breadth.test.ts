import { afterAll, describe, expect, it } from 'vitest';
import {
  type Case,
  type Cases,
  errorsOf,
  rangeDifference,
  readingOf,
  type Seen,
  seenOf,
  toldOf,
} from '../../fixtures/breadth/truth';
import { filesAt, json, startDecoder } from './decoding';

const FOLDER = 'test/fixtures/breadth';
const all = await json<Cases>(`${FOLDER}/cases.json`);
const seen: Seen[] = [];
const { api, stop } = startDecoder();
afterAll(stop);

async function open(one: Case) {
  const info = await api.open(await filesAt(`${FOLDER}/${one.name}`), true, readingOf(one));
  return { info, frames: await api.greyFrames() };
}
const named = (name: string) => all.cases.find((one) => one.name === name) as Case;

describe('films of a disc at known places, read in a browser', () => {
  it.each(all.cases)('$name', async (one) => {
    const { info, frames } = await open(one);
    expect(info).toMatchObject(toldOf(one));
    const errors = errorsOf(all, one, frames);
    expect(errors).toHaveLength(info.frameCount);
    expect(Math.max(...errors)).toBeLessThan(one.within);
    seen.push(seenOf(one, info, errors));
  });

  it('gives a film in limited range the same greys as in full range', async () => {
    const [limited, full] = [await open(named('limited.mp4')), await open(named('full.mp4'))];
    expect(rangeDifference(limited, full)).toBeLessThan(1.1);
    expect([limited.frames[0]?.clipsAt, full.frames[0]?.clipsAt]).toEqual([235, undefined]);
  });

  it('sees what it saw when the table was written', async () => {
    await expect(`${JSON.stringify(seen, null, 2)}\n`).toMatchFileSnapshot(
      '../../fixtures/breadth/seen-chromium.json',
    );
  });
});
