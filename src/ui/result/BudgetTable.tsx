import type { BudgetEntry, Result } from '../../app/resultTypes';
import { formatNumber } from '../../core/format';
import { Wide } from './Wide';

/** What each source adds to the uncertainty (layout of JCGM 100, Annex H.1). */
export function BudgetTable({ result }: { readonly result: Result }) {
  const { exitVelocity, sealBurst } = result.budget;
  return (
    <>
      <OneBudget title="Budget of the exit velocity" entries={exitVelocity} unit="m/s" />
      <OneBudget title="Budget of the burst time" entries={sealBurst} unit="s" />
    </>
  );
}

function OneBudget(props: {
  readonly title: string;
  readonly entries: readonly BudgetEntry[];
  readonly unit: string;
}) {
  const { title, entries, unit } = props;
  if (entries.length === 0) return null;
  const variance = entries.reduce((sum, one) => sum + one.contribution ** 2, 0);
  return (
    <Wide name={title}>
      <table>
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">Source</th>
            <th scope="col">Type</th>
            <th scope="col" class="number">
              u of the input
            </th>
            <th scope="col" class="number">
              Sensitivity
            </th>
            <th scope="col" class="number">
              Contribution, {unit}
            </th>
            <th scope="col" class="number">
              Share
            </th>
            <th scope="col" class="number">
              dof
            </th>
          </tr>
        </thead>
        <tbody>
          {[...entries]
            .sort((a, b) => b.contribution - a.contribution)
            .map((one) => (
              <tr key={one.source}>
                <th scope="row">{one.source}</th>
                <td>{one.type}</td>
                <td class="number">
                  {formatNumber(one.u, 2)} {one.unit === '1' ? '' : one.unit}
                </td>
                <td class="number">{formatNumber(one.sensitivity, 3)}</td>
                <td class="number">{formatNumber(one.contribution, 2)}</td>
                <td class="number">
                  {variance > 0 ? `${((100 * one.contribution ** 2) / variance).toFixed(1)} %` : ''}
                </td>
                <td class="number">{one.dof === null ? '∞' : formatNumber(one.dof, 3)}</td>
              </tr>
            ))}
        </tbody>
      </table>
    </Wide>
  );
}
