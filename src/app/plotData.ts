import { isAvailable } from '../core/estimate';
import type { Position, Result } from '../shot/result';
import { coverageFactor } from './flightPicture';

/** Measured minus fitted distance of one frame, m. */
export interface Residual {
  readonly frame: number;
  readonly time: number;
  readonly residual: number;
  readonly u: number;
  readonly used: boolean;
  readonly manual: boolean;
}

/** The fit's residuals with the frames they belong to: they run in the order of the used positions. */
export function residualsOf(result: Result): readonly Residual[] {
  if (!('model' in result.fit)) return [];
  const { residuals } = result.fit;
  return result.positions
    .filter((one) => one.used)
    .flatMap(({ frame, time, us, used, manual }, i) => {
      const residual = residuals[i];
      return residual === undefined || us === null
        ? []
        : [{ frame, time, residual, u: us, used, manual }];
    });
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
    ? { coverageFactor: coverageFactor(exitVelocity), coverage: exitVelocity.coverage }
    : { coverageFactor: 1, coverage: 0.683 };
}
