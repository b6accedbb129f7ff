import { type GroupStatistics, NOTEBOOK_COVERAGE } from '../../app/notebook';
import { expanded } from '../../core/estimate';
import { formatCount, formatNumber, formatQuantity, percent } from '../../core/format';
import { useDesk } from '../desk';
import { WorkState } from '../panels/WorkState';
import { Wide } from '../result/Wide';
import { ReasonText } from '../shell/Notices';

/** What the shots of each group say together. */
export function GroupTable() {
  const { statistics, cancelStatistics } = useDesk().session.notebook;
  return (
    <section class="stack" aria-labelledby="group-title">
      <h3 id="group-title">What they say together</h3>
      <WorkState work={statistics.value} doing="Summing up" onCancel={cancelStatistics}>
        {(groups) => <Groups groups={groups} />}
      </WorkState>
    </section>
  );
}

function Groups({ groups }: { readonly groups: readonly GroupStatistics[] }) {
  const leftOut = groups.flatMap((group) => group.leftOut);
  return (
    <>
      <Wide name="What the shots say together">
        <table>
          <caption>Exit velocity, group by group ({percent(NOTEBOOK_COVERAGE)})</caption>
          <thead>
            <tr>
              <th scope="col">Group</th>
              <th scope="col" class="number">
                Shots
              </th>
              <th scope="col" class="number">
                Mean
              </th>
              <th scope="col" class="number">
                Repeatability
              </th>
              <th scope="col" class="number">
                Launcher’s own scatter
              </th>
              <th scope="col" class="number">
                Birge ratio
              </th>
              <th scope="col">Stands apart</th>
            </tr>
          </thead>
          <tbody>
            {groups.map((group) => (
              <Group key={group.label} group={group} />
            ))}
          </tbody>
        </table>
      </Wide>
      <p class="muted">
        Mean: weighted by each shot’s own uncertainty and the scatter between shots, what they share
        kept in full. Repeatability: standard deviation of the speeds as measured. Launcher’s own
        scatter: what is left of it when the shots’ own uncertainties are taken off. Birge ratio:
        about 1 where the uncertainties explain the scatter. Stands apart: farther out than chance
        puts one shot in twenty series (Grubbs).
      </p>
      {leftOut.length > 0 && (
        <details>
          <summary>
            {formatCount(leftOut.length)} counted {leftOut.length === 1 ? 'shot has' : 'shots have'}{' '}
            no exit velocity to count
          </summary>
          <ul class="notebook-problems">
            {leftOut.map(({ name, reason }) => (
              <li key={name}>
                <strong>{name}</strong>
                <ReasonText reason={reason} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Group({ group: { label, shots, report } }: { readonly group: GroupStatistics }) {
  const unit = useDesk().preferences.speedUnit.value;
  if (!report.ok) {
    return (
      <tr>
        <th scope="row">{label}</th>
        <td class="number">{formatCount(shots.length)}</td>
        <td colSpan={5} class="muted" data-code={report.reason.code}>
          {report.reason.message}
        </td>
      </tr>
    );
  }
  const { mean, repeatability, launcherScatter, consistency, grubbs, sharedU } = report.value;
  /** To two figures. */
  const plain = (value: number) => formatQuantity({ value, u: 0.5 * value }, 'speed', unit, false);
  const [low, high] = launcherScatter.interval;
  const apart = grubbs?.outlier ? shots[grubbs.index] : undefined;
  return (
    <tr>
      <th scope="row">{label}</th>
      <td class="number">{formatCount(shots.length)}</td>
      <td class="number">
        {formatQuantity(expanded(mean), 'speed', unit)}
        <span class="notebook-below">shared by them: u = {plain(sharedU)}</span>
      </td>
      <td class="number">
        {formatQuantity(repeatability, 'speed', unit, false)}
        <span class="notebook-below">
          {plain(repeatability.interval[0])} to {plain(repeatability.interval[1])}
        </span>
      </td>
      <td class="number">
        {launcherScatter.value > 0 ? plain(launcherScatter.value) : 'none seen'}
        <span class="notebook-below">
          {low > 0 ? plain(low) : '0'} to {plain(high)}
        </span>
      </td>
      <td class="number">
        {formatNumber(consistency.birgeRatio, 3)}
        <span class="notebook-below">
          {consistency.consistent ? 'explained' : 'more than explained'}
        </span>
      </td>
      <td class={apart === undefined ? 'muted' : 'verdict-differ'}>{apart ?? 'none'}</td>
    </tr>
  );
}
