import { ExitframeError, failure, type Outcome, success } from '../core/reason';
import { LAUNCHER_INPUTS, type LauncherInputKey, type LauncherUncertainty } from '../launch/inputs';
import type { Launcher, Model } from '../launch/types';
import { followed } from '../launch/unfollowed';

/** How one input alone would have to be for the model to give the speed measured. */
export interface GapCloser {
  readonly key: LauncherInputKey;
  readonly source: string;
  readonly unit: string;
  /** The value that closes the gap, and its shift from the one stated; or why none does. */
  readonly needed: Outcome<{
    readonly value: number;
    readonly shift: number;
    /** The shift in standard uncertainties; null where the input is taken as exact. */
    readonly inU: number | null;
  }>;
}

/** The speed is met to this share of the gap. */
const CLOSED = 0.01;
const ROUNDS = 40;
/** An input is tried from nothing to this many times its value. */
const WIDEST = 8;
/** A search that has met what cannot be stops at steps of this share of its first. */
const SMALLEST_STEP = 1 / 16;
/** First guess of an input that is nothing as stated, SI. */
const FROM_NOTHING: Partial<Record<LauncherInputKey, number>> = {
  residualPressure: 10,
  sealBurstPressure: 1000,
  airHumidity: 0.1,
  gapDischarge: 0.1,
  entranceLoss: 0.1,
  wallFriction: 0.005,
  ballFriction: 0.5,
};

/**
 * Which single input of the launcher would have to be wrong, and by how much, to give a measured exit speed, m/s. Each
 * is searched both ways by growing steps, then by halving; the model is run for every value, so nothing is taken for
 * straight. Those whose change is the smallest in their own uncertainties come first. `onInput` is told how many are done.
 */
export function closersOf(
  model: Model,
  launcher: Launcher,
  uncertainty: LauncherUncertainty,
  measured: number,
  keys: readonly LauncherInputKey[],
  onInput?: (done: number) => void,
): GapCloser[] {
  const closers = keys.map((key, i): GapCloser => {
    const { source, unit } = LAUNCHER_INPUTS[key];
    const value = valueFor(model, launcher, key, uncertainty[key] ?? 0, measured);
    const u = uncertainty[key] ?? 0;
    const stated = LAUNCHER_INPUTS[key].get(launcher);
    const needed = value.ok
      ? success({
          value: value.value,
          shift: value.value - stated,
          inU: u > 0 ? (value.value - stated) / u : null,
        })
      : value;
    onInput?.(i + 1);
    return { key, source, unit, needed };
  });
  const rank = ({ needed }: GapCloser) =>
    needed.ok ? Math.abs(needed.value.inU ?? Number.MAX_VALUE) : Infinity;
  return closers.sort((a, b) => (rank(a) < rank(b) ? -1 : rank(a) > rank(b) ? 1 : 0));
}

function valueFor(
  model: Model,
  launcher: Launcher,
  key: LauncherInputKey,
  u: number,
  measured: number,
): Outcome<number> {
  const { get, set, source } = LAUNCHER_INPUTS[key];
  const stated = get(launcher);
  /** Speed above the measured one; null: no such launcher, none the model can follow, or the ball does not leave. */
  const above = (value: number): number | null => {
    try {
      const launch = followed(() => model(set(launcher, value)));
      return launch.ok && launch.value.exit.ok ? launch.value.exit.value.speed - measured : null;
    } catch (error) {
      if (error instanceof ExitframeError && error.code === 'badLauncher') return null;
      throw error;
    }
  };
  const start = above(stated);
  if (start === null) {
    return failure(
      'ballDoesNotLeave',
      'By this model the ball does not leave the barrel.',
      undefined,
      { form: 'not' },
    );
  }
  if (start === 0) return success(stated);
  const first = u > 0 ? u : stated > 0 ? 0.01 * stated : (FROM_NOTHING[key] ?? 1);
  const bracket =
    bracketFrom(above, stated, start, first) ?? bracketFrom(above, stated, start, -first);
  if (bracket === null) {
    return failure(
      'gapNotClosed',
      `No value of the ${source} that a launcher can have gives the speed measured.`,
      undefined,
      { source },
    );
  }
  return success(halved(above, bracket, CLOSED * Math.abs(start)));
}

/** Steps that double from `from` until the speed passes the measured one, and halve before what cannot be. */
function bracketFrom(
  above: (value: number) => number | null,
  from: number,
  start: number,
  first: number,
): readonly [number, number] | null {
  const farthest = WIDEST * Math.max(Math.abs(from), Math.abs(first));
  let last = from;
  let step = first;
  let grows = true;
  while (Math.abs(last - from) < farthest && Math.abs(step) >= SMALLEST_STEP * Math.abs(first)) {
    const next = last + step < 0 && last > 0 ? 0 : last + step;
    const there = above(next);
    if (there !== null && there * start <= 0) return [last, next];
    grows &&= there !== null;
    if (there !== null) last = next;
    step *= grows ? 2 : 0.5;
  }
  return null;
}

function halved(
  above: (value: number) => number | null,
  [near, far]: readonly [number, number],
  close: number,
): number {
  const side = Math.sign(above(far) ?? 0);
  let [a, b] = [near, far];
  for (let round = 0; round < ROUNDS; round++) {
    const middle = (a + b) / 2;
    const there = above(middle) ?? 0;
    if (Math.abs(there) <= close) return middle;
    if (Math.sign(there) === side) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}
