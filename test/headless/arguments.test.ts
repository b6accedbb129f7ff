import { describe, expect, it } from 'vitest';
import { readArguments, resultName } from '../../src/headless/arguments';

const order = (...args: string[]) => {
  const read = readArguments(args);
  return read.ok ? read.value : read.reason.message;
};

describe('arguments', () => {
  it('takes shots and a folder in any order', () => {
    const wanted = {
      kind: 'reduce',
      shots: ['a.shot.json', 'b.shot.json'],
      out: 'results',
      series: null,
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

  it('asks for help whatever else is given', () => {
    expect(order('a.shot.json', '--help')).toEqual({ kind: 'help' });
  });

  it.each([
    ['nothing', [], 'No shot file'],
    ['an unknown option', ['a.shot.json', '--fast'], '--fast'],
    ['a folder without a name', ['a.shot.json', '--out'], '--out'],
    ['two shots of one name', ['x/a.shot.json', 'y/a.shot.json', '--out', 'z'], 'a.result.json'],
  ])('refuses %s', (_what, args, said) => {
    expect(order(...args)).toContain(said);
  });

  it('names results after their shots', () => {
    expect(resultName('clips/2031-04-17 C.shot.json')).toBe('2031-04-17 C.result.json');
    expect(resultName('plain.json')).toBe('plain.result.json');
  });
});
