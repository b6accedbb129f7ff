import type { Cancellation } from '../core/cancellation';
import type { Quantity } from '../core/estimate';
import { quantity } from '../core/quantity';
import {
  ExitframeError,
  failure,
  type Outcome,
  type Reason,
  reasonOf,
  success,
} from '../core/reason';
import type { BudgetEntry } from '../shot/result';
import { combine, entry } from '../uncertainty/budget';
import { uniformU } from '../uncertainty/quantity';
import { LAUNCHER_INPUTS, type LauncherInputKey, type LauncherUncertainty } from './inputs';
import type { Launch, Launcher, Model } from './types';

/** What is predicted, each with the uncertainty that the inputs give it. */
export interface Prediction {
  readonly launch: Launch;
  /** m/s */
  readonly speed: Predicted;
  /** Exit minus opening of the seal, s. */
  readonly lead: Predicted;
  readonly warnings: readonly Reason[];
}

export interface Predicted {
  readonly quantity: Quantity;
  readonly budget: readonly BudgetEntry[];
}

export interface PredictOptions {
  readonly coverage: number;
  /** The model as run with inputs moved, where the model itself takes long; left out: itself. */
  readonly varied?: Model;
  /** Told the share of the runs that are done. */
  readonly onProgress?: (share: number) => void;
  readonly cancellation?: Cancellation;
}

type Results = readonly [speed: number, lead: number];

/** An input moved up and down by its standard uncertainty: half the change it makes, and how far that is from a line. */
interface Moved {
  readonly key: LauncherInputKey;
  readonly u: number;
  readonly effect: Results;
  readonly bend: Results;
}

/**
 * An input is warned of whose curvature shifts the mean by more than this share of the standard uncertainty, which adds
 * 6 % to it (second-order terms of JCGM 100:2008, 5.1.2, note).
 */
const MOST_BEND = 0.25;

/**
 * A model's prediction with its inputs' uncertainties propagated to first order (JCGM 100:2008, 5.1.2, effects by 5.1.3
 * note 2), inputs independent, and the change of the last mesh refinement as bounds where the model states it. What the
 * model leaves out is no input: it is not in the uncertainty. An input at the end of its range (no leak, no friction)
 * is moved one way only.
 */
export function predict(
  model: Model,
  launcher: Launcher,
  uncertainty: LauncherUncertainty,
  { coverage, varied = model, onProgress, cancellation }: PredictOptions,
): Outcome<Prediction> {
  const best = converged(model, launcher);
  if (!best.ok) return best;
  const launch = best.value;
  if (!launch.exit.ok) return launch.exit;
  const { speed, seal } = launch.exit.value;
  const middle =
    varied === model ? success<Results>([speed, seal.lead]) : resultsOf(varied(launcher));
  if (!middle.ok) return middle;
  const inputs = (Object.keys(LAUNCHER_INPUTS) as LauncherInputKey[]).flatMap((key) => {
    const u = uncertainty[key] ?? 0;
    return u > 0 ? [{ key, u }] : [];
  });
  const moved: Moved[] = [];
  for (const { key, u } of inputs) {
    cancellation?.throwIfAborted();
    const one = moveInput(varied, launcher, key, u, middle.value);
    if (!one.ok) return one;
    moved.push(one.value);
    onProgress?.(moved.length / inputs.length);
  }
  const mesh: Results = [launch.mesh?.speed ?? 0, launch.mesh?.lead ?? 0];
  const predicted = (value: number, k: 0 | 1): Predicted => {
    const budget = [
      ...moved.map(({ key, u, effect }) => {
        const { source, unit } = LAUNCHER_INPUTS[key];
        return entry(source, 'B', u, unit, effect[k] / u, null);
      }),
      ...(mesh[k] > 0
        ? [entry('mesh', 'B', uniformU(mesh[k]), k === 0 ? 'm/s' : 's', 1, null, 'rectangular')]
        : []),
    ];
    const { u, dof } = combine(budget);
    return { quantity: quantity(value, u, dof, coverage), budget };
  };
  const speeds = predicted(speed, 0);
  const leads = predicted(seal.lead, 1);
  const whole: Results = [speeds.quantity.u, leads.quantity.u];
  const curved = moved.filter(({ bend }) =>
    bend.some((off, k) => Math.abs(off) > MOST_BEND * (whole[k] as number)),
  );
  const warnings = curved.map(({ key }) => bentWarning(LAUNCHER_INPUTS[key].source));
  return success({ launch, speed: speeds, lead: leads, warnings });
}

const bentWarning = (source: string): Reason => ({
  code: 'predictionBent',
  message: `The prediction does not follow the ${source} in a straight line over its uncertainty: its own uncertainty is rough.`,
  remedy: `State the ${source} more closely.`,
  values: { source },
});

function resultsOf({ exit }: Launch): Outcome<Results> {
  return exit.ok ? success([exit.value.speed, exit.value.seal.lead]) : exit;
}

/** The model's best run, or that its mesh never settled. */
function converged(model: Model, launcher: Launcher): Outcome<Launch> {
  try {
    return success(model(launcher));
  } catch (error) {
    if (!(error instanceof ExitframeError && error.code === 'modelNotConverged')) throw error;
    return { ok: false, reason: reasonOf(error) };
  }
}

/** Null: the launcher cannot be so. */
function tried(model: Model, launcher: Launcher): Outcome<Results> | null {
  try {
    return resultsOf(model(launcher));
  } catch (error) {
    if (error instanceof ExitframeError && error.code === 'badLauncher') return null;
    throw error;
  }
}

function moveInput(
  model: Model,
  launcher: Launcher,
  key: LauncherInputKey,
  u: number,
  middle: Results,
): Outcome<Moved> {
  const { get, set, source } = LAUNCHER_INPUTS[key];
  const [up, down] = [u, -u].map((shift) => tried(model, set(launcher, get(launcher) + shift)));
  if (up && !up.ok) return up;
  if (down && !down.ok) return down;
  if (!up && !down) {
    return failure(
      'inputTooUncertain',
      `The uncertainty of the ${source} is larger than the range it can have.`,
      `State the ${source} with a smaller uncertainty.`,
      { source },
    );
  }
  const both = (f: (k: 0 | 1) => number): Results => [f(0), f(1)];
  const above = (k: 0 | 1) => (up?.value[k] ?? Number.NaN) - middle[k];
  const below = (k: 0 | 1) => middle[k] - (down?.value[k] ?? Number.NaN);
  const effect = both((k) => (up && down ? (above(k) + below(k)) / 2 : up ? above(k) : below(k)));
  const bend = both((k) => (up && down ? (above(k) - below(k)) / 2 : 0));
  return success({ key, u, effect, bend });
}
