import { quantityParts } from '../core/format';
import { showAs, showNumberAt, showPercent, showRange } from '../text/show';
import { t } from '../text/text';
import type { PlotPoint, Units } from './marks';
import type { BandCurve, PlotInstant } from './props';
import type { ShownUnit } from './units';

/** '34.56 ± 0.03' in the shown unit, by the usual rule for uncertainties. */
export function plusMinus(value: number, u: number, unit: ShownUnit): string {
  const parts = quantityParts({ value: value * unit.perSi, u: u * unit.perSi });
  if (parts === null) return '';
  const stated = parts.u === '' ? parts.value : `${parts.value} ± ${parts.u}`;
  return showAs(parts.exponent === '' ? stated : `(${stated})${parts.exponent}`);
}

export const timeText = (time: number, unit: ShownUnit): string =>
  showNumberAt(time * unit.perSi, 6);

/** What the pointer is on: 'frame 123: 10.25 ms, 34.56 ± 0.03 mm'. */
export const readingOf = (point: PlotPoint | null, units: Units): string | null =>
  point &&
  t('plots.reading', {
    frame: `${point.frame}`,
    time: `${timeText(point.time, units.x)} ${units.x.symbol}`,
    value: `${plusMinus(point.value, point.u, units.y)} ${units.y.symbol}`,
  });

export const useText = ({ used, manual }: PlotPoint): string =>
  t(used ? (manual ? 'plots.usedByHand' : 'plots.used') : 'plots.notUsed');

export const bandText = (curve: BandCurve): string =>
  t('plots.band', { percent: showPercent(curve.coverage) });

/** Table rows of instants: name, time, interval. */
export const instantRows = (instants: readonly PlotInstant[], unit: ShownUnit): string[][] =>
  instants.map(({ label, time, low, high }) => [
    label,
    timeText(time, unit),
    showRange(timeText(low, unit), timeText(high, unit)),
  ]);
