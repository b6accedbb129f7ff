import { describe, expect, it } from 'vitest';
import { readReduceArguments, readSeriesArguments } from '../../src/headless/arguments';
import { resultName } from '../../src/headless/resultFiles';

const order = (...args: string[]) => {
  const read = readReduceArguments(args);
  return read.ok ? read.value : read.reason.message;
};

describe('arguments', () => {
  it('takes shots and a folder in any order', () => {
    const wanted = {
      shots: ['a.shot.json', 'b.shot.json'],
      out: 'results',
      series: null,
      jobs: null,
      again: false,
      setupFrom: [],
    };
    expect(order('a.shot.json', '--out', 'results', 'b.shot.json')).toEqual(wanted);
    expect(order('--out=results', 'a.shot.json', 'b.shot.json')).toEqual(wanted);
  });

  it('prints without a folder', () => {
    expect(order('a.shot.json')).toMatchObject({ shots: ['a.shot.json'], out: null });
  });

  it('takes a file for the series', () => {
    expect(order('a.shot.json', 'b.shot.json', '--series', 's.json')).toMatchObject({
      series: 's.json',
    });
  });

  it('takes how many at a time, from where, and whether again', () => {
    const given = ['--jobs', '3', '--again', '--setup-from', 'x.json', '--setup-from', 'y.json'];
    expect(order('a.shot.json', '--out', 'r', ...given)).toMatchObject({
      ...{ jobs: 3, again: true, setupFrom: ['x.json', 'y.json'] },
    });
  });

  it('asks for help whatever else is given', () => {
    expect(order('a.shot.json', '--help')).toBe('help');
  });

  it.each([
    ['nothing', [], 'No shot file'],
    ['an unknown option', ['a.shot.json', '--fast'], '--fast'],
    ['a folder without a name', ['a.shot.json', '--out'], '--out'],
    ['no jobs', ['a.shot.json', '--jobs', '0'], '--jobs'],
    ['half a job', ['a.shot.json', '--jobs', '1.5'], '1.5'],
    ['jobs in words', ['a.shot.json', '--jobs', 'all'], 'all'],
    ['again without a folder', ['a.shot.json', '--again'], '--out'],
    ['two shots of one name', ['x/a.shot.json', 'y/a.shot.json', '--out', 'z'], 'a.result.json'],
  ])('refuses %s', (_what, args, said) => {
    expect(order(...args)).toContain(said);
  });

  it('names results after their shots', () => {
    expect(resultName('clips/2031-04-17 C.shot.json')).toBe('2031-04-17 C.result.json');
    expect(resultName('plain.json')).toBe('plain.result.json');
  });
});

describe('arguments of the series', () => {
  it('are results and folders, and where to', () => {
    expect(readSeriesArguments(['results', 'a.result.json', '--out', 's.json'])).toEqual({
      ...{ ok: true, value: { results: ['results', 'a.result.json'], out: 's.json' } },
    });
    expect(readSeriesArguments([])).toMatchObject({ ok: false, reason: { code: 'usage' } });
  });
});
