import { NOTEBOOK_COVERAGE } from '../../app/notebook';
import type { GroupStatistics } from '../../app/notebookStatistics';
import type { GroupMark } from '../../app/notebookTable';
import { expanded } from '../../core/estimate';
import { reasonWords } from '../../text/reasonWords';
import {
  showCount,
  showFixed,
  showList,
  showNumber,
  showNumberAt,
  showPercent,
  showQuantity,
} from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { WorkState } from '../panels/WorkState';
import { Wide } from '../result/Wide';
import { ReasonText } from '../shell/Notices';

/** What the shots of each group say together. */
export function GroupTable() {
  const { statistics, cancelStatistics, mixed } = useDesk().session.notebook;
  const unlike = mixed.value;
  return (
    <section class="stack" aria-labelledby="group-title">
      <h3 id="group-title">{t('notebook.together.title')}</h3>
      {unlike.length > 0 && (
        <p class="notice notice-warning" role="status">
          {t('notebook.together.mixed', {
            what: showList(unlike.map((one) => t(`notebook.choice.grouping.${one}`))),
          })}
        </p>
      )}
      <WorkState
        work={statistics.value}
        doing={t('notebook.together.working')}
        onCancel={cancelStatistics}
      >
        {(groups) => <Groups groups={groups} />}
      </WorkState>
    </section>
  );
}

function Groups({ groups }: { readonly groups: readonly GroupStatistics[] }) {
  const leftOut = groups.flatMap((group) => group.leftOut);
  return (
    <>
      <Wide name={t('notebook.together.name')}>
        <table>
          <caption>
            {t('notebook.together.caption', { coverage: showPercent(NOTEBOOK_COVERAGE) })}
          </caption>
          <thead>
            <tr>
              <th scope="col">{t('notebook.together.group')}</th>
              <th scope="col" class="number">
                {t('notebook.together.shots')}
              </th>
              <th scope="col" class="number">
                {t('notebook.together.mean')}
              </th>
              <th scope="col" class="number">
                {t('notebook.together.repeatability')}
              </th>
              <th scope="col" class="number">
                {t('notebook.together.scatter')}
              </th>
              <th scope="col" class="number">
                {t('notebook.together.birgeRatio')}
              </th>
              <th scope="col">{t('notebook.together.apart')}</th>
            </tr>
          </thead>
          <tbody>
            {groups.map((group) => (
              <Group key={groupWords(group.mark)} group={group} />
            ))}
          </tbody>
        </table>
      </Wide>
      <p class="muted">{t('notebook.together.what')}</p>
      {leftOut.length > 0 && (
        <details>
          <summary>
            {t('notebook.together.leftOut', {
              count: leftOut.length,
              number: showCount(leftOut.length),
            })}
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

function Group({ group: { mark, shots, report } }: { readonly group: GroupStatistics }) {
  const unit = useDesk().preferences.speedUnit.value;
  if (!report.ok) {
    return (
      <tr>
        <th scope="row">{groupWords(mark)}</th>
        <td class="number">{showCount(shots.length)}</td>
        <td colSpan={5} class="muted" data-code={report.reason.code}>
          {reasonWords(report.reason).message}
        </td>
      </tr>
    );
  }
  const { mean, repeatability, launcherScatter, consistency, grubbs, sharedU } = report.value;
  /** To two figures. */
  const plain = (value: number) => showQuantity({ value, u: 0.5 * value }, 'speed', unit, false);
  const range = (low: string, high: number) =>
    t('notebook.together.range', { low, high: plain(high) });
  const [low, high] = launcherScatter.interval;
  const apart = grubbs?.outlier ? shots[grubbs.index] : undefined;
  return (
    <tr>
      <th scope="row">{groupWords(mark)}</th>
      <td class="number">{showCount(shots.length)}</td>
      <td class="number">
        {showQuantity(expanded(mean), 'speed', unit)}
        <span class="notebook-below">{t('notebook.together.shared', { u: plain(sharedU) })}</span>
      </td>
      <td class="number">
        {showQuantity(repeatability, 'speed', unit, false)}
        <span class="notebook-below">
          {range(plain(repeatability.interval[0]), repeatability.interval[1])}
        </span>
      </td>
      <td class="number">
        {launcherScatter.value > 0 ? plain(launcherScatter.value) : t('notebook.together.noneSeen')}
        <span class="notebook-below">{range(low > 0 ? plain(low) : '0', high)}</span>
      </td>
      <td class="number">
        {showNumber(consistency.birgeRatio, 3)}
        <span class="notebook-below">{t(`notebook.together.verdict.${consistency.verdict}`)}</span>
      </td>
      <td class={apart === undefined ? 'muted' : 'verdict-differ'}>
        {apart ?? t('notebook.together.noneApart')}
      </td>
    </tr>
  );
}

function groupWords({ grouping, stated }: GroupMark): string {
  const [first, second] = stated ?? [];
  switch (grouping) {
    case 'none':
      return t('notebook.groups.all');
    case 'residualPressure':
      return first === undefined
        ? t('notebook.groups.noResidualPressure')
        : t('notebook.groups.residualPressure', { pressure: showNumber(first, 2) });
    case 'ball':
      return first === undefined || second === undefined
        ? t('notebook.groups.noBall')
        : t('notebook.groups.ball', { diameter: showFixed(first, 1), mass: showFixed(second, 2) });
    case 'barrelLength':
      return first === undefined
        ? t('notebook.groups.noBarrelLength')
        : t('notebook.groups.barrelLength', { length: showNumberAt(first, 6) });
  }
}
