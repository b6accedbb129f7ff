import { quantity } from '../core/quantity';
import { ExitframeError, failure, type Outcome, success } from '../core/reason';
import type { BudgetEntry, MonteCarloReport, Warning } from '../shot/result';
import { combine, entry } from '../uncertainty/budget';
import { agrees, numericalTolerance, propagate } from '../uncertainty/monteCarlo';
import { average } from './average';
import { boreWarnings, withBore } from './bore';
import { exitBudget, responses } from './budget';
import { type Choice, chooseModels } from './choice';
import type { ExitReport } from './exitReport';
import { type Flight, nominalSetting, prepareFlight, type Setting } from './flight';
import { sharedInputs } from './inputs';
import { T0, V0 } from './motion';
import { fittedPath } from './path';
import { exitChecks, fitReport, flightWarnings } from './report';
import { selectPoints } from './selection';
import { exitTrial } from './trials';
import type { ExitOptions, FlightPoint, SharedInputs } from './types';

const FEWEST_POINTS = 3;

/** Significant digits of u that the Monte Carlo check has to confirm (JCGM 101:2008, 8.2 leaves the choice). */
const CONFIRMED_DIGITS = 1;
/** Share of the half-width by which an end has to move before it is worth a warning. */
const NOTABLE_SHARE = 0.2;

/**
 * Exit speed and time from the ball's centres past the muzzle plane: the equation of motion along the axis fitted
 * in as many versions as asked for, averaged, with the budget of every input and its Monte Carlo check, which takes the
 * longest; `beforeTrials` is told when it begins.
 */
export function determineExit(
  points: readonly FlightPoint[],
  shared: SharedInputs,
  options: ExitOptions,
  beforeTrials: () => void = () => {},
): Outcome<ExitReport> {
  const budgeted = budgetExit(points, shared, options);
  if (!budgeted.ok) return budgeted;
  beforeTrials();
  const { report, choice, flight, nominal, unmodelled } = budgeted.value;
  const trials = propagate(
    exitTrial(choice, flight, nominal, sharedInputs(shared), unmodelled, options.seed),
    {
      coverage: options.coverage,
      // A fifth of what the comparison allows (JCGM 101:2008, 8.2).
      tolerance: numericalTolerance(report.exitVelocity.u, CONFIRMED_DIGITS) / 5,
      ...(options.mostTrials === undefined ? {} : { maxTrials: options.mostTrials }),
    },
  );
  if (!trials.ok) return success({ ...report, monteCarlo: { unavailable: trials.reason } });
  const { settled: _, ...propagated } = trials.value;
  return success(withMonteCarlo(report, propagated));
}

/**
 * The report with its check. Where the two intervals disagree by clause 8 the Monte Carlo interval is reported and a
 * failed check says so; a warning as well where an end moves by a good part of the interval's half-width.
 */
function withMonteCarlo(
  report: BudgetedExit['report'],
  propagated: Omit<MonteCarloReport, 'agrees'>,
): ExitReport {
  const { exitVelocity, fit, warnings } = report;
  const { interval } = propagated;
  const same = (tolerance: number) => agrees(exitVelocity.interval, interval, tolerance);
  const passed = same(numericalTolerance(exitVelocity.u, CONFIRMED_DIGITS));
  const half = (exitVelocity.interval[1] - exitVelocity.interval[0]) / 2;
  const message = passed
    ? 'The Monte Carlo check confirms the interval of the exit velocity.'
    : 'The Monte Carlo interval of the exit velocity is not quite that of the budget, and is the one reported.';
  const check = {
    ...{ code: 'monteCarlo', passed, message, remedy: null },
    values: { form: passed ? 'confirmed' : 'other' },
  };
  return {
    ...report,
    exitVelocity: passed ? exitVelocity : { ...exitVelocity, interval },
    fit: { ...fit, checks: [...fit.checks, check] },
    monteCarlo: { ...propagated, agrees: passed },
    warnings: same(NOTABLE_SHARE * half) ? warnings : [...warnings, DISAGREEMENT],
  };
}

const DISAGREEMENT: Warning = {
  code: 'monteCarloDisagrees',
  message:
    "The budget's interval of the exit velocity and the Monte Carlo interval differ a good deal; the Monte Carlo interval is reported.",
  remedy:
    'Look at the largest entries of the budget: one of them is known so poorly that its effect is not in proportion to it.',
};

interface BudgetedExit {
  readonly report: Omit<ExitReport, 'monteCarlo'>;
  readonly choice: Choice;
  readonly flight: Flight;
  readonly nominal: Setting;
  /** Standard uncertainty of the speed for what the fitted model leaves out, m/s. */
  readonly unmodelled: number;
}

/** The same without the Monte Carlo check. */
export function budgetExit(
  points: readonly FlightPoint[],
  shared: SharedInputs,
  options: ExitOptions,
): Outcome<BudgetedExit> {
  checkInputs(points, shared, options);
  const nominal = nominalSetting(shared);
  const flying = selectPoints(points, nominal, options.robust);
  if (flying.used.length < FEWEST_POINTS) {
    const { used } = flying;
    return failure(
      'tooFewFrames',
      `${used.length} usable frame${used.length === 1 ? ' shows' : 's show'} the ball past the muzzle plane; its speed and uncertainty need at least ${FEWEST_POINTS}.`,
      'Film at a higher rate or with a wider view past the muzzle, check the place of the muzzle plane, or place missing centres by hand.',
      { form: 'pastMuzzle', frames: used.length, fewest: FEWEST_POINTS },
    );
  }
  const selected =
    options.model === 'boreAndFlight'
      ? withBore(flying, points, nominal, options.robust)
      : success(flying);
  if (!selected.ok) return selected;
  const { used, weights, leftOut } = selected.value;
  const flight = prepareFlight(used, nominal, weights);
  if (!(flight.start.v0 > 0)) {
    return failure(
      'movesBackwards',
      'Along the flight axis the ball does not move away from the muzzle.',
      'Turn the direction of travel round, or check which object was followed.',
    );
  }
  const choice = chooseModels(options.model, flight, nominal);
  if (choice === null) {
    return failure(
      'modelNotDetermined',
      `${used.length} frames do not determine the model that was chosen.`,
      'Choose the automatic model or a simpler one, or use more frames.',
      { frames: used.length },
    );
  }
  const mean = average(choice.members);
  const shifts = responses(choice.members, nominal, sharedInputs(shared));
  if (shifts === null) {
    return failure(
      'sensitivityUnknown',
      'The fit fails as soon as one of its inputs is moved by its uncertainty.',
      'Look at the uncertainties given for scale, clock and muzzle plane, or use more frames.',
    );
  }
  const neglected = (index: number, unit: string) =>
    neglectedDrag(options, index, unit, flight, nominal, mean.theta[index] as number);
  const budgetOf = (index: number, unit: string): BudgetEntry[] => [
    ...exitBudget(index, unit, flight, choice, mean, shifts),
    ...neglected(index, unit),
  ];
  const budget = budgetOf(V0, 'm/s');
  const unmodelled = combine(neglected(V0, 'm/s')).u;
  const fitted = { choice, flight, nominal, shared: shifts, unmodelled };
  const speed = combine(budget);
  const time = combine(budgetOf(T0, 's'));
  const v0 = mean.theta[V0] as number;
  const t0 = (mean.theta[T0] as number) + flight.reference;
  return success({
    report: {
      exitVelocity: quantity(v0, speed.u, speed.dof, options.coverage),
      exitTime: quantity(t0, time.u, time.dof, options.coverage),
      fit: fitReport(flight, choice, mean, exitChecks(flight, choice, leftOut.length, v0)),
      budget,
      warnings: [
        ...flightWarnings(flight, choice, nominal),
        ...(options.model === 'boreAndFlight' ? boreWarnings(fitted, options.coverage) : []),
      ],
      path: fittedPath(fitted),
      fitted,
      leftOut,
    },
    choice,
    flight,
    nominal,
    unmodelled,
  });
}

/** Where a person insists on uniform motion, what the drag of a smooth sphere would have made of the result. */
function neglectedDrag(
  { model }: ExitOptions,
  index: number,
  unit: string,
  flight: Flight,
  nominal: Setting,
  value: number,
): BudgetEntry[] {
  if (model !== 'uniform') return [];
  const other = chooseModels('quadraticDragPrior', flight, nominal);
  if (other === null) return [];
  const gap = Math.abs((other.best.fit.theta[index] as number) - value);
  return [entry('air drag left out', 'B', gap, unit, 1, null)];
}

function checkInputs(
  points: readonly FlightPoint[],
  shared: SharedInputs,
  { coverage }: ExitOptions,
): void {
  const { metresPerPixel, ballDiameter, ballMass, airDensity } = shared;
  const positive = {
    'metres per pixel': metresPerPixel,
    'the ball diameter': ballDiameter.value,
    'the ball mass': ballMass.value,
    'the air density': airDensity.value,
  };
  for (const [what, value] of Object.entries(positive)) {
    if (!(value > 0 && Number.isFinite(value))) {
      throw new ExitframeError('badInput', `The exit fit was given ${what} as ${value}.`);
    }
  }
  if (!(coverage > 0 && coverage < 1)) {
    throw new ExitframeError('badInput', `A coverage of ${coverage} is not between 0 and 1.`);
  }
  for (const { frame, frameTime, line, along, alongU, timeU } of points) {
    if (![frameTime, line, along].every(Number.isFinite) || !(alongU > 0) || !(timeU >= 0)) {
      throw new ExitframeError(
        'badInput',
        `The centre of frame ${frame} came without a finite place, time or uncertainty.`,
      );
    }
  }
}
