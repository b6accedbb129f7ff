import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compactJson } from '../../../src/report/compactJson';

describe('JSON for paper', () => {
  it('holds the same data as plain JSON, whatever it is', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
        expect(JSON.parse(compactJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
    );
  });

  it('leaves out what is undefined, as plain JSON does', () => {
    const long = { a: undefined, b: 'x'.repeat(100) };
    expect(JSON.parse(compactJson(long))).toEqual({ b: long.b });
  });

  it('breaks only what is too long for a line', () => {
    const text = compactJson({ rate: { value: 12000, u: 0.6 }, notes: 'n'.repeat(70) });
    expect(text.split('\n')).toEqual([
      '{',
      '  "rate": {"value":12000,"u":0.6},',
      `  "notes": "${'n'.repeat(70)}"`,
      '}',
    ]);
  });
});
