import { median } from '../core/statistics';
import type { CentreMeasurement } from './types';

/** Frames whose centre is this many times less sure than usual (by variance) tell of nothing. */
const UNSURE = 3;

/** Centres that are about as sure as usual: others show the ball through something, or hardly. */
export function sureOnes(centres: readonly CentreMeasurement[]): readonly CentreMeasurement[] {
  if (centres.length === 0) return centres;
  const spread = ({ varX, varY }: CentreMeasurement) => varX + varY;
  const most = UNSURE * median(centres.map(spread));
  return centres.filter((centre) => spread(centre) <= most);
}
