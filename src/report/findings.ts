import { expanded, isAvailable, type Reported } from '../core/estimate';
import { formatCount, formatNumber, formatQuantity, percent, quantityParts } from '../core/format';
import type { Reason } from '../core/reason';
import type { UnitKind } from '../core/unitTable';
import type { FlightReport, Result, TargetReport } from '../shot/result';
import { alarm, type Finding, type Line, line, reading, reasonLine, strong } from './line';
import { soundFindings } from './soundFindings';

/** Direction, energy and drag, target, sound, the speed from the blur alone, rotation, shake, other things that flew. */
export function findings(result: Result, speedUnit: string): readonly Finding[] {
  const { flight, sound, streak, spin, shake, rivals } = result;
  return [
    ...flightFindings(flight),
    ...(flight.target === null ? [] : targetFindings(flight.target, speedUnit)),
    ...(sound === null ? [] : soundFindings(sound, speedUnit)),
    one('Speed from the blur alone', 'streak-speed', streakLine(streak, speedUnit)),
    one('Rotation', 'spin', spinLine(spin)),
    one('Shake', 'shake', line(shakeWords(shake))),
    ...(rivals.length === 0
      ? []
      : [{ name: 'Not the ball', mark: 'rivals', lines: rivals.map(rivalLine) }]),
  ];
}

const one = (name: string, mark: string, told: Line): Finding => ({ name, mark, lines: [told] });

const told = (
  name: string,
  mark: string,
  reported: Reported,
  kind: UnitKind,
  unit: string,
  after = '',
): Finding => one(name, mark, reading(reported, kind, unit, after));

function flightFindings(flight: FlightReport): readonly Finding[] {
  const { elevation, kineticEnergy, momentum, boreAcceleration } = flight;
  const { deceleration, dragCoefficient } = flight;
  const reason = sharedReason([elevation, kineticEnergy, momentum, boreAcceleration, deceleration]);
  if (reason !== null) {
    return [one('Direction, energy, acceleration', 'flight', reasonLine(reason))];
  }
  return [
    told('Direction at the exit', 'elevation', elevation, 'angle', '°', upOrDown(elevation)),
    told('Kinetic energy at the exit', 'kinetic-energy', kineticEnergy, 'energy', 'J'),
    told('Momentum at the exit', 'momentum', momentum, 'momentum', 'kg m/s'),
    told(
      'Mean acceleration in the bore',
      'bore-acceleration',
      boreAcceleration,
      'acceleration',
      'm/s²',
      ' over the last three ball diameters of the bore',
    ),
    told('Deceleration after the exit', 'deceleration', deceleration, 'acceleration', 'm/s²'),
    told('Drag coefficient it implies', 'drag-coefficient', dragCoefficient, 'count', ''),
  ];
}

function upOrDown(elevation: Reported): string {
  if (!isAvailable(elevation)) return '';
  const [low, high] = elevation.interval;
  if (low <= 0 && high >= 0) return ": level with the picture's rows within what is known";
  return elevation.value > 0 ? ": upwards from the picture's rows" : ': downwards';
}

function targetFindings(target: TargetReport, speedUnit: string): readonly Finding[] {
  const { time, speedBefore, speedAfter, energyGivenUp } = target;
  const reason = sharedReason([time, speedBefore, speedAfter, energyGivenUp]);
  if (reason !== null) return [one('At the target', 'target', reasonLine(reason))];
  return [
    told('At the target at', 'target-time', time, 'time', 'ms'),
    told('Speed at the target', 'target-speed', speedBefore, 'speed', speedUnit),
    told('Speed past the target', 'target-speed-after', speedAfter, 'speed', speedUnit),
    told('Energy given up to the target', 'target-energy', energyGivenUp, 'energy', 'J'),
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
  const apart = formatQuantity({ value: Math.abs(value), u }, 'speed', unit);
  const side = `${apart} ${value < 0 ? 'slower' : 'faster'} over the same frames`;
  return line(
    'The blur alone gives ',
    strong(formatQuantity(expanded(speed), 'speed', unit)),
    ` (${percent(speed.coverage)}, ${formatCount(frames)} ${frames === 1 ? 'frame' : 'frames'}). `,
    agrees
      ? `It agrees with the fit: ${side}.`
      : alarm(
          `It does not agree with the fit: ${side}. Check the exposure and the recording rate.`,
        ),
  );
}

function spinLine(spin: Reported): Line {
  if (!isAvailable(spin)) return reasonLine(spin.unavailable);
  const way = spin.value >= 0 ? 'clockwise' : 'anticlockwise';
  const size = { value: Math.abs(spin.value), u: expanded(spin).u };
  const turns = { value: size.value / (2 * Math.PI), u: size.u / (2 * Math.PI) };
  return line(
    strong(`${stated(size)} rad/s`),
    ` (${percent(spin.coverage)}): ${stated(turns)} turns a second, ${way} as seen.`,
  );
}

function stated(estimate: { readonly value: number; readonly u: number }): string {
  const parts = quantityParts(estimate);
  if (parts === null) return '';
  const { value, u, exponent } = parts;
  if (u === '') return `${value}${exponent}`;
  return exponent === '' ? `${value} ± ${u}` : `(${value} ± ${u})${exponent}`;
}

function shakeWords(shake: Result['shake']): string {
  if (shake === null) {
    return 'The still scene holds too little detail to tell whether camera or launcher moved.';
  }
  const { rms, most, u } = shake;
  if (most <= 2 * u) return `The scene stood still within ${formatNumber(2 * u, 2)} px.`;
  return `The scene moved by ${formatNumber(rms, 2)} px (root mean square), at most ${formatNumber(most, 2)} px, each known to ${formatNumber(u, 2)} px; it was taken off the positions.`;
}

const rivalLine = ({ frames, reason }: Result['rivals'][number]): Line =>
  line(`Seen in ${formatCount(frames)} ${frames === 1 ? 'frame' : 'frames'}: ${reason.message}`);
