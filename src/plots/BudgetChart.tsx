import { scaleLinear } from 'd3';
import { useId } from 'preact/hooks';
import './plots.css';
import { placeOf } from '../core/format';
import { sourceWords } from '../text/names';
import { showFixed, showNumber } from '../text/show';
import { t } from '../text/text';
import type { BudgetChartProps } from './props';

const percent = (share: number) => (share < 0.005 ? '< 1 %' : `${Math.round(share * 100)} %`);

/** Contributions to the standard uncertainty, largest first; shares are of the sum of their squares. */
export function BudgetChart({ entries, combined, unit }: BudgetChartProps) {
  const hatch = useId();
  // To the figures that the whole is stated to.
  const decimals = combined > 0 ? Math.max(0, -placeOf(combined * unit.perSi)) : 2;
  const least = 10 ** -decimals;
  const stated = (x: number) =>
    x < least / 2 ? `< ${showFixed(least, decimals)}` : showFixed(x, decimals);
  const sorted = [...entries].sort((a, b) => b.contribution - a.contribution);
  const total = sorted.reduce((sum, { contribution }) => sum + contribution ** 2, 0);
  const length = scaleLinear()
    .domain([0, Math.max(combined, sorted[0]?.contribution ?? 0, Number.MIN_VALUE)])
    .range([0, 100]);
  return (
    <table class="plot-budget">
      <caption>
        {t('plots.budget.caption', { unit: unit.symbol })}
        <span class="plot-budget-types">
          <Swatch fill="var(--plot-used)" /> {t('plots.budget.typeA')}
          <Swatch fill={`url(#${hatch})`} /> {t('plots.budget.typeB')}
        </span>
      </caption>
      <thead class="hidden-text">
        <tr>
          <th scope="col">{t('report.tables.budget.source')}</th>
          <th scope="col">{t('report.tables.budget.contribution', { unit: unit.symbol })}</th>
          <th scope="col">{t('report.tables.budget.share')}</th>
        </tr>
      </thead>
      <tbody>
        {sorted.map(({ source, type, contribution }) => (
          <tr key={source}>
            <th scope="row">
              {sourceWords(source)}
              <span class="hidden-text">{t('plots.budget.ofType', { type })}</span>
              <svg class="plot-budget-bar" width="100%" height="9" aria-hidden="true">
                <rect
                  width={`${length(contribution)}%`}
                  height="9"
                  fill={type === 'A' ? 'var(--plot-used)' : `url(#${hatch})`}
                />
              </svg>
            </th>
            <td>{stated(contribution * unit.perSi)}</td>
            <td>{total > 0 ? percent(contribution ** 2 / total) : ''}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">
            {t('plots.budget.combined')}
            <svg class="plot-budget-bar" width="100%" height="9" aria-hidden="true">
              <defs>
                <pattern
                  id={hatch}
                  width="5"
                  height="5"
                  patternUnits="userSpaceOnUse"
                  patternTransform="rotate(45)"
                >
                  <rect width="5" height="5" fill="var(--plot-used)" fill-opacity="0.25" />
                  <rect width="2" height="5" fill="var(--plot-used)" />
                </pattern>
              </defs>
              <rect width={`${length(combined)}%`} height="9" class="plot-budget-combined" />
            </svg>
          </th>
          <td>{showNumber(combined * unit.perSi, 2)}</td>
          <td />
        </tr>
      </tfoot>
    </table>
  );
}

const Swatch = ({ fill }: { readonly fill: string }) => (
  <svg width="14" height="9" aria-hidden="true">
    <rect width="14" height="9" fill={fill} />
  </svg>
);
