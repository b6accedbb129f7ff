import type { ModelName } from '../shot/planning';
import { launchByConstantForce } from './constantForce';
import { launchConverged } from './converged';
import { launchByExpansion } from './expansion';
import { launchByGasDynamics } from './gasDynamics';
import { LAUNCHER_INPUTS, type LauncherInputKey } from './inputs';
import { launchByMomentum } from './momentum';
import type { Model } from './types';

export type { ModelName };

interface ModelEntry {
  readonly run: Model;
  /** The model as run many times with inputs moved. */
  readonly varied: Model;
  /** Rough cost of one such run beside the others. */
  readonly cost: number;
  /** Inputs that change the exit speed. */
  readonly inputs: readonly LauncherInputKey[];
}

const ALL = Object.keys(LAUNCHER_INPUTS) as LauncherInputKey[];
const without = (...left: LauncherInputKey[]) => ALL.filter((key) => !left.includes(key));

/** Cells for moved inputs: their mesh error is nearly the same on both sides and drops out of the differences. */
const VARIED_CELLS = 25;

const plain = (run: Model, inputs: readonly LauncherInputKey[]): ModelEntry => ({
  ...{ run, inputs },
  varied: run,
  cost: 1,
});

/** In the order of what they take into account. */
export const MODELS: Readonly<Record<ModelName, ModelEntry>> = {
  constantForce: plain(launchByConstantForce, [
    'boreDiameter',
    'barrelLength',
    'ballMass',
    'startPosition',
    'airPressure',
  ]),
  momentum: plain(launchByMomentum, ALL),
  gasDynamics: {
    run: (launcher) => launchConverged(launcher),
    varied: (launcher) => launchByGasDynamics(launcher, { cells: VARIED_CELLS }),
    cost: 3,
    inputs: ALL,
  },
  expansion: plain(launchByExpansion, without('entranceLoss', 'wallFriction')),
};
export const MODEL_NAMES = Object.keys(MODELS) as readonly ModelName[];
