import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SOFTWARE_VERSION } from '../../src/core/version';
import { type SeriesFile, seriesOf } from '../../src/headless/series';
import { seriesNotes } from '../../src/headless/seriesNotes';
import type { Result } from '../../src/shot/result';
import { exampleReduction } from '../fixtures/reduction';
import { exampleShot } from '../fixtures/shot';
import { reduce, series as seriesOfResults } from './command';

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
    const out = join(folder, 'results');
    const { code, problems } = await reduce(...shots, '--series', file, '--out', out);
    expect(problems).toEqual(['reduce: 2 reduced, 0 kept, 0 failed.']);
    expect(code).toBe(0);
    const results = ['A', 'B'].map((name) => join(out, `${name}.result.json`));
    const texts = await Promise.all(results.map((result) => readFile(result, 'utf8')));
    const speeds = texts.map((text) => JSON.parse(text).exitVelocity.value);
    const series = JSON.parse(await readFile(file, 'utf8')) as SeriesFile;
    expect(series).toMatchObject({ format: 'exitframe-series', shots: ['A', 'B'] });
    expect(series.mean.value).toBeGreaterThan(Math.min(...speeds));
    expect(series.mean.value).toBeLessThan(Math.max(...speeds));
    // One scale in both: the mean is known no better than it.
    expect(series.sharedSources.map(({ source }) => source)).toContain('known length');
    expect(series.mean.u).toBeGreaterThan(series.sharedU);

    // The same bytes from the results alone, and from results that were kept.
    const written = await readFile(file, 'utf8');
    expect(await seriesOfResults(out)).toEqual({ code: 0, stdout: written, problems: [] });
    const merged = join(folder, 'merged.json');
    expect((await seriesOfResults(...results, '--out', merged)).code).toBe(0);
    expect(await readFile(merged, 'utf8')).toBe(written);
    const again = join(folder, 'again.json');
    expect((await reduce(...shots, '--series', again, '--out', out)).problems).toEqual([
      'reduce: 0 reduced, 2 kept, 0 failed.',
    ]);
    expect(await readFile(again, 'utf8')).toBe(written);

    // What cannot be used is named and left out.
    const twin = join(out, 'C.result.json');
    await writeFile(twin, texts[0] ?? '');
    await writeFile(join(out, 'D.result.json'), (texts[1] ?? '').slice(0, 900));
    const { inputs: _, ...old } = { ...JSON.parse(texts[1] ?? ''), version: 3 };
    await writeFile(join(out, 'E.result.json'), JSON.stringify(old));
    const partly = await seriesOfResults(out, join(folder, 'nowhere'));
    expect(partly.code).toBe(2);
    expect(partly.stdout).toBe(written);
    expect(partly.problems).toEqual([
      expect.stringMatching(/nowhere: .*no such file/),
      expect.stringMatching(/C\.result\.json: .*same shot as .*A\.result\.json/),
      expect.stringMatching(/D\.result\.json: .*cannot be read/),
      expect.stringMatching(/E\.result\.json: .*does not hold the shot/),
    ]);
    expect(await seriesOfResults(twin)).toMatchObject({
      ...{ code: 1, stdout: '', problems: [expect.stringContaining('1 shot cannot show')] },
    });
  }, 240_000);
});

describe('seriesOf', () => {
  const example = exampleShot();
  const reduced = (name: string, change: Partial<Result> = {}) => {
    const named = { ...example, name };
    const { result } = exampleReduction({ shot: named, footageSha256: null });
    return { ...result, ...change, inputs: { sha256: name, shot: named, heldAgainst: null } };
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

describe('notes on results of several commands', () => {
  const shot = (name: string, heldAgainst: string | null, setupId: string | null = 'bench') => ({
    software: SOFTWARE_VERSION,
    inputs: { sha256: name, shot: { ...exampleShot(), name, setupId }, heldAgainst },
  });

  it('are none where each setup has one scene', () => {
    expect(seriesNotes([shot('A', null), shot('B', 'A'), shot('C', 'A')])).toEqual([]);
    expect(seriesNotes([shot('B', 'A'), shot('C', 'A'), shot('D', null, 'window')])).toEqual([]);
    expect(seriesNotes([shot('A', null, null), shot('B', null, null)])).toEqual([]);
  });

  it('tell shots that were not held against the same scene', () => {
    const apart = seriesNotes([shot('A', null), shot('B', null)]);
    expect(apart).toEqual([expect.stringContaining('(A, B)')]);
    const halves = seriesNotes([shot('A', null), shot('B', 'A'), shot('C', 'D')]);
    expect(halves).toEqual([expect.stringContaining('(A, D)')]);
  });

  it('tell results of another version', () => {
    const notes = seriesNotes([shot('A', null), { ...shot('B', 'A'), software: '0.0.9' }]);
    expect(notes).toEqual([expect.stringContaining('0.0.9')]);
  });
});
