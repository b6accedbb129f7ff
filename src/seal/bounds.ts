import type { Seconds } from '../core/units';
import { hasMoved, isHidden, restOf } from './tear';
import { type SealClock, sealTime } from './timing';
import type { SealObservation, SealView } from './types';

/**
 * The moments a seal must have opened between where its burst is not found: after the last frame before it moved,
 * and before something that goes through it. Null: nothing bounds it on that side; a film that is never seen to move
 * may have been open all along.
 */
export function burstBounds(
  observations: readonly SealObservation[],
  through: Seconds | null,
  clock: SealClock,
  view: SealView,
): readonly [earliest: Seconds | null, latest: Seconds | null] {
  const before = observations.filter(
    ({ frame }) => through === null || sealTime(clock, view, frame) <= through,
  );
  if (before.length === 0) return [null, through];
  const rest = restOf(before, 2 * view.halfAperture);
  const moved = before.findIndex((o) => hasMoved(o, rest));
  const still = before[moved - 1];
  const earliest =
    still === undefined || isHidden(rest) ? null : sealTime(clock, view, still.frame);
  return [earliest, through];
}
