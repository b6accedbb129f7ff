import { expanded, isAvailable, type Quantity, type Reported } from '../core/estimate';
import { formatInterval, formatNumber, formatQuantity, percent } from '../core/format';
import { fromSi, type UnitKind, unitOf } from '../core/unitTable';
import type { Result } from '../shot/result';
import { type Line, line, strong, timeSymbol } from './line';

/*
 * What a result says, in sentences. Numbers as JCGM 100:2008, 7.2.6 asks: the uncertainty to two significant figures,
 * value and interval to the same place; 7.2.3 and 7.2.4 ask for what stands beside them.
 */

/** '181.34 ± 0.82 m/s' with its expanded uncertainty. */
export const velocityNumber = (velocity: Quantity, unit: string): string =>
  formatQuantity(expanded(velocity), 'speed', unit);

/** What the exit velocity is, its interval, standard uncertainty and degrees of freedom. */
export function velocityDetail(velocity: Quantity, unit: string): string {
  const { interval, u, dof } = velocity;
  const parts = [
    `interval ${formatInterval(interval, u, 'speed', unit)}`,
    `standard uncertainty ${uncertainty(u, 'speed', unit)}`,
    ...(dof === null ? [] : [`${Math.round(dof)} effective degrees of freedom`]),
  ];
  return `Speed of the ball's centre along the flight as it crosses the muzzle plane; ${parts.join(', ')}.`;
}

/** Short times in microseconds, longer ones in milliseconds; without their sign, which the words carry. */
const duration = (quantity: Quantity): string =>
  formatQuantity(
    expanded(quantity, quantity.value < 0 ? -1 : 1),
    'time',
    timeSymbol(quantity.value),
  );

const order = ({ value }: Quantity): string => (value >= 0 ? 'before' : 'after');

/** 'The seal opened 299 ± 52 µs before the ball's centre left.' */
export const leadLine = (lead: Quantity): Line =>
  line('The seal opened ', strong(duration(lead)), ` ${order(lead)} the ball's centre left.`);

/** A moment of the shot under its name. */
export interface Moment {
  readonly name: string;
  readonly text: string;
}

/** When the seal opened, the centre left, and the leading point was at the seal. */
export function moments(result: Result): readonly Moment[] {
  const { sealBurst, lead, exitTime, exitVelocity, contactLead } = result;
  return [
    { name: 'Seal opened at', text: momentText(sealBurst, lead) },
    { name: 'Centre left at', text: momentText(exitTime, exitVelocity) },
    ...(isAvailable(contactLead)
      ? [
          {
            name: 'Leading point at the seal',
            text: `${duration(contactLead)} ${contactLead.value >= 0 ? 'after' : 'before'} the seal opened`,
          },
        ]
      : []),
  ];
}

/** `told`: where the same reason already stands. */
function momentText(reported: Result['sealBurst'] | Reported, told: Reported): string {
  if ('value' in reported) {
    return `${formatQuantity(expanded(reported), 'time', 'ms')} (${percent(reported.coverage)})`;
  }
  return !isAvailable(told) && told.unavailable.code === reported.unavailable.code
    ? 'not found'
    : reported.unavailable.message;
}

/** The result in plain sentences that can be copied into a lab report as they are. */
export function quotable(result: Result, unit: string): readonly string[] {
  const { exitVelocity, lead, warnings } = result;
  const count = warnings.length;
  return [
    isAvailable(exitVelocity)
      ? quotedVelocity(exitVelocity, unit)
      : `No exit velocity can be stated: ${exitVelocity.unavailable.message}`,
    isAvailable(lead)
      ? quotedLead(lead)
      : `How long before the ball the seal opened cannot be stated: ${lead.unavailable.message}`,
    ...(isAvailable(exitVelocity) ? howFound(result) : []),
    ...(count > 0
      ? [
          `The measurement carries ${count === 1 ? 'a warning' : `${count} warnings`} that should be quoted with it.`,
        ]
      : []),
  ];
}

function quotedVelocity(velocity: Quantity, unit: string): string {
  const { u, dof } = velocity;
  const value = formatQuantity(velocity, 'speed', unit, false);
  const freedom = dof === null ? '' : ` (${Math.round(dof)} effective degrees of freedom)`;
  return `The ball's centre left the muzzle at ${value}, with a standard uncertainty of ${uncertainty(u, 'speed', unit)}; the interval from ${between(velocity.interval, u, 'speed', unit)} holds the true speed with a probability of ${percent(velocity.coverage)}${freedom}.`;
}

function quotedLead(lead: Quantity): string {
  const unit = timeSymbol(lead.value);
  const [low, high] = lead.interval;
  const size = { value: Math.abs(lead.value), u: lead.u };
  const found = `The muzzle seal opened ${formatQuantity(size, 'time', unit, false)} ${order(lead)} the ball's centre left, with a standard uncertainty of ${uncertainty(lead.u, 'time', unit)}`;
  const inWords = lead.value < 0 ? ([-high, -low] as const) : lead.interval;
  return low < 0 && high > 0
    ? `${found}; within its ${percent(lead.coverage)} interval it may have opened before or after.`
    : `${found} (${percent(lead.coverage)} interval ${between(inWords, lead.u, 'time', unit)}).`;
}

/** How it was found, as far as one sentence can tell. */
function howFound({ positions, monteCarlo }: Result): readonly string[] {
  const used = positions.filter((one) => one.used).length;
  const checked =
    'trials' in monteCarlo && monteCarlo.agrees ? ', checked by Monte Carlo (JCGM 101)' : '';
  return [
    `Found from the ball's centre in ${used} frames of high-speed film; uncertainties after JCGM 100${checked}.`,
  ];
}

/** '0.23 m/s' */
const uncertainty = (u: number, kind: UnitKind, unit: string): string =>
  `${formatNumber(fromSi(u, unitOf(kind, unit)), 2)} ${unit}`;

/** '180.52 m/s to 182.16 m/s': each number with its unit (NIST Special Publication 811, 7.7). */
function between(
  interval: readonly [number, number],
  u: number,
  kind: UnitKind,
  unit: string,
): string {
  return formatInterval(interval, u, kind, unit).replace(' to ', ` ${unit} to `);
}
