import { ExitframeError, failure, type Outcome, type ReasonValues } from '../core/reason';
import type { Seconds } from '../core/units';
import { gasOf } from './gas';
import type { Launcher } from './types';

/** Cross-section of the bore, m^2. */
export const boreArea = ({ boreDiameter }: Launcher): number => (Math.PI / 4) * boreDiameter ** 2;

/** The gap around the ball as a share of the bore, times its coefficient of discharge. */
export const gapShare = ({ boreDiameter, ballDiameter, gapDischarge }: Launcher): number =>
  gapDischarge * (1 - (ballDiameter / boreDiameter) ** 2);

/** Length of a plug of the bore's cross-section with the ball's volume and centre, m: each half is a third of the diameter for a close fit. */
export const plugLength = ({ boreDiameter, ballDiameter }: Launcher): number =>
  ((2 / 3) * ballDiameter ** 3) / boreDiameter ** 2;

/** Pressure inside at which the muzzle seal opens, Pa. */
export const sealOpensAt = ({ outsidePressure, sealBurstPressure }: Launcher): number =>
  outsidePressure + sealBurstPressure;

/** Time scale of a launch, s: that of the whole barrel under the constant force of the pressures at the start. */
export const timeScale = (launcher: Launcher): number => {
  const driving = launcher.air.pressure - launcher.residualPressure;
  return Math.sqrt(
    (2 * launcher.barrelLength * launcher.ballMass) / (driving * boreArea(launcher)),
  );
};

/** A launch that takes longer than this many of its time scales is given up. */
const LONGEST = 30;
/** So is a ball that has rested for this share of one: the force on it is greatest at first. */
const LONGEST_REST = 0.25;

export const doesNotLeave = (time: number, position: number): Outcome<never> =>
  failure(
    'ballDoesNotLeave',
    `By this model the ball does not leave the barrel: after ${(1000 * time).toFixed(0)} ms it is ${(1000 * position).toFixed(0)} mm from the rear seal.`,
    'Look at the residual pressure, the seal burst pressure and the frictions.',
    {
      form: 'rests',
      ...{ time: (1000 * time).toFixed(0), position: (1000 * position).toFixed(0) },
    },
  );

/** Gas constant of pure water vapour, J/(kg K): that of moist air is less. */
const VAPOUR = 461.5;

const bad = (what: string, remedy: string, values: ReasonValues): ExitframeError =>
  new ExitframeError('badLauncher', `The launcher cannot be computed: ${what}.`, remedy, {
    values,
  });

/** Refuses what is no launcher. */
export function checkLauncher(launcher: Launcher): void {
  const { boreDiameter, barrelLength, ballDiameter, startPosition, residualPressure } = launcher;
  const positive = { boreDiameter, barrelLength, ballDiameter, ballMass: launcher.ballMass };
  for (const [name, value] of Object.entries(positive)) {
    if (!(value > 0 && Number.isFinite(value))) {
      throw bad(`its ${name} is ${value}`, 'Give a number above 0, in metres or kilograms.', {
        form: 'notPositive',
        ...{ name, value: `${value}` },
      });
    }
  }
  const { sealBurstPressure, outsidePressure, gapDischarge, entranceLoss } = launcher;
  const { wallFriction, ballFriction, air } = launcher;
  const notNegative = {
    ...{ residualPressure, sealBurstPressure, outsidePressure, gapDischarge },
    ...{ entranceLoss, wallFriction, ballFriction },
  };
  for (const [name, value] of Object.entries(notNegative)) {
    if (!(value >= 0 && Number.isFinite(value))) {
      throw bad(`its ${name} is ${value}`, 'Give 0 or a number above it, in SI units.', {
        form: 'negative',
        ...{ name, value: `${value}` },
      });
    }
  }
  if (gapDischarge > 1) {
    throw bad(`its gapDischarge is ${gapDischarge}`, 'A coefficient of discharge is 0 to 1.', {
      form: 'discharge',
      value: `${gapDischarge}`,
    });
  }
  if (ballDiameter > boreDiameter) {
    throw bad('the ball is wider than the bore', 'Check both diameters and their units.', {
      form: 'tooWide',
    });
  }
  if (!(air.pressure > 0 && air.temperature > 0 && air.humidity >= 0 && air.humidity <= 1)) {
    throw bad(
      'its air has no such pressure, temperature or humidity',
      'Give pascals, kelvins and a humidity from 0 to 1.',
      { form: 'air' },
    );
  }
  const { gamma, constant } = gasOf(air);
  if (!(gamma > 1 && constant > 0 && constant < VAPOUR)) {
    throw bad(
      `air of ${air.temperature.toFixed(0)} K cannot hold so much vapour`,
      'Check its temperature and humidity.',
      { form: 'vapour', temperature: air.temperature.toFixed(0) },
    );
  }
  if (!(residualPressure < air.pressure)) {
    throw bad(
      'the residual pressure is not below that of the air outside',
      'Give the absolute pressure left in the barrel, in pascals.',
      { form: 'residual' },
    );
  }
  if (!(residualPressure < sealOpensAt(launcher))) {
    throw bad(
      'the residual pressure opens the muzzle seal before the shot',
      'The seal burst pressure is how far the pressure inside must exceed that outside.',
      { form: 'opens' },
    );
  }
  if (!(startPosition >= ballDiameter / 2 && startPosition < barrelLength - ballDiameter / 2)) {
    throw bad(
      `the ball starts ${(1000 * startPosition).toFixed(1)} mm from the rear seal`,
      'The start position is that of its centre: half a diameter from either seal or more.',
      { form: 'start', position: (1000 * startPosition).toFixed(1) },
    );
  }
}

/** Whether a ball that has rested since `rest` s is given up at `time` s; `scale` s is the shot's time scale. */
export const isGivenUp = (time: Seconds, rest: Seconds, scale: Seconds): boolean =>
  time > LONGEST * scale || time - rest > LONGEST_REST * scale;
