import { chiSquareCheck, runsCheck, serialCorrelationCheck } from '../fit/residualChecks';
import type { FitCheck, FitParameter, FitReport, Warning } from '../shot/result';
import type { Average } from './average';
import { type Choice, modelName } from './choice';
import { leverageCheck, trendCheck } from './designChecks';
import { distanceOf, type Flight, type Setting } from './flight';
import { LOSS, PARAMETERS, T0 } from './motion';

/** Distance from the muzzle plane over which gas from the tube is reckoned with, in ball diameters. */
const ZONE_REACH = 3;
const MANY = 5;

const NAMES = [
  ['exitTime', 's'],
  ['exitVelocity', 'm/s'],
  ['drag', '1/m'],
  ['muzzleLoss', '1'],
] as const;
const IN_BORE = ['boreAcceleration', 'm/s²'] as const;

/** The fit as reported: parameters averaged over the models that take part, residuals likewise. */
export function fitReport(
  flight: Flight,
  choice: Choice,
  mean: Average,
  checks: readonly FitCheck[],
): FitReport {
  const { members, best } = choice;
  const names = best.fit.candidate.motion === 'boreAndFlight' ? [...NAMES, IN_BORE] : NAMES;
  const covariance = names.map((_, a) =>
    names.map(
      (_unused, b) =>
        (mean.within[a * PARAMETERS + b] as number) + (mean.between[a * PARAMETERS + b] as number),
    ),
  );
  const parameters: FitParameter[] = names.map(([name, unit], j) => ({
    name,
    unit,
    value: (mean.theta[j] as number) + (j === T0 ? flight.reference : 0),
    u: Math.sqrt(covariance[j]?.[j] as number),
  }));
  return {
    model: members.length > 1 ? 'averaged' : modelName(best.fit.candidate),
    parameters,
    covariance,
    chiSquare: best.fit.chiSquare * choice.sigmaScale ** 2,
    dof: best.fit.dof,
    residuals: meanResiduals(choice),
    downWeighted: flight.weights.filter((weight) => weight < 1).length,
    compared: choice.compared,
    checks,
  };
}

function meanResiduals({ members }: Choice): number[] {
  const n = members[0]?.fit.residuals.length ?? 0;
  return Array.from({ length: n }, (_, i) =>
    members.reduce((sum, { weight, fit }) => sum + weight * (fit.residuals[i] as number), 0),
  );
}

/** What was looked at in the fit, a plain sentence each. */
export function exitChecks(
  flight: Flight,
  choice: Choice,
  leftOut: number,
  velocity: number,
): FitCheck[] {
  const { best, members } = choice;
  const scaled = Float64Array.from(
    meanResiduals(choice),
    (r, i) => r / (flight.sigma[i] as number),
  );
  const loss = best.fit.theta[LOSS] as number;
  const lossU = Math.sqrt(best.fit.covariance[LOSS * PARAMETERS + LOSS] as number);
  const percent = (share: number) => `${(100 * share).toFixed(2)} %`;
  return [
    scatterCheck(choice),
    runsCheck(scaled),
    serialCorrelationCheck(scaled),
    leverageCheck(flight, choice, velocity),
    trendCheck(flight, choice),
    ...choice.checks,
    {
      code: 'models',
      passed: true,
      remedy: null,
      message:
        members.length > 1
          ? `The result is the average of ${members.length} versions of the equation of motion, weighed by how well each fits.`
          : `The result comes from one version of the equation of motion: ${modelName(best.fit.candidate)}.`,
      values: { versions: members.length },
    },
    {
      code: 'muzzleLoss',
      passed: true,
      remedy: null,
      message: `Besides drag the ball loses ${percent(loss)} of its speed near the muzzle, known to ${percent(lossU)}.`,
      values: { loss: percent(loss).replace('-', '\u2212'), u: percent(lossU) },
    },
    {
      code: 'leftOut',
      passed: true,
      remedy: null,
      message:
        leftOut === 0
          ? `All ${flight.points.length} centres were used.`
          : `${flight.points.length} centres were used and ${leftOut} left out; each says why.`,
      values: { used: flight.points.length, leftOut },
    },
  ];
}

/** Against the uncertainties as stated. */
const scatterCheck = ({ best, sigmaScale }: Choice): FitCheck =>
  chiSquareCheck(best.fit.chiSquare * sigmaScale ** 2, best.fit.dof);

/** What a person should know before trusting the result. */
export function flightWarnings(flight: Flight, choice: Choice, nominal: Setting): Warning[] {
  const warnings: Warning[] = [];
  const n = flight.points.length;
  if (n < MANY) {
    warnings.push({
      code: 'fewFrames',
      message: `Only ${n} frames carry the result: an outlier among them could not be told.`,
      values: { frames: n },
      remedy: 'Film at a higher rate or with a wider view past the muzzle.',
    });
  }
  const reach = ZONE_REACH * nominal.diameter;
  const distances = flight.points.map((point) => distanceOf(point, nominal)).filter((s) => s >= 0);
  if (!distances.some((s) => s < reach)) {
    warnings.push({
      code: 'nothingInMuzzleZone',
      message:
        'No frame shows the ball within three diameters of the muzzle, so what it lost there is assumed, not seen; the uncertainty counts it.',
      remedy: 'Move the view so that it begins at the muzzle.',
    });
  }
  if (!distances.some((s) => s > reach)) {
    warnings.push({
      code: 'nothingBeyondMuzzleZone',
      message:
        'No frame shows the ball more than three diameters past the muzzle, so drag and loss at the muzzle cannot be told apart.',
      remedy: 'Widen the view along the flight.',
    });
  }
  if (choice.sigmaScale > 1 && !scatterCheck(choice).passed) {
    const times = choice.sigmaScale.toFixed(1);
    warnings.push({
      code: 'scatterLargerThanStated',
      values: { times },
      message: `The centres scatter ${times} times as much as their uncertainty says; it was enlarged by that factor.`,
      remedy:
        'Look at the residuals for a pattern, reject frames with a disturbed outline, or check the clock.',
    });
  }
  if (choice.speedsUp) {
    warnings.push({
      code: 'speedsUp',
      message: 'The fitted path speeds up after the exit, which a free ball does not.',
      values: { form: 'fit' },
      remedy: 'Check scale, lens and clock, or leave frames near the edge of the picture out.',
    });
  }
  return warnings;
}
