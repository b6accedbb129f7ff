import type { Reported } from '../core/estimate';
import { type UnitKind, unitOf } from '../core/unitTable';
import type { Result } from '../shot/result';
import { reasonWords } from '../text/reasonWords';
import { showInterval, showNumber, showPercent, showQuantity } from '../text/show';
import { t } from '../text/text';
import { timeSymbol } from './line';
import { head, number, type Table } from './table';

/** Velocity, lead and moments, each as value, standard uncertainty, interval and degrees of freedom; or why there is none. */
export function mainTable(result: Result, speedUnit: string): Table {
  const { exitVelocity, exitTime, sealBurst, lead, contactLead } = result;
  const known = [exitVelocity, sealBurst, exitTime].find((one) => 'coverage' in one);
  const coverage = known !== undefined && 'coverage' in known ? showPercent(known.coverage) : null;
  const row = (
    name: string,
    reported: Reported | Result['sealBurst'],
    kind: UnitKind,
    unit: string,
  ) =>
    'value' in reported
      ? [
          name,
          showQuantity(reported, kind, unit, false),
          `${showNumber(reported.u / unitOf(kind, unit).factor, 2)} ${unit}`,
          showInterval(reported.interval, reported.u, kind, unit),
          reported.dof === null ? '∞' : showNumber(reported.dof, 3),
        ]
      : [
          name,
          t('report.tables.main.none', { reason: reasonWords(reported.unavailable).message }),
          '',
          '',
          '',
        ];
  const span = (reported: Reported) => ('value' in reported ? timeSymbol(reported.value) : 'µs');
  return {
    caption: t('report.tables.main.caption'),
    columns: [
      head(t('report.tables.main.quantity')),
      number(t('report.tables.main.value')),
      number(t('report.tables.main.standardUncertainty')),
      number(
        t('report.tables.main.interval', {
          known: coverage === null ? 'no' : 'yes',
          coverage: coverage ?? '',
        }),
      ),
      number(t('report.tables.main.dof')),
    ],
    rows: [
      row(t('report.tables.main.exitVelocity'), exitVelocity, 'speed', speedUnit),
      row(t('report.tables.main.lead'), lead, 'time', span(lead)),
      row(t('report.tables.main.sealOpenedAt'), sealBurst, 'time', 'ms'),
      row(t('report.tables.main.centreLeftAt'), exitTime, 'time', 'ms'),
      row(t('report.tables.main.contactLead'), contactLead, 'time', span(contactLead)),
    ],
  };
}
