import { unitOf } from '../../core/unitTable';
import type { ShownUnit } from '../../plots/units';

/** A speed unit a person chose, for plots and budgets. */
export const speedShown = (symbol: string): ShownUnit => ({
  symbol,
  perSi: 1 / unitOf('speed', symbol).factor,
});
