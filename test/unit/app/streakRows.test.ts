import { describe, expect, it } from 'vitest';
import { KeptRows } from '../../../src/app/streakRows';

const row = (frame: number) => Float32Array.of(frame, frame, frame, frame);
const ROW_BYTES = 16;

/** Filled frame by frame, held to so many rows. */
function filled(frames: number, most: number): KeptRows {
  let rows = new KeptRows();
  for (let frame = 0; frame < frames; frame++) {
    rows.set(frame, row(frame));
    rows = rows.bounded(most * ROW_BYTES);
  }
  return rows;
}

describe('rows of a streak image', () => {
  it('are all kept of a short film', () => {
    const rows = filled(10, 10);
    expect([...rows.keys()]).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(rows.bounded(10 * ROW_BYTES)).toBe(rows);
  });

  it('are no more than fit, however long the film, and spread over all of it', () => {
    for (const frames of [11, 100, 12_345]) {
      const rows = filled(frames, 10);
      expect(rows.size).toBeLessThanOrEqual(10);
      expect(rows.size).toBeGreaterThan(4);
      const steps = [...rows.keys()].map((frame, i, all) => frame - (all[i - 1] ?? 0)).slice(1);
      expect(new Set(steps).size).toBe(1);
      expect(rows.get(frames - 1)).toEqual(row([...rows.keys()].at(-1) ?? -1));
    }
  });

  it('stand for the frames behind them, also when they come back from where they were kept', () => {
    const rows = filled(100, 10);
    const back = KeptRows.of(structuredClone<Map<number, Float32Array>>(rows));
    for (let frame = 0; frame < 100; frame++) {
      expect(rows.get(frame)?.[0]).toBe(frame - (frame % 16));
      expect(back.get(frame)).toEqual(rows.get(frame));
    }
  });
});
