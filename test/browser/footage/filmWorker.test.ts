import { proxy, wrap } from 'comlink';
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

it('reads a clip of a lamp beside the film that is open', async () => {
  await film.open(await filesAt('test/fixtures/footage/vp9.webm'));
  const now = await film.sha256();
  const told: number[] = [];
  const files = await filesAt('test/fixtures/footage/uneven.mp4');
  const lamp = await film.readLamp(
    files,
    proxy((share: number) => void told.push(share)),
  );
  expect(lamp.profiles).toHaveLength(lamp.info.frameCount);
  expect(lamp.profiles[0]?.rows).toHaveLength(lamp.info.height);
  expect(lamp.profiles[0]?.columns).toHaveLength(lamp.info.width);
  expect(lamp.timestamps).toHaveLength(lamp.info.frameCount);
  expect(told.at(-1)).toBe(1);
  expect(await film.sha256()).toBe(now);
});

it('opens the next film after one that cannot be read', async () => {
  const broken = [{ name: 'letter.mp4', blob: new Blob(['Dear all']) }];
  const quick = await filesAt('test/fixtures/footage/vp9.webm');
  const [failed, opened] = await Promise.allSettled([film.open(broken), film.open(quick)]);
  expect(failed.status).toBe('rejected');
  expect(opened.status === 'fulfilled' && opened.value.name).toBe('vp9.webm');
});
