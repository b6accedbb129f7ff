import type { Estimate } from '../core/estimate';
import { ExitframeError } from '../core/reason';
import type { Curve } from '../fit/nonlinear';
import type { StatedLauncher } from '../launch/fromShot';
import { LAUNCHER_INPUTS, type LauncherInputKey } from '../launch/inputs';
import { MODELS, type ModelName } from '../launch/models';
import type { Launch, Launcher } from '../launch/types';

/** A shot that a model is fitted to. */
export interface FittedShot extends StatedLauncher {
  readonly name: string;
  /** m/s, with the standard uncertainty that is this shot's own. */
  readonly speed: Estimate;
  /** What the speed shares with others: shots of one key share the error; m/s. */
  readonly shared: readonly { readonly key: string; readonly effect: number }[];
  /** s; null: not measured, or not to be used. */
  readonly lead: Estimate | null;
}

export type FreeKey = Extract<
  LauncherInputKey,
  'gapDischarge' | 'residualPressure' | 'sealBurstPressure'
>;

export interface SeriesFitQuestion {
  readonly model: ModelName;
  readonly shots: readonly FittedShot[];
  readonly free: readonly FreeKey[];
  readonly coverage: number;
}

/** One number that all shots have in common, as the solver moves it. */
export interface Common {
  readonly key: LauncherInputKey;
  readonly free: boolean;
  /** How far the input is off, SI, at the solver's number, counted from `ORIGIN`; none at none. */
  shift(number: number): number;
}

/**
 * Where the solver's numbers start. They are told apart from none by a share of themselves, and a shift of none has no
 * share: counted from here, an input settles to a small part of its step.
 */
export const ORIGIN = 20;
/** Steps of the solver the progress counts on, and runs of the model for each. */
const ROUNDS = 8;
const FREE_RUNS = 3;
/** An input is moved by this share of itself for the slopes, those of nothing by `FROM_NOTHING`: past a mesh's noise. */
const STEP = 0.05;
const FROM_NOTHING: Readonly<Record<FreeKey, number>> = {
  ...{ gapDischarge: 0.05, residualPressure: 50, sealBurstPressure: 500 },
};

/** The free inputs first, then those known beforehand, which are off by so many of their standard uncertainties. */
export function commonsOf(shots: readonly FittedShot[], free: readonly FreeKey[]): Common[] {
  const freed = free.map((key): Common => {
    const stated = shots.map(({ launcher }) => LAUNCHER_INPUTS[key].get(launcher));
    return { key, free: true, shift: shiftWithin(key, stated) };
  });
  const others = (Object.keys(LAUNCHER_INPUTS) as LauncherInputKey[]).flatMap((key): Common[] => {
    const u = Math.max(...shots.map(({ uncertainty }) => uncertainty[key] ?? 0));
    const isFree = free.some((one) => one === key);
    return u > 0 && !isFree ? [{ key, free: false, shift: (number) => u * number }] : [];
  });
  return [...freed, ...others];
}

/**
 * A free input's shift, in steps at first; then bent so that no step of the solver takes it past what it can be:
 * below nothing in the shot that states least of it, or a leak's coefficient past 1.
 */
function shiftWithin(key: FreeKey, stated: readonly number[]): Common['shift'] {
  const middle = stated.reduce((sum, value) => sum + value, 0) / stated.length;
  const step = STEP * middle || FROM_NOTHING[key];
  const least = Math.min(...stated);
  const most = Math.max(...stated);
  if (!(least > 0) || (key === 'gapDischarge' && most >= 1)) return (number) => step * number;
  if (key !== 'gapDischarge') {
    return (number) => least * Math.expm1((step * number) / least);
  }
  const odds = (share: number) => share / (1 - share);
  return (number) => {
    const moved = odds(middle) * Math.exp((step * number) / (middle * (1 - middle)));
    return moved / (1 + moved) - middle;
  };
}

/**
 * The errors that several speeds share: the effects of each, m/s, shot by shot. And each speed's standard uncertainty,
 * m/s, with what no other shot shares counted as its own.
 */
export function sharedErrors(shots: readonly FittedShot[]): {
  readonly errors: readonly (readonly number[])[];
  readonly speedU: readonly number[];
} {
  const byKey = new Map<string, Map<number, number>>();
  shots.forEach(({ shared }, i) => {
    for (const { key, effect } of shared) {
      const effects = byKey.get(key) ?? new Map<number, number>();
      byKey.set(key, effects.set(i, (effects.get(i) ?? 0) + effect));
    }
  });
  const speedU = shots.map(({ speed }) => speed.u);
  const errors: number[][] = [];
  for (const effects of byKey.values()) {
    if (effects.size > 1) errors.push(shots.map((_, i) => effects.get(i) ?? 0));
    else for (const [i, effect] of effects) speedU[i] = Math.hypot(speedU[i] as number, effect);
  }
  return { errors: errors.filter((one) => one.some((effect) => effect !== 0)), speedU };
}

/** m/s and s. */
export type Results = readonly [speed: number, lead: number];
const NONE: Results = [Number.NaN, Number.NaN];
/** What a model says of inputs that no launcher has. */
const TOO_FAR = ['badLauncher', 'gasStateLost'];

/** What a run says; not a number where the ball does not leave. */
export const resultsOf = ({ exit }: Launch): Results =>
  exit.ok ? [exit.value.speed, exit.value.seal.lead] : NONE;

function resultsBy(model: ModelName, launcher: Launcher): Results {
  try {
    return resultsOf(MODELS[model].varied(launcher));
  } catch (error) {
    // The solver takes a step to what cannot be for one too far.
    if (error instanceof ExitframeError && TOO_FAR.includes(error.code)) return NONE;
    throw error;
  }
}

/** Shots of one key are stated alike, and the model is run once for them. */
export const launcherKey = ({ launcher }: Pick<FittedShot, 'launcher'>): string =>
  JSON.stringify(launcher);

export const distinctLaunchers = (
  shots: readonly FittedShot[],
): (readonly [string, Launcher])[] => [
  ...new Map(shots.map((shot) => [launcherKey(shot), shot.launcher])),
];

/** The launcher as stated with its inputs off by the solver's numbers, counted from none. */
export const movedBy = (
  commons: readonly Common[],
  numbers: ArrayLike<number>,
  stated: Launcher,
): Launcher =>
  commons.reduce((launcher, { key, shift }, j) => {
    const { get, set } = LAUNCHER_INPUTS[key];
    const off = shift(numbers[j] as number);
    return off === 0 ? launcher : set(launcher, get(launcher) + off);
  }, stated);

/** Columns of the Jacobian that are worked out once, by the number's place. */
export type KnownSlopes = Map<number, Float64Array>;

/**
 * Speeds, leads, then the numbers known beforehand. `corrections` are added to the model's results, by launcher.
 * The slopes of numbers known beforehand are those where a Jacobian is first asked for, kept in `slopes`: such numbers
 * move little, and they are most of the runs.
 */
export function curveOf(
  { model, shots }: SeriesFitQuestion,
  commons: readonly Common[],
  errors: readonly (readonly number[])[],
  corrections: ReadonlyMap<string, Results>,
  slopes: KnownSlopes,
  onProgress?: (share: number) => void,
): Curve {
  const texts = shots.map(launcherKey);
  const distinct = distinctLaunchers(shots);
  const place = new Map(distinct.map(([text], i) => [text, i]));
  const leads = shots.flatMap(({ lead }, i) => (lead === null ? [] : [i]));
  const expected = distinct.length * (commons.length + ROUNDS * FREE_RUNS);
  let runs = 0;
  const runAll = (parameters: Float64Array): Results[] =>
    distinct.map(([text, stated]) => {
      const [speed, lead] = resultsBy(model, movedBy(commons, parameters, stated));
      const [more, later] = corrections.get(text) ?? [0, 0];
      runs += 1;
      onProgress?.(Math.min(0.99, runs / expected));
      return [speed + more, lead + later];
    });
  const fill = (parameters: Float64Array, results: readonly Results[], out: Float64Array) => {
    const of = (i: number) => results[place.get(texts[i] as string) as number] as Results;
    shots.forEach((_, i) => {
      const error = errors.reduce(
        (sum, effects, k) =>
          sum + (effects[i] as number) * (parameters[commons.length + k] as number),
        0,
      );
      out[i] = of(i)[0] + error;
    });
    leads.forEach((i, k) => {
      out[shots.length + k] = of(i)[1];
    });
    let row = shots.length + leads.length;
    for (let j = 0; j < parameters.length; j++) {
      if (commons[j]?.free !== true) out[row++] = parameters[j] as number;
    }
  };
  return (numbers, out, jacobian) => {
    const parameters = numbers.map((number) => number - ORIGIN);
    const results = runAll(parameters);
    fill(parameters, results, out);
    if (jacobian === null) return;
    const n = out.length;
    const moved = Float64Array.from(parameters);
    for (let j = 0; j < parameters.length; j++) {
      const column = jacobian.subarray(j * n, (j + 1) * n);
      const known = slopes.get(j);
      if (known !== undefined) {
        column.set(known);
        continue;
      }
      // One unit of the solver's number is a step of its own; errors of the film need no run of the model.
      for (const step of j < commons.length ? [1, -1] : [1]) {
        moved[j] = (parameters[j] as number) + step;
        fill(moved, j < commons.length ? runAll(moved) : results, column);
        for (let i = 0; i < n; i++) column[i] = ((column[i] as number) - (out[i] as number)) / step;
        moved[j] = parameters[j] as number;
        if (column.every(Number.isFinite)) break;
      }
      if (commons[j]?.free !== true) slopes.set(j, Float64Array.from(column));
    }
  };
}
