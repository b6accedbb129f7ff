import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inputsOf, programSha256 } from '../../../src/headless/inputs';
import { exampleShot } from '../../fixtures/shot';

const shot = exampleShot();
const scene = {
  shotName: 'A',
  fingerprint: { width: 8, height: 8, block: 8, levels: [4000] },
};

describe('the hash of what a result is made from', () => {
  const first = inputsOf('program', shot, 'footage', scene).sha256;

  it('is the same for the same', () => {
    expect(inputsOf('program', structuredClone(shot), 'footage', scene).sha256).toBe(first);
  });

  it.each([
    ['program', inputsOf('newer', shot, 'footage', scene)],
    ['shot', inputsOf('program', { ...shot, seed: shot.seed + 1 }, 'footage', scene)],
    ['footage', inputsOf('program', shot, 'other', scene)],
    ['scene', inputsOf('program', shot, 'footage', { ...scene, shotName: 'B' })],
    ['lack of a scene', inputsOf('program', shot, 'footage', null)],
  ])('tells another %s', (_what, { sha256 }) => {
    expect(sha256).toMatch(/^[0-9a-f]{64}$/);
    expect(sha256).not.toBe(first);
  });
});

describe('the hash of the program', () => {
  let root: string;
  beforeAll(async () => {
    root = await mkdtemp(join(tmpdir(), 'program-'));
    await mkdir(join(root, 'src/fit'), { recursive: true });
    await mkdir(join(root, 'src/ui'));
    await writeFile(join(root, 'package-lock.json'), '{}');
    await writeFile(join(root, 'src/fit/line.ts'), 'export const slope = 1;');
  });
  afterAll(() => rm(root, { recursive: true }));

  it('tells changed sources and packages, and lets the page change', async () => {
    const first = await programSha256(root);
    await writeFile(join(root, 'src/ui/colour.ts'), 'export const accent = 1;');
    expect(await programSha256(root)).toBe(first);
    await writeFile(join(root, 'src/fit/line.ts'), 'export const slope = 2;');
    const second = await programSha256(root);
    expect(second).not.toBe(first);
    await writeFile(join(root, 'package-lock.json'), '{"packages":{}}');
    expect(await programSha256(root)).not.toBe(second);
  });
});
