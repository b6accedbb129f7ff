import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type SeriesFile, seriesOf } from '../../src/headless/series';
import type { Result } from '../../src/shot/result';
import { exampleReduction } from '../fixtures/reduction';
import { exampleShot } from '../fixtures/shot';
import { reduce } from './command';

const CLIP = 'sample-clips/d-mjpeg';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'series-'));
});
afterAll(() => rm(folder, { recursive: true }));

/** A shot of the sample's film under another name, its muzzle marked a little elsewhere. */
async function shot(name: string, moved: number): Promise<string> {
  const stated = JSON.parse(await readFile(`${CLIP}/d-mjpeg.shot.json`, 'utf8'));
  const { muzzle, footage } = stated;
  const file = join(folder, `${name}.shot.json`);
  const point = [muzzle.point[0] + moved, muzzle.point[1]];
  await writeFile(
    file,
    JSON.stringify({
      ...stated,
      name,
      muzzle: { ...muzzle, point },
      footage: { ...footage, path: resolve(CLIP, footage.path) },
    }),
  );
  return file;
}

describe('--series', () => {
  it('writes what the shots say together', async () => {
    const file = join(folder, 'series.json');
    const shots = await Promise.all([shot('A', 1), shot('B', -1)]);
    const { code, stdout, problems } = await reduce(...shots, '--series', file);
    expect(problems).toEqual([]);
    expect(code).toBe(0);
    const speeds = stdout
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line).exitVelocity.value);
    const series = JSON.parse(await readFile(file, 'utf8')) as SeriesFile;
    expect(series).toMatchObject({ format: 'exitframe-series', shots: ['A', 'B'] });
    expect(series.mean.value).toBeGreaterThan(Math.min(...speeds));
    expect(series.mean.value).toBeLessThan(Math.max(...speeds));
    // One scale in both: the mean is known no better than it.
    expect(series.sharedSources.map(({ source }) => source)).toContain('known length');
    expect(series.mean.u).toBeGreaterThan(series.sharedU);
  }, 240_000);
});

describe('seriesOf', () => {
  const example = exampleShot();
  const reduced = (name: string, change: Partial<Result> = {}) => {
    const named = { ...example, name };
    const { result } = exampleReduction({ shot: named, footageSha256: null });
    return { shot: named, result: { ...result, ...change } };
  };
  const reason = { code: 'tooFewFrames', message: 'Too few.' };

  it('leaves shots without an exit velocity out and says why', () => {
    const without = reduced('B', { exitVelocity: { unavailable: reason } });
    const series = seriesOf([reduced('A'), without, reduced('C')]);
    if (!series.ok) throw new Error(series.reason.message);
    expect(series.value.shots).toEqual(['A', 'C']);
    expect(series.value.leftOut).toEqual([{ shot: 'B', reason }]);
  });

  it('says why there is none', () => {
    expect(seriesOf([reduced('A')])).toMatchObject({ ok: false, reason: { code: 'tooFewShots' } });
  });
});
