import { intervalFactor, isAvailable } from '../core/estimate';
import type { FitCurve } from '../reduction/types';
import type { Position, Result } from '../shot/result';

/** Measured minus fitted distance of one frame, m. */
export interface Residual {
  readonly frame: number;
  readonly time: number;
  readonly residual: number;
  readonly u: number;
  readonly used: boolean;
  readonly manual: boolean;
}

/**
 * The fit's residuals with the frames they belong to, which run in the order of the used positions; and how far
 * those left out lie off the fitted curve, as far as it reaches.
 */
export function residualsOf(result: Result, curve: FitCurve | null = null): readonly Residual[] {
  if (!('model' in result.fit)) return [];
  const { residuals } = result.fit;
  let index = 0;
  return result.positions.flatMap(({ frame, time, s, us, used, manual }) => {
    const fitted = curve === null || s === null ? null : onCurve(curve, time);
    const residual = used ? residuals[index++] : fitted === null ? undefined : (s ?? 0) - fitted;
    return residual === undefined || us === null
      ? []
      : [{ frame, time, residual, u: us, used, manual }];
  });
}

/** The fitted distance at a time, m; null beyond the curve's ends. */
function onCurve({ times, s }: FitCurve, time: number): number | null {
  const after = times.findIndex((one) => one >= time);
  if (after < 0) return null;
  const [t1, s1] = [times[after] as number, s[after] as number];
  if (t1 === time) return s1;
  if (after === 0) return null;
  const [t0, s0] = [times[after - 1] as number, s[after - 1] as number];
  return s0 + ((s1 - s0) * (time - t0)) / (t1 - t0);
}

export interface SpeedBetween {
  readonly time: number;
  readonly v: number;
  readonly u: number;
}

/** Speed between neighbouring used centres, at the middle of their times; errors of the two taken as independent. */
export function speedsBetween(positions: readonly Position[]): readonly SpeedBetween[] {
  const used = positions.filter((one) => one.used && one.s !== null && one.us !== null);
  return used.slice(1).flatMap((later, i) => {
    const earlier = used[i];
    if (earlier === undefined) return [];
    const dt = later.time - earlier.time;
    if (!(dt > 0)) return [];
    const [s0, s1] = [earlier.s ?? 0, later.s ?? 0];
    const u = Math.hypot(earlier.us ?? 0, later.us ?? 0) / dt;
    return [{ time: (earlier.time + later.time) / 2, v: (s1 - s0) / dt, u }];
  });
}

/** Factor and probability of the bands on curves: those of the exit velocity's interval. */
export function bandCoverage(result: Result): { coverageFactor: number; coverage: number } {
  const { exitVelocity } = result;
  return isAvailable(exitVelocity)
    ? { coverageFactor: intervalFactor(exitVelocity), coverage: exitVelocity.coverage }
    : { coverageFactor: 1, coverage: 0.683 };
}
