import { describe, expect, test } from 'vitest';
import { framesToSurvey } from '../../../src/reduction/passage';

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
