import { expanded, isAvailable, type Quantity, type Reported } from '../core/estimate';
import { formatInterval } from '../core/format';
import { fromSi, type UnitKind, unitOf } from '../core/unitTable';
import type { Result } from '../shot/result';
import { reasonWords } from '../text/reasonWords';
import { showAs, showInterval, showNumber, showPercent, showQuantity } from '../text/show';
import { t } from '../text/text';
import { type Line, line, timeSymbol } from './line';

/*
 * What a result says, in sentences. Numbers as JCGM 100:2008, 7.2.6 asks: the uncertainty to two significant figures,
 * value and interval to the same place; 7.2.3 and 7.2.4 ask for what stands beside them.
 */

/** '181.34 ± 0.82 m/s' with its expanded uncertainty. */
export const velocityNumber = (velocity: Quantity, unit: string): string =>
  showQuantity(expanded(velocity), 'speed', unit);

/** What the exit velocity is, its interval, standard uncertainty and degrees of freedom. */
export function velocityDetail(velocity: Quantity, unit: string): string {
  const { interval, u, dof } = velocity;
  return t('report.statement.detail', {
    interval: showInterval(interval, u, 'speed', unit),
    u: uncertainty(u, 'speed', unit),
    ...freedom(dof),
  });
}

/** Effective degrees of freedom, for a sentence that leaves them out where they are unlimited. */
const freedom = (dof: number | null) => ({
  known: dof === null ? 'no' : 'yes',
  dof: dof === null ? '' : `${Math.round(dof)}`,
});

/** Short times in microseconds, longer ones in milliseconds; without their sign, which the words carry. */
const duration = (quantity: Quantity): string =>
  showQuantity(expanded(quantity, quantity.value < 0 ? -1 : 1), 'time', timeSymbol(quantity.value));

const order = ({ value }: Quantity): 'before' | 'after' => (value >= 0 ? 'before' : 'after');

/** 'The seal opened 299 ± 52 µs before the ball's centre left.' */
export const leadLine = (lead: Quantity): Line =>
  line('report.statement.lead', { lead: duration(lead), order: order(lead) });

/** A moment of the shot under its name. */
export interface Moment {
  readonly name: string;
  readonly text: string;
}

/** When the seal opened, the centre left, and the leading point was at the seal. */
export function moments(result: Result): readonly Moment[] {
  const { sealBurst, lead, exitTime, exitVelocity, contactLead } = result;
  return [
    { name: t('report.statement.sealOpenedAt'), text: momentText(sealBurst, lead) },
    { name: t('report.statement.centreLeftAt'), text: momentText(exitTime, exitVelocity) },
    ...(isAvailable(contactLead)
      ? [
          {
            name: t('report.statement.leadingPoint'),
            text: t('report.statement.fromOpening', {
              time: duration(contactLead),
              order: contactLead.value >= 0 ? 'after' : 'before',
            }),
          },
        ]
      : []),
  ];
}

/** `told`: where the same reason already stands. */
function momentText(reported: Result['sealBurst'] | Reported, told: Reported): string {
  if ('value' in reported) {
    return `${showQuantity(expanded(reported), 'time', 'ms')} (${showPercent(reported.coverage)})`;
  }
  return !isAvailable(told) && told.unavailable.code === reported.unavailable.code
    ? t('report.statement.notFound')
    : reasonWords(reported.unavailable).message;
}

/** The result in plain sentences that can be copied into a lab report as they are. */
export function quotable(result: Result, unit: string): readonly string[] {
  const { exitVelocity, lead, warnings } = result;
  return [
    isAvailable(exitVelocity)
      ? quotedVelocity(exitVelocity, unit)
      : t('report.statement.noVelocity', { reason: reasonWords(exitVelocity.unavailable).message }),
    isAvailable(lead)
      ? quotedLead(lead)
      : t('report.statement.noLead', { reason: reasonWords(lead.unavailable).message }),
    ...(isAvailable(exitVelocity) ? [howFound(result)] : []),
    ...(warnings.length > 0 ? [t('report.statement.warnings', { count: warnings.length })] : []),
  ];
}

function quotedVelocity(velocity: Quantity, unit: string): string {
  const { u, dof, interval } = velocity;
  return t('report.statement.quoted', {
    value: showQuantity(velocity, 'speed', unit, false),
    u: uncertainty(u, 'speed', unit),
    ...ends(interval, u, 'speed', unit),
    coverage: showPercent(velocity.coverage),
    ...freedom(dof),
  });
}

function quotedLead(lead: Quantity): string {
  const unit = timeSymbol(lead.value);
  const [low, high] = lead.interval;
  const inWords = lead.value < 0 ? ([-high, -low] as const) : lead.interval;
  return t('report.statement.quotedLead', {
    lead: showQuantity({ value: Math.abs(lead.value), u: lead.u }, 'time', unit, false),
    order: order(lead),
    u: uncertainty(lead.u, 'time', unit),
    open: low < 0 && high > 0 ? 'yes' : 'no',
    coverage: showPercent(lead.coverage),
    ...ends(inWords, lead.u, 'time', unit),
  });
}

/** How it was found, as far as one sentence can tell. */
const howFound = ({ positions, monteCarlo }: Result): string =>
  t('report.statement.found', {
    used: `${positions.filter((one) => one.used).length}`,
    checked: 'trials' in monteCarlo && monteCarlo.agrees ? 'yes' : 'no',
  });

/** '0.23 m/s' */
const uncertainty = (u: number, kind: UnitKind, unit: string): string =>
  `${showNumber(fromSi(u, unitOf(kind, unit)), 2)} ${unit}`;

/** '180.52 m/s' and '182.16 m/s': each number with its unit (NIST Special Publication 811, 7.7). */
function ends(
  interval: readonly [number, number],
  u: number,
  kind: UnitKind,
  unit: string,
): { readonly low: string; readonly high: string } {
  const [low = '', high = ''] = formatInterval(interval, u, kind, unit).split(' to ');
  return { low: showAs(`${low} ${unit}`), high: showAs(high) };
}
