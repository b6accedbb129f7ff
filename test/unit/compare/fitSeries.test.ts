import { describe, expect, it } from 'vitest';
import { fitSeries } from '../../../src/compare/fitSeries';
import type { FittedShot, SeriesFitQuestion } from '../../../src/compare/seriesCurve';
import { seededRandom } from '../../../src/core/random';
import { MODELS } from '../../../src/launch/models';
import type { Launcher } from '../../../src/launch/types';
import { LAUNCHER_B } from '../../validate/model/launchers';

const TRUE = { gapDischarge: 0.55, sealBurstPressure: 9000 };
const OWN = { speed: 0.4, lead: 2e-5 };
const LENGTHS = [0.8, 1.1, 1.4];
const PRESSURES = [500, 3000];

/** What the model says of a launcher that is truly so. */
function truth(launcher: Launcher) {
  const { exit } = MODELS.expansion.run({ ...launcher, ...TRUE });
  if (!exit.ok) throw new Error(exit.reason.message);
  return { speed: exit.value.speed, lead: exit.value.seal.lead };
}

/** Shots stated with the textbook leak and burst pressure, measured with errors of so many uncertainties. */
function shotsOf(errors: () => number, common = 0): FittedShot[] {
  return LENGTHS.flatMap((barrelLength) =>
    PRESSURES.map((residualPressure): FittedShot => {
      const launcher = { ...LAUNCHER_B, barrelLength, residualPressure };
      const { speed, lead } = truth(launcher);
      return {
        launcher,
        uncertainty: {},
        name: `${barrelLength} m, ${residualPressure} Pa`,
        speed: { value: speed + OWN.speed * errors() + common, u: OWN.speed },
        shared: [],
        lead: { value: lead + OWN.lead * errors(), u: OWN.lead },
      };
    }),
  );
}

const question = (change: Partial<SeriesFitQuestion>): SeriesFitQuestion => ({
  model: 'expansion',
  shots: shotsOf(() => 0),
  free: ['gapDischarge', 'sealBurstPressure'],
  coverage: 0.95,
  ...change,
});
const fitted = (change: Partial<SeriesFitQuestion>) => {
  const outcome = fitSeries(question(change));
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value;
};
const code = (change: Partial<SeriesFitQuestion>) => {
  const outcome = fitSeries(question(change));
  return outcome.ok ? 'accepted' : outcome.reason.code;
};

describe('inputs fitted to a series', () => {
  it('are found again where the shots are free of error', () => {
    const { parameters, chiSquare, dof, correlations, birgeRatio } = fitted({});
    expect(parameters.map(({ key }) => key)).toEqual(['gapDischarge', 'sealBurstPressure']);
    expect(parameters[0]?.value?.value).toBeCloseTo(TRUE.gapDischarge, 3);
    expect(parameters[0]?.shift.value).toBeCloseTo(-0.15, 3);
    expect((parameters[1]?.value?.value ?? 0) / TRUE.sealBurstPressure).toBeCloseTo(1, 2);
    expect(chiSquare).toBeLessThan(0.01);
    expect(birgeRatio).toBeLessThan(0.05);
    expect(dof).toBe(10);
    expect(correlations[0]?.[0]).toBeCloseTo(1, 12);
    expect(correlations[0]?.[1]).toBeCloseTo(correlations[1]?.[0] ?? Number.NaN, 12);
    expect(Math.abs(correlations[0]?.[1] ?? 1)).toBeLessThan(0.999);
  });

  it('lie within their uncertainties of the truth, series after series', () => {
    const random = seededRandom(7);
    const pulls = Array.from({ length: 6 }, () => {
      const { parameters } = fitted({ shots: shotsOf(() => random.normal()) });
      return parameters.map(
        ({ key, value }) =>
          ((value?.value ?? 0) - TRUE[key as keyof typeof TRUE]) / (value?.u ?? 1),
      );
    }).flat();
    // 12 pulls of unit variance: their sum of squares is below 28.3 in 99.5 %, above 3.07 likewise (chi-square, 12 dof).
    const squares = pulls.reduce((sum, pull) => sum + pull * pull, 0);
    expect(squares).toBeLessThan(28.3);
    expect(squares).toBeGreaterThan(3.07);
  });

  it('an error that all speeds share does not average down', () => {
    const same = { ...LAUNCHER_B, barrelLength: 1.1 };
    const speedAt = (gapDischarge: number) => {
      const { exit } = MODELS.expansion.run({ ...same, gapDischarge });
      return exit.ok ? exit.value.speed : Number.NaN;
    };
    const shots = Array.from(
      { length: 5 },
      (): FittedShot => ({
        ...{ launcher: same, uncertainty: {}, name: 'same', lead: null },
        speed: { value: speedAt(0.7), u: 0.5 },
        shared: [{ key: 'scale', effect: 1.2 }],
      }),
    );
    const { parameters } = fitted({ shots, free: ['gapDischarge'] });
    const slope = (speedAt(0.71) - speedAt(0.69)) / 0.02;
    const expected = Math.hypot(0.5 / Math.sqrt(5), 1.2) / Math.abs(slope);
    expect((parameters[0]?.shift.u ?? 0) / expected).toBeCloseTo(1, 1);
  });

  it('the uncertainty of inputs held counts, and a held input that is off is named', () => {
    const exact = fitted({ free: ['gapDischarge'] }).parameters[0]?.shift.u ?? 0;
    const uncertainty = { ballMass: 1e-5, sealBurstPressure: 2000 };
    const shots = shotsOf(() => 0).map((shot) => ({ ...shot, uncertainty }));
    const { parameters, pulls } = fitted({ shots, free: ['gapDischarge'] });
    expect(parameters[0]?.shift.u ?? 0).toBeGreaterThan(1.5 * exact);
    // It opens two of its standard uncertainties later than stated: the leads pull it there.
    expect(pulls[0]?.source).toBe('seal burst pressure');
    expect(pulls[0]?.inU).toBeGreaterThan(0.5);
    expect(pulls[0]?.inU).toBeLessThan(2.5);
  });

  it('more left over than uncertainties explain enlarges theirs, and says so', () => {
    let i = 0;
    const wild = shotsOf(() => (Math.floor(i++ / 2) % 2 === 0 ? 6 : -6));
    const { birgeRatio, probability, parameters } = fitted({ shots: wild });
    expect(birgeRatio).toBeGreaterThan(3);
    expect(probability).toBeLessThan(1e-6);
    const calm = fitted({}).parameters[0]?.shift.u ?? 0;
    expect((parameters[0]?.shift.u ?? 0) / calm).toBeGreaterThan(3);
    expect(parameters[0]?.shift.dof).toBe(10);
  });

  it('an interval past what an input can be is warned of', () => {
    const vague = shotsOf(() => 0).map((shot) => ({
      ...shot,
      speed: { ...shot.speed, u: 40 },
      lead: null,
    }));
    expect(fitted({ shots: vague, free: ['gapDischarge'] }).warnings).toMatchObject([
      { code: 'fitAtBound', message: expect.stringContaining('discharge of the gap') },
    ]);
  });

  it('what shots state differently has a shift and no value of its own', () => {
    const { parameters } = fitted({
      free: ['residualPressure', 'gapDischarge', 'sealBurstPressure'],
    });
    const [residual, leak] = parameters;
    expect(residual?.value).toBeNull();
    expect(Math.abs(residual?.shift.value ?? 1e9)).toBeLessThan(20);
    expect(leak?.value?.value).toBeCloseTo(TRUE.gapDischarge, 2);
  });

  it('tells its share', () => {
    const shares: number[] = [];
    fitSeries(question({}), (share) => shares.push(share));
    expect(shares.at(-1)).toBe(1);
    expect(shares.every((share, k) => k === 0 || share >= (shares[k - 1] as number))).toBe(true);
  });
});

describe('a series that cannot be fitted', () => {
  it('says why', () => {
    const [one] = shotsOf(() => 0);
    if (one === undefined) throw new Error('no shot');
    expect(code({ shots: [{ ...one, lead: null }] })).toBe('tooFewForFit');
    expect(code({ free: [] })).toBe('tooFewForFit');
    // Constant force knows of neither leak nor burst pressure.
    expect(code({ model: 'constantForce' })).toBe('freeInputsNotSeparable');
    const stuck = { ...one, launcher: { ...one.launcher, ballFriction: 90 } };
    expect(code({ shots: [...shotsOf(() => 0), stuck] })).toBe('fitNotStarted');
  });
});
