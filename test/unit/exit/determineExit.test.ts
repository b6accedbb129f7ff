import { describe, expect, it } from 'vitest';
import { budgetExit, determineExit } from '../../../src/exit/determineExit';
import type { ExitReport } from '../../../src/exit/exitReport';
import type { ExitOptions, FlightPoint } from '../../../src/exit/types';
import { HIGH_SPEED, simulate } from './shots';

const OPTIONS: ExitOptions = { model: 'auto', robust: true, coverage: 0.95, seed: 1 };
const { points, shared, exitTime } = simulate(HIGH_SPEED, 3);
const reportOf = (
  used: readonly FlightPoint[] = points,
  options: Partial<ExitOptions> = {},
  inputs = shared,
): ExitReport => {
  const outcome = determineExit(used, inputs, { ...OPTIONS, ...options });
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value;
};
const report = reportOf();

describe('determineExit', () => {
  it('covers the true speed and time of a shot', () => {
    const { exitVelocity } = report;
    expect(exitVelocity.interval[0]).toBeLessThan(180);
    expect(exitVelocity.interval[1]).toBeGreaterThan(180);
    expect(report.exitTime.interval[0]).toBeLessThan(exitTime);
    expect(report.exitTime.interval[1]).toBeGreaterThan(exitTime);
    expect(exitVelocity.u / exitVelocity.value).toBeLessThan(0.003);
  });

  it('repeats to the last bit', () => {
    const again = reportOf();
    expect(again.exitVelocity).toEqual(report.exitVelocity);
    expect(again.monteCarlo).toEqual(report.monteCarlo);
  });

  it('has a budget that adds up to u, each shared source in it', () => {
    const squares = report.budget.reduce((sum, { contribution }) => sum + contribution ** 2, 0);
    expect(Math.sqrt(squares)).toBeCloseTo(report.exitVelocity.u, 12);
    const sources = report.budget.map(({ source }) => source);
    for (const { source } of [...shared.scaleSources, ...shared.clockSources]) {
      expect(sources).toContain(source);
    }
  });

  it('has the speed go with the scale and against the clock', () => {
    const of = (source: string) => report.budget.find((entry) => entry.source === source);
    const v = report.exitVelocity.value;
    expect((of('known length')?.sensitivity ?? 0) / v).toBeCloseTo(1, 2);
    expect((of('recording rate')?.sensitivity ?? 0) / v).toBeCloseTo(-1, 2);
  });

  it('has the place of the muzzle plane move the exit time by its flight time', () => {
    const nearby = reportOf(points, {}, { ...shared, muzzleU: 0 });
    const seconds = (shared.muzzleU * shared.metresPerPixel) / report.exitVelocity.value;
    const added = Math.sqrt(report.exitTime.u ** 2 - nearby.exitTime.u ** 2);
    expect(added / seconds).toBeCloseTo(1, 1);
  });

  it('agrees with its Monte Carlo check in value and uncertainty', () => {
    if ('unavailable' in report.monteCarlo) throw new Error(report.monteCarlo.unavailable.message);
    const { value, u, trials } = report.monteCarlo;
    expect(trials).toBeGreaterThanOrEqual(4000);
    expect(Math.abs(value - report.exitVelocity.value)).toBeLessThan(0.1 * u);
    expect(Math.abs(u / report.exitVelocity.u - 1)).toBeLessThan(0.05);
  });

  it('reports the Monte Carlo interval and says so where the two disagree', () => {
    // Two degrees of freedom make the tails of the draws far longer than their standard deviation tells.
    const few = shared.scaleSources.map((source) => ({ ...source, u: 0.004, dof: 2 }));
    const wide = reportOf(points, {}, { ...shared, scaleSources: few });
    if ('unavailable' in wide.monteCarlo) throw new Error(wide.monteCarlo.unavailable.message);
    expect(wide.monteCarlo.agrees).toBe(false);
    expect(wide.exitVelocity.interval).toEqual(wide.monteCarlo.interval);
    expect(wide.warnings.map(({ code }) => code)).toContain('monteCarloDisagrees');
  });

  it('weighs the models it compares', () => {
    const { compared } = report.fit;
    expect(compared.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    const uniform = compared.find(({ model }) => model.startsWith('uniform'));
    expect(uniform?.weight).toBe(0);
  });

  it('sets every model against the best of all, those without a muzzle zone too', () => {
    const { compared } = report.fit;
    const best = compared.reduce((a, b) => (b.aicc < a.aicc ? b : a));
    expect(best.evidenceRatio).toBe(1);
    for (const { aicc, evidenceRatio } of compared) {
      const ratio = Math.exp((aicc - best.aicc) / 2);
      if (evidenceRatio === null) expect(ratio).toBeGreaterThan(1e6);
      else expect(evidenceRatio / ratio).toBeCloseTo(1, 9);
    }
    expect(compared.filter(({ model }) => !model.endsWith('muzzle zone')).length).toBe(3);
  });
});

describe('the fitted path', () => {
  const { path, exitVelocity } = report;
  const t = report.exitTime.value;

  it('is at the muzzle plane at the exit time, with the exit speed', () => {
    const { s, v, vU } = path.at(t);
    expect(Math.abs(s)).toBeLessThan(1e-8);
    expect(v).toBeCloseTo(exitVelocity.value, 3);
    expect(vU / exitVelocity.u).toBeCloseTo(1, 1);
  });

  it('knows its place at the exit as well as the exit time', () => {
    const { sU } = path.at(t);
    expect(sU / (report.exitTime.u * exitVelocity.value)).toBeCloseTo(1, 1);
  });

  it('finds the time at a place and the place at a time', () => {
    const found = path.timeAt(0.12);
    if (!found.ok) throw new Error(found.reason.message);
    expect(path.at(found.value.value).s).toBeCloseTo(0.12, 9);
    expect(found.value.u).toBeGreaterThan(0);
  });

  it('says so where a place is never reached', () => {
    expect(path.timeAt(1e6)).toMatchObject({ ok: false, reason: { code: 'placeNotReached' } });
  });
});

describe('points left out', () => {
  it('are those before the exit and gross errors, each with its reason', () => {
    const behind = { ...(points[0] as FlightPoint), frame: 5, frameTime: 5 / 12_000, along: -40 };
    const spoiled = points.map((point, i) =>
      i === 7 ? { ...point, along: point.along + 5 } : point,
    );
    const { leftOut, exitVelocity } = reportOf([behind, ...spoiled]);
    expect(leftOut.map(({ frame, reason }) => [frame, reason.code])).toEqual([
      [5, 'beforeExit'],
      [(points[7] as FlightPoint).frame, 'outlier'],
    ]);
    const [low, high] = exitVelocity.interval;
    expect(low).toBeLessThan(180);
    expect(high).toBeGreaterThan(180);
  });

  it('are not those that lie off a little: they count for less, and are counted', () => {
    const { fit } = reportOf(points);
    const off = points.map((point, i) => {
      if (i !== 7) return point;
      const residual = (fit.residuals[i] as number) / shared.metresPerPixel;
      return { ...point, along: point.along - residual + 4 * point.alongU };
    });
    const less = reportOf(off);
    expect(fit.downWeighted).toBe(0);
    expect(less.leftOut).toEqual([]);
    expect(less.fit.downWeighted).toBe(1);
    expect(reportOf(off, { robust: false }).fit.downWeighted).toBe(0);
  });

  it('keeps gross errors where asked to, and enlarges the uncertainty for them', () => {
    const spoiled = points.map((point, i) =>
      i === 7 ? { ...point, along: point.along + 5 } : point,
    );
    const kept = reportOf(spoiled, { robust: false });
    expect(kept.leftOut).toEqual([]);
    expect(kept.exitVelocity.u).toBeGreaterThan(2 * report.exitVelocity.u);
    expect(kept.warnings.map(({ code }) => code)).toContain('scatterLargerThanStated');
    expect(kept.fit.checks.find(({ code }) => code === 'chiSquare')?.passed).toBe(false);
  });
});

describe('models', () => {
  const velocity = (model: ExitOptions['model']) => {
    const outcome = budgetExit(points, shared, { ...OPTIONS, model });
    if (!outcome.ok) throw new Error(outcome.reason.message);
    return outcome.value.report;
  };

  it.each(['constantAcceleration', 'quadraticDrag', 'quadraticDragPrior', 'averaged'] as const)(
    '%s covers the truth',
    (model) => {
      const { interval } = velocity(model).exitVelocity;
      expect(interval[0]).toBeLessThan(180);
      expect(interval[1]).toBeGreaterThan(180);
    },
  );

  it('uniform motion is paid for with the drag it leaves out', () => {
    const { budget, exitVelocity } = velocity('uniform');
    const left = budget.find(({ source }) => source === 'air drag left out');
    expect(left?.contribution).toBeGreaterThan(0);
    expect(exitVelocity.u).toBeGreaterThan(left?.contribution ?? Number.POSITIVE_INFINITY);
    const { monteCarlo } = reportOf(points, { model: 'uniform' });
    if ('unavailable' in monteCarlo) throw new Error(monteCarlo.unavailable.message);
    expect(Math.abs(monteCarlo.u / exitVelocity.u - 1)).toBeLessThan(0.1);
  });

  it('the bore model needs to see the bore', () => {
    expect(determineExit(points, shared, { ...OPTIONS, model: 'boreAndFlight' })).toMatchObject({
      ok: false,
      reason: { code: 'boreNotSeen' },
    });
  });
});

describe('too little or wrong input', () => {
  const codes = (used: readonly FlightPoint[]) => reportOf(used).warnings.map(({ code }) => code);

  it('two frames give no speed', () => {
    const outcome = determineExit(points.slice(0, 2), shared, OPTIONS);
    expect(outcome).toMatchObject({ ok: false, reason: { code: 'tooFewFrames' } });
  });

  it('three frames give one, with a warning', () => {
    expect(codes(points.slice(0, 3))).toContain('fewFrames');
  });

  it('three frames do not give free drag and loss at the muzzle', () => {
    const outcome = determineExit(points.slice(0, 3), shared, {
      ...OPTIONS,
      model: 'quadraticDrag',
    });
    expect(outcome).toMatchObject({ ok: false, reason: { code: 'modelNotDetermined' } });
  });

  it('a view that begins late or ends early is warned of and costs certainty', () => {
    const late = points.slice(8);
    expect(codes(late)).toContain('nothingInMuzzleZone');
    expect(reportOf(late).exitVelocity.u).toBeGreaterThan(1.5 * report.exitVelocity.u);
    expect(codes(points.slice(0, 5))).toContain('nothingBeyondMuzzleZone');
  });

  it('a ball that comes back is refused', () => {
    const reversed = points.map((point, i) => ({
      ...point,
      along: (points[points.length - 1 - i] as FlightPoint).along,
    }));
    expect(determineExit(reversed, shared, OPTIONS)).toMatchObject({
      ok: false,
      reason: { code: 'movesBackwards' },
    });
  });

  it('a ball that speeds up is warned of', () => {
    const pushed = points.map((point) => ({
      ...point,
      along: point.along * (1 + point.along / 3000),
    }));
    const { warnings, fit } = reportOf(pushed, { robust: false });
    expect(warnings.map(({ code }) => code)).toContain('speedsUp');
    expect(fit.checks.find(({ code }) => code === 'implausibleModel')?.passed).toBe(false);
  });

  it.each([
    ['scale', { ...shared, metresPerPixel: 0 }, points, 'metres per pixel'],
    [
      'place',
      shared,
      [{ ...(points[0] as FlightPoint), along: Number.NaN }, ...points.slice(1)],
      'frame 20',
    ],
  ] as const)('a senseless %s is thrown back', (_what, inputs, used, message) => {
    expect(() => determineExit(used, inputs, OPTIONS)).toThrow(message);
  });
});
