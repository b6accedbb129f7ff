import { csvParse, csvParseRows } from 'd3';
import { describe, expect, it } from 'vitest';
import { fromCsv } from '../../../src/app/notebookCsv';
import { csvText } from '../../../src/core/csv';
import { budgetSheet, centresSheet, resultSheet } from '../../../src/report/sheets';
import { exampleReduction } from '../../fixtures/reduction';
import { exampleShot } from '../../fixtures/shot';

const named = (name: string) =>
  exampleReduction({ shot: { ...exampleShot(), name }, footageSha256: 'abc' }).result;
const NASTY = 'a "b", c\r\n<b>d</b>';

describe('the sheets of a result', () => {
  it('state every number once, with its unit in the header, to the last figure', () => {
    const result = { ...named(NASTY), exitTime: { unavailable: { code: 'x', message: '=Why' } } };
    const text = csvText(resultSheet(result));
    const [row, ...more] = csvParse(text);
    expect(more).toEqual([]);
    expect(row?.shot).toBe(NASTY);
    expect(Number(row?.['exit velocity, m/s'])).toBe(40.123);
    expect(Number(row?.['u of exit velocity, m/s'])).toBe(0.052);
    expect(Number(row?.['low end of exit velocity, m/s'])).toBe(40.123 - 0.104);
    expect(row?.['exit time, s']).toBe('');
    expect(row?.['why no exit time']).toBe("'=Why");
    expect(row?.['SHA-256 of the footage']).toBe('abc');
    const [header] = csvParseRows(text);
    expect(new Set(header).size).toBe(header?.length);
  });

  it('can be taken into the notebook', () => {
    const { entries } = fromCsv(csvText(resultSheet(named('2031-04-17 C'))));
    expect(entries).toHaveLength(1);
    expect(entries[0]?.name).toBe('2031-04-17 C');
    expect(entries[0]?.exitVelocity).toMatchObject({ value: 40.123, u: 0.052, dof: 12 });
    expect(entries[0]?.lead).toMatchObject({ value: 1.3e-4, u: 2.4e-5 });
  });

  it('have every centre, those left out with the reason, negative distances as numbers', () => {
    const result = named('a');
    const positions = result.positions.map((one, i) =>
      i === 3
        ? { ...one, s: -0.0125, used: false, why: { code: 'x', message: '-not, "used"' } }
        : one,
    );
    const rows = csvParse(csvText(centresSheet({ ...result, positions })));
    expect(rows).toHaveLength(10);
    expect(Number(rows[3]?.['distance from the muzzle plane, m'])).toBe(-0.0125);
    expect(rows[3]?.['why not used']).toBe('\'-not, "used"');
    expect(rows[4]?.used).toBe('yes');
  });

  it('have the budgets, whose contributions add up to the uncertainty they are of', () => {
    const result = named('a');
    const rows = csvParse(csvText(budgetSheet(result)));
    expect(rows.map(({ of: what, source }) => `${what}: ${source}`)).toEqual([
      'exit velocity: fit',
      'exit velocity: known length',
    ]);
    const sum = Math.hypot(...rows.map((row) => Number(row['contribution, m/s or s'])));
    expect(sum).toBeCloseTo(Math.hypot(0.04, 0.01), 12);
  });
});
