import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Result } from '../../src/shot/result';
import type { ShotInput } from '../../src/shot/schema';
import { stillShot } from '../fixtures/stillShot';
import { reduce } from './command';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'setups-'));
});
afterAll(() => rm(folder, { recursive: true }));

const shot = (name: string, moved: number, change?: Partial<ShotInput>) =>
  stillShot(folder, name, moved, change);

describe('shots of one setup in one command', () => {
  it('are set against the first one of it, and only against it', async () => {
    const anew: Partial<ShotInput> = { muzzle: { point: [63, 80], u: 0.5, axis: [1, 0] } };
    const files = await Promise.all([
      shot('first', 0),
      shot('as before', 0.1),
      shot('moved', 3),
      shot('elsewhere', 3, { setupId: 'window' }),
      shot('of no setup', 3, { setupId: null }),
      shot('marked anew', 3, anew),
    ]);
    const output = await reduce(...files);
    const results = output.stdout
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Result);
    const moved = results.map(
      ({ warnings }) => warnings.find(({ code }) => code === 'cameraMoved')?.message ?? null,
    );
    expect(moved).toEqual([null, null, expect.stringContaining('3.0 px'), null, null, null]);
    expect(moved[2]).toContain('shot first');
  }, 240_000);
});
