import { describe, expect, it } from 'vitest';
import { type Random, seededRandom } from '../../../src/core/random';
import { summariseSeries } from '../../../src/series/summarise';
import type { SeriesReport, SeriesShot } from '../../../src/series/types';

const TRUE_SPEED = 180;
const KEYS = { scale: 0.001, clock: 2e-4 } as const;

interface Launcher {
  readonly shots: number;
  /** Scatter from shot to shot beside that of the film, m/s. */
  readonly tau: number;
  /** Own standard uncertainties are drawn between these, m/s. */
  readonly own: readonly [number, number];
  /** How many setups the shots are spread over. */
  readonly setups: number;
}

/** A series as filmed: each setup's scale and clock drawn once for all of its shots. */
function filmed({ shots, tau, own, setups }: Launcher, random: Random): SeriesShot[] {
  const factors = Array.from(
    { length: setups },
    () => (1 + KEYS.scale * random.normal()) * (1 + KEYS.clock * random.normal()),
  );
  return Array.from({ length: shots }, (_, i) => {
    const u = own[0] + (own[1] - own[0]) * random.uniform();
    const setup = i % setups;
    const speed = TRUE_SPEED + tau * random.normal();
    const value = speed * (factors[setup] as number) + u * random.normal();
    const shared = Object.entries(KEYS).map(([source, share]) => ({
      source,
      key: `${source} ${setup}`,
      effect: value * share,
      dof: null,
    }));
    return { name: `${i}`, value, u, dof: null, shared };
  });
}

function summary(shots: readonly SeriesShot[]): SeriesReport {
  const report = summariseSeries(shots, 0.95);
  if (!report.ok) throw new Error(report.reason.message);
  return report.value;
}

const TRIALS = 2000;
/** Coverage of 95 % in that many trials stays within this of it, but for one time in 30 000 (binomial, 4 sd). */
const LEEWAY = 4 * Math.sqrt((0.95 * 0.05) / TRIALS);

const within = ([low, high]: readonly [number, number], truth: number) =>
  low <= truth && truth <= high;

describe.each<Launcher>([
  { shots: 5, tau: 1, own: [0.05, 0.1], setups: 1 },
  { shots: 12, tau: 0.2, own: [0.05, 0.4], setups: 1 },
  { shots: 20, tau: 0.3, own: [0.1, 0.2], setups: 1 },
  { shots: 12, tau: 0.5, own: [0.1, 0.3], setups: 3 },
])('$shots shots of one launcher over $setups setups, scatter $tau m/s', (launcher) => {
  const random = seededRandom(11);
  const reports = Array.from({ length: TRIALS }, () => summary(filmed(launcher, random)));
  const share = (good: (report: SeriesReport) => boolean) => reports.filter(good).length / TRIALS;

  it('covers the true mean as often as stated', () => {
    const covered = share(({ mean }) => within(mean.interval, TRUE_SPEED));
    expect(Math.abs(covered - 0.95)).toBeLessThan(LEEWAY + 0.01);
  });

  it('would not if what the shots share averaged down with them', () => {
    const naive = share(
      ({ mean, randomU, sharedU }) =>
        Math.abs(mean.value - TRUE_SPEED) <=
        2 * Math.hypot(randomU, sharedU / Math.sqrt(launcher.shots)),
    );
    const random = launcher.tau > 0.5;
    expect(naive).toBeLessThan(random ? 0.95 : 0.9);
  });

  it('covers the scatter of the launcher as often as stated', () => {
    // The setups' own differences are no scatter of the launcher: they must not be taken for it.
    const covered = share(({ launcherScatter }) => within(launcherScatter.interval, launcher.tau));
    expect(Math.abs(covered - 0.95)).toBeLessThan(LEEWAY + 0.005);
  });
});

describe('shots that differ by no more than their uncertainties', () => {
  const launcher = { shots: 8, tau: 0, own: [0.1, 0.2], setups: 1 } as const;
  const random = seededRandom(12);
  const reports = Array.from({ length: TRIALS }, () => summary(filmed(launcher, random)));

  it.each(['more', 'less'] as const)('are said to scatter %s in 5 % of the series', (verdict) => {
    const refused = reports.filter(({ consistency }) => consistency.verdict === verdict).length;
    expect(Math.abs(refused / TRIALS - 0.05)).toBeLessThan(LEEWAY);
  });

  it('hold an outlier by Grubbs in 5 % of the series where they are known alike', () => {
    const even = Array.from({ length: TRIALS }, () =>
      summary(filmed({ ...launcher, own: [0.1, 0.1] }, random)),
    );
    const found = even.filter(({ grubbs }) => grubbs?.outlier).length / TRIALS;
    expect(Math.abs(found - 0.05)).toBeLessThan(LEEWAY);
  });

  it('cover the true mean at least as often as stated', () => {
    const covered = reports.filter(({ mean }) => within(mean.interval, TRUE_SPEED)).length;
    expect(covered / TRIALS).toBeGreaterThan(0.95 - LEEWAY);
  });
});

describe('what shots share', () => {
  const shot = (value: number, key: string): SeriesShot => ({
    name: key,
    value,
    u: 0.1,
    dof: null,
    shared: [{ source: 'known length', key, effect: 0.5, dof: null }],
  });

  it('stands in the mean in full where it is one error, and averages down where there are several', () => {
    const values = [180, 180.1, 179.9, 180.05];
    const one = summary(values.map((value) => shot(value, 'bar')));
    const four = summary(values.map((value, i) => shot(value, `bar ${i}`)));
    expect(one.sharedU).toBeCloseTo(0.5, 12);
    expect(four.sharedU).toBeCloseTo(0.25, 12);
    expect(one.sharedSources).toEqual([{ source: 'known length', u: expect.closeTo(0.5, 12) }]);
    expect(one.mean.u).toBeCloseTo(Math.hypot(one.randomU, 0.5), 12);
  });

  it('hides no scatter: shots of one setup may not differ by it', () => {
    const values = [180, 180.6, 179.4];
    const one = summary(values.map((value) => shot(value, 'bar')));
    const each = summary(values.map((value, i) => shot(value, `bar ${i}`)));
    expect(one.consistency.verdict).toBe('more');
    expect(each.consistency.verdict).toBe('explained');
    // One common error drops out: what is left is that of the shots' own uncertainties.
    expect(one.consistency.chiSquare).toBeCloseTo((2 * 0.6 ** 2) / 0.1 ** 2, 6);
    expect(each.consistency.chiSquare).toBeCloseTo((2 * 0.6 ** 2) / (0.1 ** 2 + 0.5 ** 2), 6);
  });
});

describe('a series that cannot be summarised', () => {
  const shot = { name: 'A', value: 1, u: 0.1, dof: null, shared: [] };
  it('says so for a single shot', () => {
    const report = summariseSeries([shot], 0.95);
    expect(report).toMatchObject({ ok: false, reason: { code: 'tooFewShots' } });
  });

  it('says so for a shot known exactly', () => {
    const report = summariseSeries([shot, { ...shot, u: 0 }], 0.95);
    expect(report).toMatchObject({ ok: false, reason: { code: 'shotWithoutUncertainty' } });
  });
});
