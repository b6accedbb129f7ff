import { describe, expect, it } from 'vitest';
import { sweep } from '../../../src/plan/sweep';
import { PLAN } from './plans';

const question = {
  plan: PLAN,
  trade: { kind: 'pixelRate', pixelsPerSecond: 3e9, mostWidth: 1280, mostHeight: 800 },
  rates: [500, 6000, 24_000],
  fields: [0.1, 0.3, 0.6],
} as const;

describe('the sweep of rate against field of view', () => {
  const shares: number[] = [];
  const swept = sweep(question, (share) => shares.push(share));

  it('tells every cell, rows by field of view, and how far it is', () => {
    expect(swept.cells.map(({ rate, across }) => [rate, across])).toEqual(
      question.fields.flatMap((across) => question.rates.map((rate) => [rate, across])),
    );
    expect(shares).toHaveLength(9);
    expect(shares.at(-1)).toBe(1);
  });

  it('marks the cell of least uncertainty', () => {
    const us = swept.cells.map(({ told }) => (told.ok ? told.value.speedU : Infinity));
    expect(swept.best).toBe(us.indexOf(Math.min(...us)));
    // At 500 frames/s a ball of 160 m/s is seen once or not at all.
    expect(swept.cells[0]?.told.ok).toBe(false);
  });

  it('cuts what does not fit: exposure to the frame, known length to the view', () => {
    const [cell] = sweep({ ...question, rates: [120_000], fields: [0.15] }).cells;
    expect(cell?.plan?.camera.exposure.value).toBeLessThan(1 / 120_000);
    expect(cell?.plan?.scale.length.value).toBeCloseTo(0.135, 12);
  });

  it('stops when it is told to', () => {
    const stop = new AbortController();
    const run = () => sweep(question, (share) => share > 0.3 && stop.abort(), stop.signal);
    expect(run).toThrow();
  });
});
