import type { BudgetEntry, Result } from '../../app/resultTypes';
import { formatNumber, shortNumber } from '../../core/format';
import type { ShownUnit } from '../../plots/units';
import { useDesk } from '../desk';
import { Wide } from './Wide';
import { DISTRIBUTION_WORDS, speedShown } from './words';

/** What each source adds to the uncertainty (layout of JCGM 100, Annex H.1). */
export function BudgetTable({ result }: { readonly result: Result }) {
  const { exitVelocity, sealBurst } = result.budget;
  const speed = speedShown(useDesk().preferences.speedUnit.value);
  return (
    <>
      <OneBudget
        title="Budget of the exit velocity"
        entries={exitVelocity}
        unit={speed}
        speed={speed}
      />
      <OneBudget
        title="Budget of the burst time"
        entries={sealBurst}
        unit={SECONDS}
        speed={speed}
      />
    </>
  );
}

const SECONDS: ShownUnit = { symbol: 's', perSi: 1 };
const METRES_PER_SECOND = 'm/s';

/** Inputs that are speeds themselves are shown in the unit chosen for speeds. */
const inputUnit = (entry: BudgetEntry, speed: ShownUnit): ShownUnit => {
  if (entry.unit === METRES_PER_SECOND) return speed;
  return { symbol: entry.unit === '1' ? '' : entry.unit, perSi: 1 };
};

function OneBudget(props: {
  readonly title: string;
  readonly entries: readonly BudgetEntry[];
  readonly unit: ShownUnit;
  readonly speed: ShownUnit;
}) {
  const { title, entries, unit, speed } = props;
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
            <th scope="col">Distribution</th>
            <th scope="col" class="number">
              u of the input
            </th>
            <th scope="col" class="number">
              Sensitivity
            </th>
            <th scope="col" class="number">
              Contribution, {unit.symbol}
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
          {entries
            .map((one) => ({ ...one, input: inputUnit(one, speed) }))
            .sort((a, b) => b.contribution - a.contribution)
            .map((one) => (
              <tr key={one.source}>
                <th scope="row">{one.source}</th>
                <td>{one.type}</td>
                <td>{DISTRIBUTION_WORDS[one.distribution]}</td>
                <td class="number">
                  {shortNumber(one.u * one.input.perSi, 2)} {one.input.symbol}
                </td>
                <td class="number">
                  {shortNumber((one.sensitivity * unit.perSi) / one.input.perSi, 3)}
                </td>
                <td class="number">{shortNumber(one.contribution * unit.perSi, 2)}</td>
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
