import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromCsv, toCsv } from '../../../src/app/notebookCsv';
import { type Estimate, isAvailable } from '../../../src/core/estimate';
import { quantity } from '../../../src/core/quantity';
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

  it('gives back any shot to eleven figures, and what it gave back to the letter', () => {
    const number = fc.double({ noNaN: true, min: 1e-9, max: 1e9 });
    const estimate = fc.record({ value: number, u: fc.oneof(fc.constant(0), number) });
    const condition = fc.option(estimate);
    const none = { unavailable: { code: 'notInTable', message: 'The table states none.' } };
    const reported = (dof: fc.Arbitrary<number | null>) =>
      fc.oneof(
        fc.constant(none),
        fc.tuple(estimate, dof).map(([{ value, u }, freedom]) => quantity(value, u, freedom, 0.95)),
      );
    const name = fc.string({ unit: 'grapheme', minLength: 1 }).filter((one) => one.trim() === one);
    const shot = fc.record({
      name: name.filter((one) => one !== ''),
      notes: fc.string({ unit: 'grapheme' }).filter((one) => one.trim() === one),
      used: fc.boolean(),
      exitVelocity: reported(fc.option(number)),
      lead: reported(fc.constant(null)),
      conditions: fc.record({
        ...{ barrelLength: condition, boreDiameter: condition, ballDiameter: condition },
        ...{ ballMass: condition, residualPressure: condition, sealBurstPressure: condition },
        ...{ airPressure: condition, airTemperature: condition },
      }),
      ...{ shot: fc.constant(null), own: fc.constant(null), shared: fc.constant([]) },
    });
    const shots = fc.uniqueArray(shot, { selector: (one) => one.name, minLength: 1 });
    const near = (read: Estimate | null, from: Estimate | null) => {
      if (read === null || from === null) return expect(read).toBe(from);
      for (const key of ['value', 'u'] as const) {
        expect(Math.abs(read[key] - from[key])).toBeLessThanOrEqual(1e-11 * from[key]);
      }
    };
    fc.assert(
      fc.property(shots, (written) => {
        const text = toCsv(written);
        const { entries: read, unknown } = fromCsv(text);
        expect(unknown).toEqual([]);
        expect(toCsv(read)).toBe(text);
        read.forEach((one, i) => {
          const from = written[i] as (typeof written)[number];
          expect(one).toMatchObject({ name: from.name, notes: from.notes, used: from.used });
          for (const key of Object.keys(from.conditions) as (keyof typeof from.conditions)[]) {
            near(one.conditions[key], from.conditions[key]);
          }
          for (const key of ['exitVelocity', 'lead'] as const) {
            const [back, was] = [one[key], from[key]];
            if (!isAvailable(back) || !isAvailable(was)) expect(back).toEqual(was);
            else {
              near(back, was);
              expect(back.dof).toBe(was.dof);
            }
          }
        });
      }),
    );
  });

  it('is read alike by another reader, with no text that a spreadsheet would run, and comes back', () => {
    const names = ['=1+1', '-2', "'@x", 'plain'];
    const armed = names.map((name, i) => ({
      ...(entries[i % entries.length] as (typeof entries)[number]),
      ...{ name, notes: `+${name}, "so"` },
    }));
    const text = toCsv(armed);
    const rows: Record<string, string>[] = parse(text, { columns: true, record_delimiter: '\r\n' });
    expect(rows.map(({ shot }) => shot)).toEqual(["'=1+1", "'-2", "''@x", 'plain']);
    expect(rows.map(({ notes }) => notes)).toEqual(names.map((name) => `'+${name}, "so"`));
    expect(Number(rows[0]?.['u of exit velocity, m/s'])).toBe(0.5);
    const { entries: read } = fromCsv(text);
    expect(read.map(({ name, notes }) => ({ name, notes }))).toEqual(
      armed.map(({ name, notes }) => ({ name, notes })),
    );
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
