import type { Reported } from '../core/estimate';
import { formatInterval, formatNumber, formatQuantity, percent } from '../core/format';
import { type UnitKind, unitOf } from '../core/unitTable';
import type { Result } from '../shot/result';
import { timeSymbol } from './line';
import { head, number, type Table } from './table';

/** Velocity, lead and moments, each as value, standard uncertainty, interval and degrees of freedom; or why there is none. */
export function mainTable(result: Result, speedUnit: string): Table {
  const { exitVelocity, exitTime, sealBurst, lead, contactLead } = result;
  const known = [exitVelocity, sealBurst, exitTime].find((one) => 'coverage' in one);
  const coverage = known !== undefined && 'coverage' in known ? `${percent(known.coverage)} ` : '';
  const row = (
    name: string,
    reported: Reported | Result['sealBurst'],
    kind: UnitKind,
    unit: string,
  ) =>
    'value' in reported
      ? [
          name,
          formatQuantity(reported, kind, unit, false),
          `${formatNumber(reported.u / unitOf(kind, unit).factor, 2)} ${unit}`,
          formatInterval(reported.interval, reported.u, kind, unit),
          reported.dof === null ? '∞' : formatNumber(reported.dof, 3),
        ]
      : [name, `none: ${reported.unavailable.message}`, '', '', ''];
  const span = (reported: Reported) => ('value' in reported ? timeSymbol(reported.value) : 'µs');
  return {
    caption: 'Result',
    columns: [
      head('Quantity'),
      number('Value'),
      number('Standard uncertainty'),
      number(`${coverage}interval`),
      number('dof'),
    ],
    rows: [
      row('Exit velocity', exitVelocity, 'speed', speedUnit),
      row('Lead: exit minus burst', lead, 'time', span(lead)),
      row('Seal opened at', sealBurst, 'time', 'ms'),
      row('Centre left at', exitTime, 'time', 'ms'),
      row('Leading point at the seal minus burst', contactLead, 'time', span(contactLead)),
    ],
  };
}
