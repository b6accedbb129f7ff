import { beforeAll, describe, expect, it } from 'vitest';
import {
  type ComparisonPart,
  type ComparisonQuestion,
  compareModels,
  RESIDUAL_SHARES,
} from '../../../src/compare/compareModels';
import { closersOf } from '../../../src/compare/gap';
import { quantity } from '../../../src/core/quantity';
import { MODEL_NAMES, MODELS, type ModelName } from '../../../src/launch/models';
import { predict } from '../../../src/launch/predict';
import type { Launcher } from '../../../src/launch/types';
import { LAUNCHER_B } from '../../validate/model/launchers';

const UNCERTAINTY = { ballMass: 2e-5, barrelLength: 2e-3, gapDischarge: 0.1 };
const QUESTION: ComparisonQuestion = {
  launcher: LAUNCHER_B,
  uncertainty: UNCERTAINTY,
  coverage: 0.95,
  measured: { speed: quantity(190, 1, null, 0.95), lead: quantity(1e-3, 2e-5, null, 0.95) },
};

function asked(question: ComparisonQuestion) {
  const parts: ComparisonPart[] = [];
  const shares: number[] = [];
  compareModels(
    question,
    (part) => parts.push(part),
    (share) => shares.push(share),
  );
  return { parts, shares };
}

const toldOf = (parts: readonly ComparisonPart[], model: ModelName) => {
  const part = parts.find((one) => one.kind === 'prediction' && one.model === model);
  if (part?.kind !== 'prediction') throw new Error(`nothing told of ${model}`);
  return part.told;
};
const predictionIn = (parts: readonly ComparisonPart[], model: ModelName) => {
  const told = toldOf(parts, model);
  if (!told.ok) throw new Error(told.reason.message);
  return told.value;
};
const outlookIn = (parts: readonly ComparisonPart[], model: ModelName) => {
  const part = parts.find((one) => one.kind === 'outlook' && one.model === model);
  if (part?.kind !== 'outlook') throw new Error(`no outlook of ${model}`);
  return part.told;
};

describe('every model beside the film', () => {
  let parts: ComparisonPart[];
  let shares: number[];
  beforeAll(() => {
    ({ parts, shares } = asked(QUESTION));
  }, 200_000);

  it('tells the quick predictions first, and of every model both parts', () => {
    const said = parts.map(({ kind, model }) => `${kind} ${model}`);
    expect(said.slice(0, 4)).toEqual([
      'prediction constantForce',
      'prediction momentum',
      'prediction expansion',
      'prediction gasDynamics',
    ]);
    expect([...said].sort()).toEqual(
      MODEL_NAMES.flatMap((name) => [`prediction ${name}`, `outlook ${name}`]).sort(),
    );
  });

  it('tells shares that grow to one', () => {
    expect(shares.every((share, i) => i === 0 || share >= (shares[i - 1] as number))).toBe(true);
    expect(shares[0]).toBeLessThan(0.1);
    expect(shares.at(-1)).toBeCloseTo(1, 12);
  });

  it('holds the film against each prediction', () => {
    for (const name of MODEL_NAMES) {
      const { speed, speedAgreement, lead, leadAgreement } = predictionIn(parts, name);
      const u = Math.hypot(1, speed.quantity.u);
      expect(speedAgreement?.ok && speedAgreement.value.zeta).toBeCloseTo(
        (190 - speed.quantity.value) / u,
        9,
      );
      expect(leadAgreement?.ok && leadAgreement.value.difference.value).toBeCloseTo(
        1e-3 - lead.quantity.value,
        12,
      );
    }
  });

  it('gives waves of gas dynamics alone', () => {
    expect(predictionIn(parts, 'momentum').profiles).toBeNull();
    const profiles = predictionIn(parts, 'gasDynamics').profiles ?? [];
    expect(profiles.length).toBeGreaterThan(50);
    expect(profiles.some(({ shocks }) => shocks.length > 0)).toBe(true);
  });

  it('at the stated length the outlook meets the prediction, less the uncertainty of the length', () => {
    for (const name of MODEL_NAMES) {
      const { speed } = predictionIn(parts, name);
      const here = outlookIn(parts, name).lengths.find(
        ({ at }) => Math.abs(at - LAUNCHER_B.barrelLength) < 1e-9,
      );
      const share = (here?.speed.value ?? 0) / speed.quantity.value;
      expect(share).toBeCloseTo(1, 9);
      expect(here?.speed.u).toBeLessThan(speed.quantity.u);
    }
  });

  it('by constant force the speed goes with the root of the way', () => {
    const way = (length: number) => Math.sqrt(length - LAUNCHER_B.startPosition);
    const { lengths } = outlookIn(parts, 'constantForce');
    const [first, ...others] = lengths;
    expect(others).toHaveLength(5);
    for (const { at, speed } of others) {
      expect(speed.value / (first?.speed.value ?? 0)).toBeCloseTo(way(at) / way(first?.at ?? 0), 9);
    }
  });

  it('residual air from 0.01 % to 10 % of an atmosphere costs more and more', () => {
    for (const name of ['momentum', 'gasDynamics', 'expansion'] as const) {
      const points = outlookIn(parts, name).residuals ?? [];
      expect(points.map(({ at }) => at / LAUNCHER_B.air.pressure)).toEqual(
        RESIDUAL_SHARES.map((share) => expect.closeTo(share, 12)),
      );
      const speeds = points.map(({ speed }) => speed.value);
      expect(speeds).toEqual([...speeds].sort((a, b) => b - a));
    }
    expect(outlookIn(parts, 'constantForce').residuals).toBeNull();
  });

  it('an input moved as said gives the speed on the film', () => {
    const { closers } = outlookIn(parts, 'momentum');
    const mass = closers?.find(({ key }) => key === 'ballMass')?.needed;
    if (!mass?.ok) throw new Error('no mass closes the gap');
    const { exit } = MODELS.momentum.run({ ...LAUNCHER_B, ballMass: mass.value.value });
    const gap = 190 - predictionIn(parts, 'momentum').speed.quantity.value;
    expect(Math.abs((exit.ok ? exit.value.speed : 0) - 190)).toBeLessThan(0.011 * Math.abs(gap));
    expect(closers?.map(({ key }) => key)).toEqual(expect.arrayContaining(['wallFriction']));
    const expansion = outlookIn(parts, 'expansion').closers;
    expect(expansion?.map(({ key }) => key)).not.toContain('wallFriction');
  });
});

describe('models without an answer', () => {
  it('a ball that does not leave is told of by its model alone', () => {
    const stuck: Launcher = { ...LAUNCHER_B, ballFriction: 90 };
    const { parts } = asked({ ...QUESTION, uncertainty: {}, launcher: stuck });
    const told = parts.find((one) => one.kind === 'prediction' && one.model === 'momentum');
    expect(told?.told).toMatchObject({ ok: false, reason: { code: 'ballDoesNotLeave' } });
    expect(outlookIn(parts, 'momentum')).toEqual({ lengths: [], residuals: [], closers: null });
    expect(predictionIn(parts, 'constantForce').speed.quantity.value).toBeGreaterThan(0);
  });

  it('without a film nothing is held against them', () => {
    const { parts, shares } = asked({
      ...QUESTION,
      uncertainty: { ballMass: 2e-5 },
      measured: { speed: null, lead: null },
    });
    expect(predictionIn(parts, 'momentum')).toMatchObject({
      speedAgreement: null,
      leadAgreement: null,
    });
    expect(outlookIn(parts, 'momentum').closers).toBeNull();
    expect(shares.at(-1)).toBeCloseTo(1, 12);
  });

  it('a launcher whose gas cannot be followed leaves the other models their say', () => {
    const wide = { ...LAUNCHER_B, boreDiameter: 0.13 };
    const { parts } = asked({
      ...QUESTION,
      launcher: wide,
      uncertainty: {},
      measured: { speed: null, lead: null },
    });
    expect(toldOf(parts, 'gasDynamics')).toMatchObject({
      ok: false,
      reason: { code: 'gasStateLost' },
    });
    expect(toldOf(parts, 'constantForce')).toMatchObject({ ok: true });
  });

  it('no search for what would have to be wrong ends at gas that cannot be followed', () => {
    const { exit } = MODELS.gasDynamics.varied(LAUNCHER_B);
    if (!exit.ok) throw new Error(exit.reason.message);
    const [closer] = closersOf(
      MODELS.gasDynamics.varied,
      LAUNCHER_B,
      { boreDiameter: 5e-5 },
      1.3 * exit.value.speed,
      ['boreDiameter'],
    );
    expect(closer?.needed).toMatchObject({ ok: false, reason: { code: 'gapNotClosed' } });
  });

  it('a launcher that cannot be is refused', () => {
    expect(() => asked({ ...QUESTION, launcher: { ...LAUNCHER_B, ballMass: 0 } })).toThrow(
      /ballMass is 0/,
    );
  });
});

describe('the models', () => {
  it.each(MODEL_NAMES)('%s names exactly the inputs that change its speed', (name) => {
    const { varied, inputs } = MODELS[name];
    const tilted = { ...LAUNCHER_B, air: { ...LAUNCHER_B.air, humidity: 0.4 }, ballFriction: 0.4 };
    const uncertainty = {
      ...{ boreDiameter: 5e-5, barrelLength: 1e-3, ballDiameter: 5e-5, ballMass: 1e-5 },
      ...{ startPosition: 1e-4, residualPressure: 100, sealBurstPressure: 1000 },
      ...{ airPressure: 300, airTemperature: 2, airHumidity: 0.1 },
      ...{ gapDischarge: 0.1, entranceLoss: 0.2, wallFriction: 0.005, ballFriction: 0.1 },
    };
    const found = predict(varied, tilted, uncertainty, { coverage: 0.95 });
    if (!found.ok) throw new Error(found.reason.message);
    const moving = found.value.speed.budget.filter(({ contribution }) => contribution > 1e-9);
    expect(moving).toHaveLength(inputs.length);
  });
});
