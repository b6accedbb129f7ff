import { parse } from 'csv-parse/sync';
import { csvParseRows } from 'd3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvText, unguarded } from '../../../src/core/csv';

/* Written by hand, read back by two independent readers of RFC 4180. */

const READERS = {
  'd3-dsv': (text: string): string[][] => csvParseRows(text),
  'csv-parse': (text: string): string[][] => parse(text, { record_delimiter: '\r\n' }),
};
const NASTY = 'a "b", c\r\n<b>d</b>';

describe.each(Object.entries(READERS))('a sheet as CSV, read by %s', (_, read) => {
  it('keeps every text and ends every line with CR LF (RFC 4180, 2)', () => {
    const text = csvText([
      ['name', 'x, m'],
      [NASTY, 1],
      [null, -2.5e-7],
    ]);
    expect(text).toBe('name,"x, m"\r\n"a ""b"", c\r\n<b>d</b>",1\r\n,-2.5e-7\r\n');
    expect(read(text)).toEqual([
      ['name', 'x, m'],
      [NASTY, '1'],
      ['', '-2.5e-7'],
    ]);
  });

  it('guards what a spreadsheet would take for a formula, and leaves numbers alone', () => {
    const cells = ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\n=1', '＝1', "'=1", 'a=1'];
    const [row] = read(csvText([cells]));
    expect(row).toEqual([...cells.slice(0, -1).map((cell) => `'${cell}`), 'a=1']);
    expect(csvText([[-1.5, 0, -0.000012]])).toBe('-1.5,0,-0.000012\r\n');
  });

  it('gives back any text to the letter once the guard is taken off', () => {
    const text = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.string({ unit: fc.constantFrom('=', "'", '-', '"', ',', '\r', '\n', '\t', 'a') }),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(text, text), { minLength: 1 }), (rows) => {
        expect(read(csvText(rows)).map((row) => row.map(unguarded))).toEqual(rows);
      }),
    );
  });

  it('never gives a text that begins as a formula', () => {
    fc.assert(
      fc.property(fc.constantFrom(...'=+-@\t\r\n＝＋－＠'), fc.string(), (first, rest) => {
        expect(read(csvText([[first + rest]]))[0]?.[0]?.[0]).toBe("'");
      }),
    );
  });
});

it("leaves a text's own apostrophe", () => {
  expect(["'tis", "'", "''a", ''].map(unguarded)).toEqual(["'tis", "'", "''a", '']);
});
