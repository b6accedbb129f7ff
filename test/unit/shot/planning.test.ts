import { expect, it } from 'vitest';
import { newLauncher } from '../../../src/app/draft';
import { FIRST_PLAN, FIRST_TRADE } from '../../../src/app/firstPlan';
import type { PlanningInputs } from '../../../src/shot/planning';
import { readPlanning } from '../../../src/shot/planning';

const inputs: PlanningInputs = {
  ...{ plan: FIRST_PLAN, trade: FIRST_TRADE, model: 'gasDynamics' },
  launcher: newLauncher({ value: 0.031, u: 5e-5 }, { value: 1.4, u: 1e-3 }),
};
const copy = () => structuredClone(inputs);

it('reads every kind of light and of camera as it was kept', () => {
  expect(readPlanning(copy())).toEqual(inputs);
  const other: PlanningInputs = {
    ...inputs,
    trade: { kind: 'modes', modes: [{ rate: 5000, width: 1024, height: 512 }] },
    plan: {
      ...FIRST_PLAN,
      picture: {
        ...FIRST_PLAN.picture,
        light: {
          ...{ kind: 'sensor', exposure: 2e-5, factor: 1, fullWell: 10_000, readNoise: 20 },
          ...{ ball: 0.7, background: 0.15, bitDepth: 8 },
        },
      },
    },
  };
  expect(readPlanning(structuredClone(other))).toEqual(other);
});

it.each([
  ['nothing', null],
  ['a part left out', { ...copy(), trade: undefined }],
  [
    'a field of view of nothing',
    { ...copy(), plan: { ...FIRST_PLAN, view: { across: 0, beforeMuzzle: 0 } } },
  ],
  ['a number that is none', { ...copy(), plan: { ...FIRST_PLAN, muzzleU: Number.NaN } }],
  ['a model that is not known', { ...copy(), model: 'hearsay' }],
])('refuses %s', (_, data) => {
  expect(readPlanning(data)).toBeNull();
});
