import { describe, expect, it } from 'vitest';
import { indicesOf, spansOf, standApart } from '../../../src/footage/range';

describe('range', () => {
  it('lists its frames', () => {
    expect(indicesOf({ start: 2, end: 5 }, 5)).toEqual([2, 3, 4]);
    expect(indicesOf({ start: 0, end: 8, step: 3 }, 9)).toEqual([0, 3, 6]);
    expect(indicesOf({ start: 4, end: 4 }, 9)).toEqual([]);
  });

  it.each([
    { start: -1, end: 2 },
    { start: 0, end: 10 },
    { start: 3, end: 2 },
    { start: 0, end: 2, step: 0 },
    { start: 0.5, end: 2 },
  ])('refuses what the film does not hold: %o', (range) => {
    expect(() => indicesOf(range, 9)).toThrow(expect.objectContaining({ code: 'badRange' }));
  });
});

describe('spans', () => {
  const everyTenth = Uint8Array.from({ length: 200 }, (_, i) => (i % 10 === 0 ? 1 : 0));

  it('are no longer than asked for and miss nothing', () => {
    const indices = Array.from({ length: 25 }, (_, i) => 3 + i);
    const spans = spansOf(indices, everyTenth, 10);
    expect(spans.flatMap(({ wanted }) => wanted)).toEqual(indices);
    expect(spans.map(({ first, last }) => [first, last])).toEqual([
      [3, 9],
      [10, 19],
      [20, 27],
    ]);
  });

  it('begin where a decoder can start, if there is such a place, and are then apart', () => {
    const indices = Array.from({ length: 60 }, (_, i) => 2 * i);
    const [short, long] = [spansOf(indices, everyTenth, 8), spansOf(indices, everyTenth, 25)];
    expect(short.flatMap(({ wanted }) => wanted)).toEqual(indices);
    expect(standApart(short, everyTenth)).toBe(false);
    expect(long.map(({ first }) => first)).toEqual([0, 20, 40, 60, 80, 100]);
    expect(standApart(long, everyTenth)).toBe(true);
    const every = new Uint8Array(200).fill(1);
    expect(spansOf(indices, every, 8).map(({ first }) => first)).toEqual(
      Array.from({ length: 15 }, (_, i) => 8 * i),
    );
  });

  it('part over a long gap with a key frame in it, and only there', () => {
    expect(spansOf([0, 5, 100, 105], everyTenth, 1000)).toEqual([
      { first: 0, last: 5, wanted: [0, 5] },
      { first: 100, last: 105, wanted: [100, 105] },
    ]);
    const noKeys = new Uint8Array(200);
    expect(spansOf([0, 5, 100], noKeys, 1000)).toHaveLength(1);
  });
});
