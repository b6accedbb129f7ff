import type { Outcome } from '../core/reason';
import type { Exit, Launch, Launcher } from './types';

/** One launcher of a series and what the model makes of it. */
export interface SweepPoint {
  /** The value of what was varied, SI. */
  readonly at: number;
  readonly exit: Outcome<Exit>;
}

export type Model = (launcher: Launcher) => Launch;

/** Residual pressures worth a look, as shares of an atmosphere: 0.01 % to 10 %. */
export const RESIDUAL_SHARES = [1e-4, 3e-4, 1e-3, 3e-3, 1e-2, 3e-2, 1e-1];

/** The exit with one number of the launcher at each of the values; `onPoint` is told of each as it is done. */
export const sweep = (
  model: Model,
  launcher: Launcher,
  what: 'barrelLength' | 'residualPressure' | 'sealBurstPressure' | 'ballDiameter',
  values: readonly number[],
  onPoint?: (done: number) => void,
): SweepPoint[] =>
  values.map((at, i) => {
    const { exit } = model({ ...launcher, [what]: at });
    onPoint?.(i + 1);
    return { at, exit };
  });
