import { expanded, isAvailable, type Reported } from '../core/estimate';
import { quantityParts } from '../core/format';
import type { Reason } from '../core/reason';
import type { UnitKind } from '../core/unitTable';
import type { FlightReport, Result, TargetReport } from '../shot/result';
import type { TextKey } from '../text/catalogue';
import { reasonWords } from '../text/reasonWords';
import { showAs, showNumber, showPercent, showQuantity } from '../text/show';
import { t } from '../text/text';
import { type Finding, type Line, line, lineText, reading, reasonLine } from './line';
import { soundFindings } from './soundFindings';

/** Direction, energy and drag, target, sound, the speed from the blur alone, rotation, shake, other things that flew. */
export function findings(result: Result, speedUnit: string): readonly Finding[] {
  const { exitVelocity, flight, sound, streak, spin, shake, rivals } = result;
  const told = [
    ...flightFindings(flight),
    ...(flight.target === null ? [] : targetFindings(flight.target, speedUnit)),
    ...(sound === null ? [] : soundFindings(sound, speedUnit)),
    one(t('report.findings.streak'), 'streak-speed', streakLine(streak, speedUnit)),
    one(t('report.findings.spin'), 'spin', spinLine(spin)),
    one(t('report.findings.shake'), 'shake', shakeLine(shake)),
    ...(rivals.length === 0
      ? []
      : [{ name: t('report.findings.rivals'), mark: 'rivals', lines: rivals.map(rivalLine) }]),
  ];
  if (isAvailable(exitVelocity)) return told;
  // Why there is no speed is said with the speed, and not again for all that hangs on it.
  const said = lineText(reasonLine(exitVelocity.unavailable));
  return told.filter(({ lines }) => lines.some((one) => lineText(one) !== said));
}

const one = (name: string, mark: string, told: Line): Finding => ({ name, mark, lines: [told] });

type Named = keyof typeof MARKS & string;

/** Findings that are one reading, with their marks. */
const MARKS = {
  elevation: 'elevation',
  kineticEnergy: 'kinetic-energy',
  momentum: 'momentum',
  boreAcceleration: 'bore-acceleration',
  deceleration: 'deceleration',
  dragCoefficient: 'drag-coefficient',
  targetTime: 'target-time',
  targetSpeed: 'target-speed',
  targetSpeedAfter: 'target-speed-after',
  targetEnergy: 'target-energy',
} as const;

const told = (
  name: Named,
  reported: Reported,
  kind: UnitKind,
  unit: string,
  key?: TextKey,
  values?: Readonly<Record<string, string>>,
): Finding =>
  one(t(`report.findings.${name}`), MARKS[name], reading(reported, kind, unit, key, values));

function flightFindings(flight: FlightReport): readonly Finding[] {
  const { elevation, kineticEnergy, momentum, boreAcceleration } = flight;
  const { deceleration, dragCoefficient } = flight;
  const reason = sharedReason([elevation, kineticEnergy, momentum, boreAcceleration, deceleration]);
  if (reason !== null) return [one(t('report.findings.flight'), 'flight', reasonLine(reason))];
  const way = wayOf(elevation);
  return [
    told('elevation', elevation, 'angle', '°', 'report.findings.elevationIs', { way }),
    told('kineticEnergy', kineticEnergy, 'energy', 'J'),
    told('momentum', momentum, 'momentum', 'kg m/s'),
    told(
      'boreAcceleration',
      boreAcceleration,
      'acceleration',
      'm/s²',
      'report.findings.boreAccelerationIs',
    ),
    told('deceleration', deceleration, 'acceleration', 'm/s²'),
    told('dragCoefficient', dragCoefficient, 'count', ''),
  ];
}

function wayOf(elevation: Reported): 'level' | 'up' | 'down' {
  if (!isAvailable(elevation)) return 'level';
  const [low, high] = elevation.interval;
  if (low <= 0 && high >= 0) return 'level';
  return elevation.value > 0 ? 'up' : 'down';
}

function targetFindings(target: TargetReport, speedUnit: string): readonly Finding[] {
  const { time, speedBefore, speedAfter, energyGivenUp } = target;
  const reason = sharedReason([time, speedBefore, speedAfter, energyGivenUp]);
  if (reason !== null) return [one(t('report.findings.target'), 'target', reasonLine(reason))];
  return [
    told('targetTime', time, 'time', 'ms'),
    told('targetSpeed', speedBefore, 'speed', speedUnit),
    told('targetSpeedAfter', speedAfter, 'speed', speedUnit),
    told('targetEnergy', energyGivenUp, 'energy', 'J'),
  ];
}

/** Several readings that are missing for one and the same reason are told of once. */
function sharedReason(readings: readonly Reported[]): Reason | null {
  const reasons = readings.flatMap((one) => (isAvailable(one) ? [] : [one.unavailable]));
  const [first, ...rest] = reasons;
  if (first === undefined || reasons.length < readings.length) return null;
  return rest.every(({ code, message }) => code === first.code && message === first.message)
    ? first
    : null;
}

/** An independent check: nothing of the positions goes into it. */
function streakLine(streak: Result['streak'], unit: string): Line {
  if (!('speed' in streak)) return reasonLine(streak.unavailable);
  const { speed, minusFit, agrees, frames } = streak;
  const { value, u } = expanded(minusFit);
  return line('report.findings.streakIs', {
    speed: showQuantity(expanded(speed), 'speed', unit),
    coverage: showPercent(speed.coverage),
    frames,
    agrees: agrees ? 'yes' : 'no',
    apart: showQuantity({ value: Math.abs(value), u }, 'speed', unit),
    slower: value < 0 ? 'yes' : 'no',
  });
}

function spinLine(spin: Reported): Line {
  if (!isAvailable(spin)) return reasonLine(spin.unavailable);
  const size = { value: Math.abs(spin.value), u: expanded(spin).u };
  const turns = { value: size.value / (2 * Math.PI), u: size.u / (2 * Math.PI) };
  return line('report.findings.spinIs', {
    rate: showAs(`${stated(size)} rad/s`),
    coverage: showPercent(spin.coverage),
    turns: showAs(stated(turns)),
    way: spin.value >= 0 ? 'clockwise' : 'anticlockwise',
  });
}

function stated(estimate: { readonly value: number; readonly u: number }): string {
  const parts = quantityParts(estimate);
  if (parts === null) return '';
  const { value, u, exponent } = parts;
  if (u === '') return `${value}${exponent}`;
  return exponent === '' ? `${value} ± ${u}` : `(${value} ± ${u})${exponent}`;
}

function shakeLine(shake: Result['shake']): Line {
  if (shake === null) return line('report.findings.noDetail');
  const { rms, most, u } = shake;
  if (most <= 2 * u) return line('report.findings.still', { within: showNumber(2 * u, 2) });
  return line('report.findings.moved', {
    rms: showNumber(rms, 2),
    most: showNumber(most, 2),
    u: showNumber(u, 2),
  });
}

const rivalLine = ({ frames, reason }: Result['rivals'][number]): Line =>
  line('report.findings.rival', { frames, reason: reasonWords(reason).message });
