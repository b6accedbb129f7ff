import { describe, expect, it } from 'vitest';
import { fromCsv, toCsv } from '../../../src/app/notebookCsv';
import { isAvailable } from '../../../src/core/estimate';
import { reasonOf } from '../../../src/core/reason';
import { entryOf } from '../../../src/series/entry';
import { exampleSeries } from '../../fixtures/series';

const entries = exampleSeries(3).map(({ shot, result }, i) => ({
  ...entryOf(shot, result, `shot ${i + 1}`),
  notes: i === 1 ? 'second roll, "thin",\r\nfrom the left' : '',
  used: i !== 2,
}));
const HEAD = 'shot,"exit velocity, m/s","u of exit velocity, m/s"';
const problem = (text: string) => {
  try {
    fromCsv(text);
  } catch (error) {
    return reasonOf(error);
  }
  throw new Error('accepted');
};

describe('a table of shots', () => {
  it('has units in its header row, and lines, commas and quotes as RFC 4180 says', () => {
    const [header = '', ...rest] = toCsv(entries).split('\r\n');
    expect(header).toMatch(
      /^shot,counted,"exit velocity, m\/s","u of exit velocity, m\/s","lead, ms"/,
    );
    expect(header).toContain('"air temperature, K"');
    expect(rest.join('\r\n')).toContain('"second roll, ""thin"",\r\nfrom the left"');
    expect(toCsv(entries).endsWith('\r\n')).toBe(true);
  });

  it('gives back what was written, but for what a table cannot hold', () => {
    const { entries: read, unknown } = fromCsv(toCsv(entries));
    expect(unknown).toEqual([]);
    expect(read.map(({ name, notes, used }) => ({ name, notes, used }))).toEqual(
      entries.map(({ name, notes, used }) => ({ name, notes, used })),
    );
    read.forEach((one, i) => {
      const from = entries[i];
      if (from === undefined || !isAvailable(one.exitVelocity) || !isAvailable(from.exitVelocity)) {
        throw new Error('no speed');
      }
      expect(one.exitVelocity.value).toBeCloseTo(from.exitVelocity.value, 9);
      expect([one.exitVelocity.u, one.exitVelocity.dof]).toEqual([0.5, 20]);
      expect(one.conditions.residualPressure?.value).toBeCloseTo(
        from.conditions.residualPressure?.value ?? 0,
        9,
      );
      expect(one).toMatchObject({ shot: null, own: null, shared: [] });
    });
  });

  it('takes columns in any order and unit, and leaves out those it does not know', () => {
    const { entries: read, unknown } = fromCsv(
      [
        '\uFEFF"u of exit velocity, km/h","exit velocity, km/h",room,"barrel length, mm","u of barrel length, mm",shot,"air temperature, °C","u of air temperature, °C"',
        '3.6,360,north,1400,1,A,20,0.5',
        '3.6,324,,,,B,,',
        '',
      ].join('\n'),
    );
    expect(unknown).toEqual(['room']);
    expect(read).toHaveLength(2);
    const [a, b] = read;
    expect(a?.exitVelocity).toMatchObject({ u: expect.closeTo(1, 12), dof: null });
    expect(isAvailable(a?.exitVelocity ?? { unavailable: { code: '', message: '' } })).toBe(true);
    expect(a?.conditions.barrelLength?.value).toBeCloseTo(1.4, 12);
    expect(a?.conditions.airTemperature).toEqual({ value: 293.15, u: 0.5 });
    expect(b?.conditions.barrelLength).toBeNull();
    expect(b?.lead).toMatchObject({ unavailable: { code: 'notInTable' } });
  });

  it('an interval is that of Student (t of 97.5 % at 4 degrees of freedom: 2.776)', () => {
    const { entries: read } = fromCsv(
      `${HEAD},degrees of freedom of exit velocity\nA,100,1,4\nB,90,1,\n`,
    );
    expect(read.map(({ exitVelocity }) => exitVelocity)).toMatchObject([
      { interval: [expect.closeTo(97.224, 3), expect.closeTo(102.776, 3)] },
      { interval: [expect.closeTo(88.04, 2), expect.closeTo(91.96, 2)] },
    ]);
  });

  it.each([
    ['', 'csvEmpty', /no row/],
    [`${HEAD}\n`, 'csvEmpty', /no row/],
    ['name,"exit velocity, m/s"\nA,1\n', 'csvColumnMissing', /"shot"/],
    ['shot,"exit velocity, m/s"\nA,1\n', 'csvColumnMissing', /"u of exit velocity"/],
    [`${HEAD},shot\nA,1,1,B\n`, 'csvColumnTwice', /"shot"/],
    ['shot,exit velocity,"u of exit velocity, m/s"\nA,1,1\n', 'csvUnit', /states no unit/],
    [`${HEAD},"ball mass, kPa"\nA,1,1,3\n`, 'csvUnit', /"kPa"/],
    [`${HEAD}\nA,1\n`, 'csvRowLength', /Row 2 has 2 cells, the header 3/],
    [`${HEAD}\nA,1,1\n"B,2,1\n`, 'csvRowLength', /Row 3 has 1 cells/],
    [`${HEAD}\nA,1,1\nB,"181,3",1\n`, 'csvNumber', /Row 3, column "exit velocity, m\/s": "181,3"/],
    [`${HEAD}\nA,Infinity,1\n`, 'csvNumber', /"Infinity"/],
    [`${HEAD}\nA,181,\n`, 'csvNoUncertainty', /Row 2: the exit velocity/],
    [`${HEAD}\nA,181,-1\n`, 'csvNoUncertainty', /Row 2/],
    [`${HEAD}\n,181,1\n`, 'csvNoName', /Row 2/],
    [`${HEAD}\nA,181,1\nA,182,1\n`, 'csvNameTwice', /Row 3.*"A"/],
    [`${HEAD},degrees of freedom of exit velocity\nA,181,1,0\n`, 'csvNumber', /degrees of freedom/],
  ])('refuses %j with its place', (text, code, words) => {
    expect(problem(text)).toMatchObject({
      code,
      message: expect.stringMatching(words),
      remedy: expect.any(String),
    });
  });
});
