import { describe, expect, test } from 'vitest';
import { framesToSurvey, settledBy, without } from '../../../src/reduction/passage';

const activity = (count: number, ...runs: readonly (readonly [number, number])[]) => {
  const isActive = new Uint8Array(count);
  for (const [start, end] of runs) isActive.fill(1, start, end);
  return isActive;
};

describe('frames worth a closer look', () => {
  test('are those around what moves, and the first of the film', () => {
    expect(framesToSurvey(activity(2000, [1000, 1100]), [])).toEqual([
      { start: 0, end: 8 },
      { start: 936, end: 1116 },
    ]);
  });

  test('are one run where those around one thing reach those around the next', () => {
    const ranges = framesToSurvey(activity(2000, [500, 520], [590, 600], [1990, 2000]), []);
    expect(ranges).toEqual([
      { start: 0, end: 8 },
      { start: 436, end: 616 },
      { start: 1926, end: 2000 },
    ]);
  });

  test('have those around a frame that a person named', () => {
    expect(framesToSurvey(activity(2000, [1000, 1100]), [300])).toContainEqual({
      start: 236,
      end: 317,
    });
  });

  test('are all of a film in which nothing seems to move, or nearly everything does', () => {
    expect(framesToSurvey(activity(500), [])).toEqual([{ start: 0, end: 500 }]);
    expect(framesToSurvey(activity(140, [60, 120]), [])).toEqual([{ start: 0, end: 140 }]);
  });
});

describe('what has moved', () => {
  const isActive = activity(2000, [1000, 1050], [1090, 1100], [1300, 1301], [1600, 1601]);
  const settled = Array.from({ length: 2000 }, (_, last) => settledBy(last, isActive));

  test('is told once it has come to rest, with the frames around it', () => {
    expect(settled[1300 + 256]).toEqual([
      { start: 0, end: 8 },
      { start: 936, end: 1116 },
      { start: 1236, end: 1317 },
    ]);
    expect(settled[1600 + 256]).toEqual([...framesToSurvey(isActive, [])]);
    expect(settled.filter((one) => one !== null)).toHaveLength(2);
  });
});

describe('ranges without others', () => {
  const ranges = [
    { start: 0, end: 8 },
    { start: 20, end: 40 },
  ];
  test.each([
    { others: [], left: ranges },
    { others: ranges, left: [] },
    { others: [{ start: 0, end: 100 }], left: [] },
    {
      others: [
        { start: 5, end: 22 },
        { start: 30, end: 31 },
      ],
      left: [
        { start: 0, end: 5 },
        { start: 22, end: 30 },
        { start: 31, end: 40 },
      ],
    },
  ])('$others', ({ others, left }) => {
    expect(without(ranges, others)).toEqual(left);
  });
});
