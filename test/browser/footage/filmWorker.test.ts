import { wrap } from 'comlink';
import { afterAll, expect, it } from 'vitest';
import type { FilmApi } from '../../../src/protocol/film';
import { filesAt } from './decoding';

const worker = new Worker(new URL('../../../workers/film.worker.ts', import.meta.url), {
  type: 'module',
});
const film = wrap<FilmApi>(worker);
afterAll(() => worker.terminate());

it('keeps the film asked for last where one asked for before takes longer to open', async () => {
  // ProRes needs the built-in decoder to load first; the browser reads VP9 at once.
  const slow = await filesAt('test/fixtures/footage/prores.mov');
  const quick = await filesAt('test/fixtures/footage/vp9.webm');
  const openings = [film.open(slow), film.open(quick)];
  const [first, second] = await Promise.all(openings);
  expect([first?.name, second?.name]).toEqual(['prores.mov', 'vp9.webm']);
  const now = await film.sha256();
  await film.open(slow);
  const ofSlow = await film.sha256();
  await film.open(quick);
  expect(now).toBe(await film.sha256());
  expect(now).not.toBe(ofSlow);
});

it('opens the next film after one that cannot be read', async () => {
  const broken = [{ name: 'letter.mp4', blob: new Blob(['Dear all']) }];
  const quick = await filesAt('test/fixtures/footage/vp9.webm');
  const [failed, opened] = await Promise.allSettled([film.open(broken), film.open(quick)]);
  expect(failed.status).toBe('rejected');
  expect(opened.status === 'fulfilled' && opened.value.name).toBe('vp9.webm');
});
