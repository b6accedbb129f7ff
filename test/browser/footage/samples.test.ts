import { wrap } from 'comlink';
import { expect, it } from 'vitest';
import clip from '../../../sample-clips/a-clean/clip.mp4?url';
import framesUrl from '../../../sample-clips/a-clean/frames.json?url';
import type { DecodeApi } from './decode.worker';

it('a', async () => {
  const worker = new Worker(new URL('./decode.worker.ts', import.meta.url), { type: 'module' });
  const api = wrap<DecodeApi>(worker);
  const blob = await (await fetch(clip)).blob();
  const frames = await (await fetch(framesUrl)).json();
  const got = await api.read([{ name: 'clip.mp4', blob }]);
  console.log(got.info, got.ms);
  expect(got.hashes).toEqual(frames.hashes);
  expect(got.timestamps).toEqual(frames.timestamps);
});
