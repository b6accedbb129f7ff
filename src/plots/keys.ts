import { t } from '../text/text';
import type { PlotKey } from './Figure';
import type { PlotPoint } from './marks';

/** Keys for the kinds of points there are. */
export function pointKeys(points: readonly PlotPoint[]): PlotKey[] {
  const keys: PlotKey[] = [];
  if (points.some(({ used, manual }) => used && !manual)) {
    keys.push({ mark: 'used', text: t('plots.key.used') });
  }
  if (points.some(({ used, manual }) => used && manual)) {
    keys.push({ mark: 'manual', text: t('plots.key.manual') });
  }
  if (points.some(({ used }) => !used)) keys.push({ mark: 'refused', text: t('plots.notUsed') });
  return keys;
}
