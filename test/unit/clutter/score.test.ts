import { describe, expect, it } from 'vitest';
import type { Position, Result } from '../../../src/shot/result';
import { clutter } from '../../validate/clutter';
import { scoreResult } from '../../validate/clutter/score';

const truth = Array.from({ length: 10 }, (_, frame) => ({
  at: [10 * frame, 50] as const,
  visible: frame === 0 ? 0.3 : 1,
  whole: frame < 8,
}));
const film = { kinds: ['haze', 'post'] as const, truth, brokenFrom: 8 };

const position = (frame: number, change: Partial<Position> = {}): Position => ({
  frame,
  time: frame,
  x: 10 * frame + 0.3,
  y: 50.4,
  ux: 0.1,
  uy: 0.1,
  cov: 0,
  s: 0,
  us: 0,
  visible: 1,
  shift: [0, 0],
  used: true,
  manual: false,
  why: null,
  ...change,
});
const refused = { x: null, y: null, used: false, why: { code: 'noBall', message: 'None.' } };
const scored = (positions: Position[], breakUp: Result['breakUp'] = null) =>
  scoreResult(film, { positions, breakUp });
const whole = [1, 2, 3, 4, 5, 6, 7];

describe('scoreResult', () => {
  it('asks for frames with half of a whole ball in view', () => {
    const score = scored(whole.map((frame) => position(frame)));
    expect(score).toMatchObject({ due: 7, accepted: 7, missed: [], wrong: [], afterBreak: [] });
    expect(score.worst).toBeCloseTo(0.5, 12);
  });

  it('names refused frames with the reason, and frames not looked at', () => {
    const { accepted, missed } = scored([position(1), position(2, refused), position(3)]);
    expect(accepted).toBe(2);
    expect(missed[0]).toEqual({ frame: 2, why: 'noBall' });
    expect(missed[1]).toEqual({ frame: 4, why: 'notLookedAt' });
  });

  it('counts an accepted position that is off, wherever the ball is, and one of a broken ball', () => {
    const { wrong, afterBreak, worst } = scored([position(0, { x: 2 }), position(5), position(9)]);
    expect(wrong.map(({ frame }) => frame)).toEqual([0]);
    expect(worst).toBeCloseTo(Math.hypot(2, 0.4), 12);
    expect(afterBreak).toEqual([9]);
  });

  it('lets a position stand that only lies behind the muzzle', () => {
    const behind = { used: false, why: { code: 'beforeExit', message: 'Still inside.' } };
    const outlier = { used: false, why: { code: 'outlier', message: 'Off the path.' } };
    expect(scored([position(1, behind), position(2, outlier)]).accepted).toBe(1);
  });
});

describe('the class of hard films', () => {
  const passes = (positions: Position[]) =>
    clutter.conclude([scored(positions)]).rows.map(({ passed }) => passed);

  it('passes where all is well and fails each row by itself', () => {
    const all = whole.map((frame) => position(frame));
    expect(passes(all)).toEqual([true, true, true, true, true, true]);
    expect(passes([...all.slice(1), position(1, { x: 13 })])).toEqual([
      false,
      false,
      true,
      true,
      true,
      true,
    ]);
    expect(passes([...all, position(8)])).toEqual([true, true, false, true, true, true]);
    expect(passes(all.slice(2))).toEqual([true, true, true, false, true, true]);
  });

  it('counts break-ups told in time, and alarms without one', () => {
    const reason = { code: 'brokenUp', message: 'In pieces.' };
    const rowsOf = (brokenFrom: number | null, frame: number) => {
      const { rows } = clutter.conclude([
        { ...scored([position(1)], { frame, reason }), brokenFrom },
      ]);
      return [rows.at(-2)?.value, rows.at(-1)?.passed];
    };
    expect(rowsOf(8, 9)).toEqual([100, true]);
    expect(rowsOf(8, 5)).toEqual([0, true]);
    expect(rowsOf(null, 5)).toEqual([0, false]);
  });

  it('tells of each kind', () => {
    const { text } = clutter.conclude([scored(whole.map((frame) => position(frame)))]);
    expect(text).toContain('haze 7 of 7 (0.50 px)');
    expect(text).not.toContain('flicker');
  });
});
