import type { Quantity } from '../core/estimate';
import { quantity } from '../core/quantity';
import { failure, type Outcome, type Reason, success } from '../core/reason';
import { chiSquareCdf } from '../core/statistics';
import { type Curve, fitNonlinear } from '../fit/nonlinear';
import type { Fit } from '../fit/types';
import { LAUNCHER_INPUTS } from '../launch/inputs';
import { finerRuns, settled, withMeshError } from './finerRuns';
import {
  type Common,
  commonsOf,
  curveOf,
  type FittedShot,
  type FreeKey,
  type KnownSlopes,
  ORIGIN,
  type SeriesFitQuestion,
  sharedErrors,
} from './seriesCurve';

export interface FittedParameter {
  readonly key: FreeKey;
  readonly source: string;
  readonly unit: string;
  /** How far the input is off in every shot alike, SI. */
  readonly shift: Quantity;
  /** The input itself; null where the shots state different values of it. */
  readonly value: Quantity | null;
}

export interface SeriesFit {
  readonly parameters: readonly FittedParameter[];
  /** Correlation coefficients of the parameters, in their order. */
  readonly correlations: readonly (readonly number[])[];
  readonly observations: number;
  readonly chiSquare: number;
  readonly dof: number;
  /** Root of chi-square over its degrees of freedom; above 1 the uncertainties stated here are enlarged by it. */
  readonly birgeRatio: number;
  /** How often chance alone would leave as much over. */
  readonly probability: number;
  /** Inputs held to what is stated that the fit would have otherwise, in their standard uncertainties, largest first. */
  readonly pulls: readonly { readonly source: string; readonly inU: number }[];
  readonly warnings: readonly Reason[];
}

/**
 * An input settles to 0.2 % of the step it is moved by for the slopes, chi-square to 0.03 %: below what shots can tell,
 * and above the noise of gas dynamics on a mesh, where a shock opens the seal now in this cell's step, now in that one's.
 */
const TOLERANCES = { gainTolerance: 3e-4, stepTolerance: 1e-4, maxIterations: 25 };
/** Corrections for the mesh stand when they move by less than this share of what a shot is known to. */
const SETTLED = 0.1;
const MOST_CORRECTIONS = 3;
/** Of the work that is left, as progress tells it. */
const SHARE_A_ROUND = 0.6;
/** Steps that the free inputs are tried at before the solver starts, one after the other, in their own. */
const TRIED = [8, 4, 2, 1];
/** Of the solver's number, for the slope of a bent shift. */
const SLOPE_STEP = 1e-3;
/** Inputs pulled by less than this many of their uncertainties are not worth a word. */
const LEAST_PULL = 0.5;

/**
 * Fits inputs of the launcher to the speeds, and leads, of a series by weighted least squares: each free one is off by
 * the same amount in every shot. The other inputs, and what the shots' speeds share, take part as numbers known
 * beforehand: one observation of none with the stated standard uncertainty each, so the covariance holds them too.
 * The slopes are those of the model's quick runs; what these lack to its best is put right where the fit comes to.
 * Where more is left over than the uncertainties explain, those of the parameters are enlarged by the Birge ratio.
 * Failures: `tooFewForFit`, `fitNotStarted`, `fitNotSettled`, `freeInputsNotSeparable`. Throws `modelNotConverged`.
 */
export function fitSeries(
  question: SeriesFitQuestion,
  onProgress?: (share: number) => void,
): Outcome<SeriesFit> {
  const { shots, free, coverage } = question;
  const observations = shots.reduce((sum, { lead }) => sum + (lead === null ? 1 : 2), 0);
  if (free.length === 0 || observations <= free.length) {
    return failure(
      'tooFewForFit',
      `${observations} speeds and leads cannot tell ${free.length} inputs.`,
      'Free at least one input, and fewer than there are measured values.',
      { values: observations, inputs: free.length },
    );
  }
  const commons = commonsOf(shots, free);
  const none = new Float64Array(commons.length);
  let finer = finerRuns(question, commons, none);
  const { errors, speedU } = sharedErrors(withMeshError(shots, finer));
  const known = commons.filter((one) => !one.free).length + errors.length;
  const observed = [
    ...shots.map(({ speed }, i) => ({ value: speed.value, u: speedU[i] as number })),
    ...shots.flatMap(({ lead }) => (lead === null ? [] : [lead])),
    ...Array.from({ length: known }, () => ({ value: 0, u: 1 })),
  ];
  let rounds = 0;
  let told = 0;
  /** Each fit over again is taken for most of what is left. */
  const left = (after: number) => (1 - SHARE_A_ROUND) ** after;
  const tell = (share: number) => {
    told = Math.max(told, 1 - left(rounds) + share * (left(rounds) - left(rounds + 1)));
    onProgress?.(told);
  };
  const slopes: KnownSlopes = new Map();
  const curveNow = () => curveOf(question, commons, errors, finer.corrections, slopes, tell);
  const start = new Float64Array(commons.length + errors.length).fill(ORIGIN);
  const values = new Float64Array(observed.length);
  curveNow()(start, values, null);
  if (!values.every(Number.isFinite)) {
    return failure(
      'fitNotStarted',
      'With the inputs as stated the model lets the ball of at least one shot not leave, so there is nothing to start from.',
      'Look at that shot on its Models step, or do not count it.',
    );
  }
  const measured = Float64Array.from(observed, ({ value }) => value);
  const sigmas = Float64Array.from(observed, ({ u }) => u);
  const fitFrom = (numbers: Float64Array) =>
    fitNonlinear(curveNow(), measured, sigmas, numbers, TOLERANCES);
  let fit = fitFrom(nearest(curveNow(), measured, sigmas, start, free.length));
  // What the quick runs lack is worked out anew where the fit has come to, until that stands.
  while (fit.stop.converged && rounds < MOST_CORRECTIONS) {
    const counted = fit.parameters.map((number) => number - ORIGIN);
    const there = finerRuns(question, commons, counted);
    if (settled(finer, there, shots, SETTLED)) break;
    finer = there;
    rounds++;
    fit = fitFrom(fit.parameters);
  }
  onProgress?.(1);
  if (!fit.stop.converged) {
    return failure(
      'fitNotSettled',
      'The fit did not settle: by this model no values of the free inputs come near the shots, or several do alike.',
      'Try another model, free other inputs, or take shots at more lengths and pressures.',
    );
  }
  if (!fit.covariance.ok) {
    return failure(
      'freeInputsNotSeparable',
      'The shots cannot tell the free inputs apart: one of them changes nothing, or two change all alike.',
      'Free fewer inputs, use the leads, or take shots at more lengths and pressures.',
    );
  }
  return success(reportOf(question, commons, observations, fit, fit.covariance.value, coverage));
}

/**
 * The numbers of the first `free` inputs, taken one after the other to where less is left over, by smaller and smaller
 * steps: from what is stated, the solver alone has been seen to stop far from the best fit.
 */
function nearest(
  curve: Curve,
  measured: Float64Array,
  sigmas: Float64Array,
  start: Float64Array,
  free: number,
): Float64Array {
  const values = new Float64Array(measured.length);
  const at = (numbers: Float64Array) => {
    curve(numbers, values, null);
    const square = (y: number, i: number) =>
      ((y - (values[i] as number)) / (sigmas[i] as number)) ** 2;
    return { numbers, left: measured.reduce((sum, y, i) => sum + square(y, i), 0) };
  };
  let best = at(start);
  for (const size of TRIED) {
    for (let j = 0; j < free; j++) {
      for (const step of [size, -size]) {
        const tried = at(best.numbers.map((number, k) => (k === j ? number + step : number)));
        if (!(tried.left < best.left)) continue;
        best = tried;
        break;
      }
    }
  }
  return best.numbers;
}

function reportOf(
  { shots, free }: SeriesFitQuestion,
  commons: readonly Common[],
  observations: number,
  { parameters: numbers, chiSquare }: Fit,
  covariance: Float64Array,
  coverage: number,
): SeriesFit {
  const parameters = numbers.map((number) => number - ORIGIN);
  const count = parameters.length;
  const dof = observations - free.length;
  const birgeRatio = Math.sqrt(chiSquare / dof);
  const enlarged = Math.max(1, birgeRatio);
  const freedom = enlarged > 1 ? dof : null;
  const covarianceOf = (i: number, j: number) => covariance[i * count + j] as number;
  const fitted = free.map((key, i): FittedParameter => {
    const { source, unit, get } = LAUNCHER_INPUTS[key];
    const common = commons[i] as Common;
    const number = parameters[i] as number;
    const shift = common.shift(number);
    const slope =
      (common.shift(number + SLOPE_STEP) - common.shift(number - SLOPE_STEP)) / (2 * SLOPE_STEP);
    const u = slope * enlarged * Math.sqrt(covarianceOf(i, i));
    const stated = new Set(shots.map(({ launcher }) => get(launcher)));
    const [only] = stated;
    return {
      ...{ key, source, unit, shift: quantity(shift, u, freedom, coverage) },
      value:
        stated.size === 1 && only !== undefined
          ? quantity(only + shift, u, freedom, coverage)
          : null,
    };
  });
  const pulls = commons.flatMap(({ key, free: isFree }, j) =>
    isFree || Math.abs(parameters[j] as number) < LEAST_PULL
      ? []
      : [{ source: LAUNCHER_INPUTS[key].source, inU: parameters[j] as number }],
  );
  return {
    parameters: fitted,
    correlations: free.map((_, i) =>
      free.map(
        (_other, j) => covarianceOf(i, j) / Math.sqrt(covarianceOf(i, i) * covarianceOf(j, j)),
      ),
    ),
    ...{ observations, chiSquare, dof, birgeRatio },
    probability: 1 - chiSquareCdf(chiSquare, dof),
    pulls: pulls.sort((a, b) => Math.abs(b.inU) - Math.abs(a.inU)),
    warnings: fitted.flatMap((one) => (beyond(one, shots) ? [atTheEnd(one.source)] : [])),
  };
}

/** Whether the interval of an input reaches past what it can be in some shot: the linear uncertainty is then rough. */
function beyond({ key, shift }: FittedParameter, shots: readonly FittedShot[]): boolean {
  const [low, high] = shift.interval;
  return shots.some(({ launcher }) => {
    const stated = LAUNCHER_INPUTS[key].get(launcher);
    return stated + low < 0 || (key === 'gapDischarge' && stated + high > 1);
  });
}

const atTheEnd = (source: string): Reason => ({
  code: 'fitAtBound',
  message: `The interval of the ${source} reaches past what it can be: take it as a bound on one side only.`,
  remedy: `Measure the ${source}, or hold it to what is stated.`,
  values: { source },
});
