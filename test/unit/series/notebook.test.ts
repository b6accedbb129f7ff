import { describe, expect, it } from 'vitest';
import { entryOf, seriesShotOf } from '../../../src/series/entry';
import { summariseGroups } from '../../../src/series/groups';
import { readShots } from '../../../src/series/readShots';
import { seriesShot } from '../../../src/series/seriesShot';
import { NOTEBOOK_FORMAT, validateNotebook } from '../../../src/shot/notebook';
import { validateResult } from '../../../src/shot/parseResult';
import { exampleSeries } from '../../fixtures/series';

const [first, second, third] = exampleSeries(3);
if (!first || !second || !third) throw new Error('three shots');

const file = (path: string, data: unknown) => ({
  path,
  text: async () => (typeof data === 'string' ? data : JSON.stringify(data)),
});

describe('an entry of the notebook', () => {
  it('keeps what statistics need, as if the result were at hand', () => {
    const entry = entryOf(first.shot, first.result, 'A');
    const direct = seriesShot(first.shot, first.result);
    expect(seriesShotOf(entry)).toEqual(
      direct.ok ? { ok: true, value: { ...direct.value, name: 'A' } } : direct,
    );
    expect(entry.conditions.barrelLength).toEqual(first.shot.launcher?.barrelLength);
    expect(entry.conditions.ballMass).toEqual(first.shot.ball.mass);
  });

  it('of a shot that is not reduced says so', () => {
    const entry = entryOf(first.shot, null, 'A');
    expect(entry.exitVelocity).toMatchObject({ unavailable: { code: 'notReduced' } });
    expect(seriesShotOf(entry)).toMatchObject({ ok: false, reason: { code: 'notReduced' } });
  });

  it('without parts of its own counts its whole uncertainty as its own', () => {
    const entry = { ...entryOf(first.shot, first.result, 'A'), own: null, shared: [] };
    expect(seriesShotOf(entry)).toMatchObject({ ok: true, value: { u: 0.5, dof: 20 } });
    const exact = { value: 1, u: 0, interval: [1, 1] as const, coverage: 0.95, dof: null };
    expect(seriesShotOf({ ...entry, exitVelocity: exact })).toMatchObject({
      reason: { code: 'shotWithoutUncertainty' },
    });
  });
});

describe('statistics by group', () => {
  it('leave out what has no speed, by name, and need two shots', () => {
    const entries = [first, second, third].map((one, i) => entryOf(one.shot, one.result, `${i}`));
    const bare = entryOf(first.shot, null, 'bare');
    const [all, one] = summariseGroups([[...entries, bare], [bare]], 0.95);
    expect(all?.shots).toEqual(['0', '1', '2']);
    expect(all?.leftOut.map(({ name }) => name)).toEqual(['bare']);
    expect(all?.report.ok && all.report.value.deviations).toHaveLength(3);
    expect(one?.report).toMatchObject({ ok: false, reason: { code: 'tooFewShots' } });
  });
});

describe('reading many files', () => {
  it('pairs shot and result by name, in their own folder first', async () => {
    const shares: number[] = [];
    const { entries, problems } = await readShots(
      [
        file('one/shot.shot.json', first.shot),
        file('one/shot.result.json', first.result),
        file('two/shot.shot.json', second.shot),
        file('two/shot.result.json', second.result),
        file('three.shot.json', third.shot),
        file('out/three.result.json', third.result),
      ],
      (share) => shares.push(share),
    );
    expect(problems).toEqual([]);
    expect(entries.map(({ path }) => path)).toEqual([
      'one/shot.shot.json',
      'two/shot.shot.json',
      'three.shot.json',
    ]);
    const speeds = entries.map(({ entry }) => entry.exitVelocity);
    expect(speeds).toEqual([first, second, third].map(({ result }) => result.exitVelocity));
    expect(shares).toEqual([1 / 3, 2 / 3, 1]);
  });

  it('tells two shots of one name apart, and names one without a name by its file', async () => {
    const { entries } = await readShots([
      file('a.shot.json', first.shot),
      file('b.shot.json', first.shot),
      file('c.shot.json', { ...first.shot, name: '' }),
    ]);
    const { name } = first.shot;
    expect(entries.map(({ entry }) => entry.name)).toEqual([name, `${name} (2)`, 'c']);
  });

  it('says file by file what cannot be used, and reads the others', async () => {
    const footageOf = (sha256: string) => ({ ...first.shot, footage: { path: 'a.mp4', sha256 } });
    const { entries, problems } = await readShots([
      file('good.shot.json', first.shot),
      file('good.result.json', first.result),
      file('cut.shot.json', '{"format": '),
      file('wind.shot.json', { ...first.shot, wind: 3 }),
      file('alone.result.json', second.result),
      file('bad.shot.json', second.shot),
      file('bad.result.json', { ...second.result, exitVelocity: 'fast' }),
      file('other.shot.json', { ...footageOf('0'.repeat(64)), name: 'other' }),
      file('other.result.json', { ...first.result, footageSha256: 'f'.repeat(64) }),
    ]);
    expect(entries.map(({ path }) => path)).toEqual([
      'good.shot.json',
      'bad.shot.json',
      'other.shot.json',
    ]);
    expect(problems.map(({ path, reason }) => [path, reason.code])).toEqual([
      ['cut.shot.json', 'notJson'],
      ['wind.shot.json', 'invalidShot'],
      ['bad.result.json', 'invalidResult'],
      ['other.result.json', 'resultOfOtherFootage'],
      ['alone.result.json', 'resultWithoutShot'],
    ]);
    for (const { entry } of entries.slice(1)) {
      expect(entry.exitVelocity).toMatchObject({ unavailable: { code: 'notReduced' } });
    }
  });
});

describe('a result file', () => {
  it('is refused where it is none, of another version, or broken', () => {
    const code = (data: unknown) => {
      const outcome = validateResult(data);
      return outcome.ok ? 'accepted' : outcome.reason.code;
    };
    expect(code(JSON.parse(JSON.stringify(first.result)))).toBe('accepted');
    expect(code(first.shot)).toBe('notResult');
    expect(code({ ...first.result, version: 1 })).toBe('otherResultVersion');
    expect(code({ ...first.result, shake: 3 })).toBe('invalidResult');
  });

  it('of version 3 is read as one that does not say what it was made from', () => {
    const { inputs: _, ...old } = { ...first.result, version: 3 };
    expect(validateResult(old)).toEqual({ ok: true, value: { ...first.result, inputs: null } });
  });

  it('is read with the shot it was made from as old as that is', () => {
    const inputs = { sha256: 'ab', shot: { ...first.shot, version: 4 }, heldAgainst: null };
    const read = validateResult({ ...first.result, inputs });
    expect(read.ok && read.value.inputs?.shot).toMatchObject({ version: 5, name: first.shot.name });
  });
});

describe('a notebook file', () => {
  const entries = [first, second].map((one, i) => entryOf(one.shot, one.result, `${i}`));
  const notebook = { format: NOTEBOOK_FORMAT, version: 1, name: 'April', entries };
  const read = (data: unknown) => validateNotebook(JSON.parse(JSON.stringify(data)));

  it('comes back as it was written', () => {
    expect(read(notebook)).toEqual({ ok: true, value: notebook });
  });

  it('is read with shots as old as they are', () => {
    const old = { ...entries[0], shot: { ...first.shot, version: 1 } };
    expect(read({ ...notebook, entries: [old] })).toMatchObject({ ok: true });
  });

  it.each([
    [{ ...notebook, format: 'other' }, 'notNotebook', /"format"/],
    [{ ...notebook, version: 2 }, 'newerNotebook', /version 2/],
    [{ ...notebook, colour: 1 }, 'invalidNotebook', /unknown key "colour"/],
    [{ ...notebook, entries: [entries[0], entries[0]] }, 'invalidNotebook', /named "0"/],
    [
      { ...notebook, entries: [{ ...entries[0], own: { u: -1, dof: null } }] },
      'invalidNotebook',
      /entries\.0\.own/,
    ],
    [null, 'notNotebook', /format/],
  ])('is refused with its place, case %#', (data, code, words) => {
    const outcome = read(data);
    expect(outcome).toMatchObject({ ok: false, reason: { code } });
    expect(outcome.ok ? '' : outcome.reason.message).toMatch(words);
  });
});
