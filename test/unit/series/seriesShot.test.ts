import { describe, expect, it } from 'vitest';
import { seriesShot } from '../../../src/series/seriesShot';
import { summariseSeries } from '../../../src/series/summarise';
import type { SeriesShot } from '../../../src/series/types';
import type { BudgetEntry, Result } from '../../../src/shot/result';
import type { Shot } from '../../../src/shot/schema';
import { entry } from '../../../src/uncertainty/budget';
import { exampleReduction } from '../../fixtures/reduction';
import { exampleShot } from '../../fixtures/shot';

const BUDGET: readonly BudgetEntry[] = [
  entry('ball centres', 'A', 0.06, 'px', 1, 14),
  entry('air drag as filmed', 'A', 0.1, '1/m', 0.64, null),
  entry('frame times', 'B', 3e-7, 's', 1.6e5, null, 'rectangular'),
  entry('known length', 'B', 2.5e-4, '1', 40, null),
  entry('ends of the known length', 'B', 1e-3, '1', 40, null),
  entry('recording rate', 'B', 5e-5, '1', -40, null),
  entry('air temperature', 'B', 2, 'K', 1e-4, null),
  entry('something new', 'B', 0.01, 'm/s', 1, null),
];

const resultOf = (shot: Shot, change: Partial<Result> = {}): Result => {
  const { result } = exampleReduction({ shot, footageSha256: null });
  return { ...result, budget: { ...result.budget, exitVelocity: BUDGET }, ...change };
};

function partOf(shot: Shot): SeriesShot {
  const part = seriesShot(shot, resultOf(shot));
  if (!part.ok) throw new Error(part.reason.message);
  return part.value;
}

const FIRST: Shot = { ...exampleShot(), name: '2031-04-17 A', setupId: 'bench' };
const { scale, air } = FIRST;

/** The lines that two shots share. */
function sharedBy(a: Shot, b: Shot): string[] {
  const keys = new Set(partOf(a).shared.map(({ key }) => key));
  return partOf(b)
    .shared.filter(({ key }) => keys.has(key))
    .map(({ source }) => source);
}

describe('seriesShot', () => {
  it("splits a shot's uncertainty into its own and what it may share", () => {
    const { value, u, dof, shared } = partOf(FIRST);
    expect(value).toBe(40.123);
    expect(u).toBeCloseTo(0.1, 12);
    // Welch and Satterthwaite: 0.1^4 / (0.06^4 / 14).
    expect(dof).toBeCloseTo(0.1 ** 4 / (0.06 ** 4 / 14), 9);
    expect(shared.map(({ effect }) => effect)).toEqual([
      expect.closeTo(0.01, 12),
      expect.closeTo(0.04, 12),
      expect.closeTo(-0.002, 12),
      expect.closeTo(2e-4, 12),
      expect.closeTo(0.01, 12),
    ]);
  });

  it('takes every line as shared by shots of one setup with equal inputs', () => {
    expect(sharedBy(FIRST, { ...FIRST, name: '2031-04-17 B' })).toHaveLength(5);
  });

  it('knows the same bar by its length, its ends by their marks', () => {
    const moved: Shot = {
      ...FIRST,
      setupId: 'other bench',
      scale: { ...scale, lengths: scale.lengths.map((one) => ({ ...one, to: [61, 30] as const })) },
    };
    expect(sharedBy(FIRST, moved)).toEqual(['known length', 'recording rate', 'air temperature']);
  });

  it('takes a reading made anew as its own', () => {
    const warmer = { ...air, temperature: { value: 294.1, u: 2 } };
    expect(sharedBy(FIRST, { ...FIRST, air: warmer })).not.toContain('air temperature');
  });

  it('takes marks set anew as their own although no setup is named', () => {
    const unnamed = { ...FIRST, setupId: null };
    expect(sharedBy(unnamed, unnamed)).toHaveLength(5);
    expect(sharedBy(FIRST, unnamed)).not.toContain('ends of the known length');
  });

  it('passes on why a shot has no exit velocity', () => {
    const reason = { code: 'tooFewFrames', message: 'Too few.' };
    const part = seriesShot(FIRST, resultOf(FIRST, { exitVelocity: { unavailable: reason } }));
    expect(part).toEqual({ ok: false, reason });
  });

  it('refuses a shot whose budget leaves it nothing of its own', () => {
    const shared = BUDGET.slice(3);
    const result = resultOf(FIRST);
    const part = seriesShot(FIRST, {
      ...result,
      budget: { ...result.budget, exitVelocity: shared },
    });
    expect(part).toMatchObject({ ok: false, reason: { code: 'shotWithoutUncertainty' } });
  });
});

it('a series of one setup keeps the scale in its mean whatever the number of shots', () => {
  const parts = [...'ABCDEFGHIJKLMNOP'].map((letter) => partOf({ ...FIRST, name: letter }));
  const report = summariseSeries(parts, 0.95);
  if (!report.ok) throw new Error(report.reason.message);
  const { sharedSources, sharedU, randomU } = report.value;
  expect(sharedSources[0]).toMatchObject({ source: 'ends of the known length' });
  expect(sharedU).toBeCloseTo(Math.hypot(...BUDGET.slice(3).map((e) => e.contribution)), 9);
  expect(randomU).toBeCloseTo(0.1 / 4, 9);
});
