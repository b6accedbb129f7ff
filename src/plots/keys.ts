import type { PlotKey } from './Figure';
import type { PlotPoint } from './marks';

/** Keys for the kinds of points there are. */
export function pointKeys(points: readonly PlotPoint[]): PlotKey[] {
  const keys: PlotKey[] = [];
  if (points.some(({ used, manual }) => used && !manual)) {
    keys.push({ mark: 'used', text: 'used, with its standard uncertainty' });
  }
  if (points.some(({ used, manual }) => used && manual)) {
    keys.push({ mark: 'manual', text: 'placed by hand' });
  }
  if (points.some(({ used }) => !used)) keys.push({ mark: 'refused', text: 'not used' });
  return keys;
}
