import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { footageFile, nodePlatform } from '../../../src/footage/node';
import { openFootage } from '../../../src/footage/open';
import { hashOf } from './frameHashes';

describe('sample', () => {
  it('a', async () => {
    const hashes = JSON.parse(await readFile('sample-clips/a-clean/frames.json', 'utf8'));
    let t = performance.now();
    const s = await openFootage([await footageFile('sample-clips/a-clean/clip.mp4')], nodePlatform);
    console.log(s.info, performance.now() - t);
    t = performance.now();
    const got: string[] = [];
    for await (const f of s.frames({ start: 0, end: s.info.frameCount })) got.push(hashOf(f.data));
    console.log(performance.now() - t);
    expect(got).toEqual(hashes.hashes);
    expect([...((await s.timestamps()) ?? [])]).toEqual(hashes.timestamps);
    const one: string[] = [];
    for await (const f of s.frames({ start: 77, end: 120, step: 20 })) one.push(hashOf(f.data));
    expect(one).toEqual([77, 97, 117].map((i) => hashes.hashes[i]));
  });
});
