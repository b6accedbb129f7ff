import { chiSquareCdf } from '../core/statistics';
import { akaike, akaikeWeights } from '../fit/modelChoice';
import type { ComparedModel, FitCheck } from '../shot/result';
import type { FitChoice } from '../shot/schema';
import type { Member } from './average';
import { type Candidate, type CandidateFit, createEstimator, type Estimator } from './candidate';
import { dragOf, SMOOTH_SPHERE_DRAG, WIDE_DRAG } from './drag';
import type { Flight, Setting } from './flight';
import { DRAG, PARAMETERS, V0 } from './motion';

/** Drag beyond this many times what is expected is not believed of a ball. */
const DRAG_LIMIT = 3;
/** In automatic choice, models with less than this share of the best one's weight are dropped. */
const NEGLIGIBLE = 1 / 20;
/** Scatter is called larger than stated where chance would give it less often than this. */
const SIGNIFICANCE = 0.05;

export interface Choice {
  readonly members: readonly Member[];
  /** The member of largest weight. */
  readonly best: Member;
  /** The same model without a muzzle zone; null where it has no fit. */
  readonly withoutZone: CandidateFit | null;
  readonly compared: readonly ComparedModel[];
  readonly checks: readonly FitCheck[];
  /** What the stated uncertainties of the points were multiplied by, at least 1. */
  readonly sigmaScale: number;
  /** Degrees of freedom behind that factor; null: stated uncertainties stand. */
  readonly noiseDof: number | null;
}

export const modelName = ({ motion, zone, dragCoefficient }: Candidate): string => {
  const known = motion !== 'uniform' && dragCoefficient !== null ? ', drag bounded' : '';
  return `${motion}${known}${zone ? ', muzzle zone' : ''}`;
};

/** The versions of the equation of motion a choice stands for. */
function candidatesOf(choice: FitChoice): readonly Omit<Candidate, 'zone'>[] {
  switch (choice) {
    case 'uniform':
      return [{ motion: 'uniform', dragCoefficient: null }];
    case 'constantAcceleration':
      return [{ motion: 'constantAcceleration', dragCoefficient: null }];
    case 'quadraticDrag':
      return [{ motion: 'quadraticDrag', dragCoefficient: null }];
    case 'quadraticDragPrior':
      return [{ motion: 'quadraticDrag', dragCoefficient: SMOOTH_SPHERE_DRAG }];
    default:
      return [
        { motion: 'uniform', dragCoefficient: WIDE_DRAG },
        { motion: 'constantAcceleration', dragCoefficient: WIDE_DRAG },
        { motion: 'quadraticDrag', dragCoefficient: WIDE_DRAG },
      ];
  }
}

interface Trial {
  readonly estimator: Estimator;
  readonly fit: CandidateFit;
}

function fitAll(
  choice: FitChoice,
  flight: Flight,
  nominal: Setting,
  sigmaScale: number,
  zone: boolean,
): Trial[] {
  const start = Float64Array.of(flight.start.t0, flight.start.v0, 0, 0);
  return candidatesOf(choice).flatMap((partial) => {
    const estimator = createEstimator({ ...partial, zone }, flight, nominal, sigmaScale);
    const fit = estimator.fit(nominal, start);
    return fit.ok && fit.value.dof > 0 ? [{ estimator, fit: fit.value }] : [];
  });
}

/** Fits every version of the equation of motion the choice allows and weighs them; null where none can be fitted. */
export function chooseModels(choice: FitChoice, flight: Flight, nominal: Setting): Choice | null {
  const stated = fitAll(choice, flight, nominal, 1, true);
  const ratios = stated.map(({ fit }) => fit.chiSquare / fit.dof);
  const calmest = stated[ratios.indexOf(Math.min(...ratios))];
  if (calmest === undefined) return null;
  const excess = calmest.fit.chiSquare / calmest.fit.dof;
  const sigmaScale = Math.sqrt(Math.max(1, excess));
  const tooWide = 1 - chiSquareCdf(calmest.fit.chiSquare, calmest.fit.dof) < SIGNIFICANCE;
  const trials = sigmaScale > 1 ? fitAll(choice, flight, nominal, sigmaScale, true) : stated;
  const n = flight.points.length;
  const checks: FitCheck[] = [];
  const criterion = ({ fit }: Trial): number =>
    akaike(fit.chiSquare, fit.parameters, n + 2, tooWide ? sigmaScale : 1);
  const criteria = trials.map((trial) => {
    const fault = implausible(trial.fit, nominal);
    if (fault === null) return criterion(trial);
    checks.push({
      code: 'implausibleModel',
      passed: false,
      message: `${modelName(trial.fit.candidate)} was left out: ${fault}`,
    });
    return Number.POSITIVE_INFINITY;
  });
  // Where every model is implausible the fits stand all the same; the failed checks say so.
  const usable = criteria.some(Number.isFinite) ? criteria : trials.map(criterion);
  const raw = usable.some(Number.isFinite)
    ? akaikeWeights(usable)
    : trials.map(() => 1 / trials.length);
  const limit = choice === 'auto' ? NEGLIGIBLE * Math.max(...raw) : 0;
  const kept = raw.map((weight) => (weight >= limit ? weight : 0));
  const total = kept.reduce((a, b) => a + b, 0);
  const members = trials
    .map((trial, i) => ({ ...trial, weight: (kept[i] as number) / total }))
    .filter(({ weight }) => weight > 0);
  const best = members.reduce((a, b) => (b.weight > a.weight ? b : a));
  const zoneless = fitAll(choice, flight, nominal, sigmaScale, false);
  const weights = new Map(members.map(({ fit, weight }) => [fit, weight]));
  return {
    members,
    best,
    withoutZone:
      zoneless.find(({ fit }) => fit.candidate.motion === best.fit.candidate.motion)?.fit ?? null,
    compared: [...trials, ...zoneless].map((trial) => {
      const { fit } = trial;
      return {
        model: modelName(fit.candidate),
        chiSquare: fit.chiSquare,
        dof: fit.dof,
        aicc: criterion(trial),
        weight: weights.get(fit) ?? 0,
        exitVelocity: fit.theta[V0] as number,
        u: Math.sqrt(fit.covariance[V0 * PARAMETERS + V0] as number),
      };
    }),
    checks,
    sigmaScale,
    noiseDof: tooWide ? calmest.fit.dof : null,
  };
}

/** What is not believable in a fit, as the end of a sentence; null where nothing is. */
function implausible(fit: CandidateFit, nominal: Setting): string | null {
  if (fit.candidate.motion === 'uniform') return null;
  const drag = fit.theta[DRAG] as number;
  if (drag < 0) return 'it has the ball speeding up after the exit.';
  const expected = dragOf(nominal, WIDE_DRAG.value);
  if (drag > DRAG_LIMIT * expected) {
    return `its drag is ${(drag / expected).toFixed(1)} times what a ball of that size and mass meets in air.`;
  }
  return null;
}
