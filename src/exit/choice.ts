import { chiSquareCdf, mean } from '../core/statistics';
import { akaike, akaikeWeights, evidenceRatio, together } from '../fit/modelChoice';
import type { ComparedModel, FitCheck } from '../shot/result';
import type { FitChoice } from '../shot/schema';
import { average, type Member } from './average';
import { type Candidate, type CandidateFit, createEstimator, type Estimator } from './candidate';
import { dragOf, WIDE_DRAG, ZONE_PROFILES, type ZoneProfile } from './drag';
import type { Flight, Setting } from './flight';
import { DRAG, PARAMETERS, V0 } from './motion';
import { ballDrag } from './sphereDrag';

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
  readonly compared: readonly ComparedModel[];
  readonly checks: readonly FitCheck[];
  /** Whether a version free to speed up after the exit does. */
  readonly speedsUp: boolean;
  /** What the stated uncertainties of the points were multiplied by, at least 1. */
  readonly sigmaScale: number;
  /** Degrees of freedom behind that factor; null: stated uncertainties stand. */
  readonly noiseDof: number | null;
}

export const modelName = ({ motion, zone, dragCoefficient }: Candidate): string => {
  const known = motion !== 'uniform' && dragCoefficient !== null ? ', drag bounded' : '';
  return `${motion}${known}${zone === null ? '' : ', muzzle zone'}`;
};

type Version = Pick<Candidate, 'motion' | 'dragCoefficient'>;

/** The versions of the equation of motion a choice stands for. */
function versionsOf(choice: FitChoice, flight: Flight, nominal: Setting): readonly Version[] {
  switch (choice) {
    case 'uniform':
      return [{ motion: 'uniform', dragCoefficient: null }];
    case 'constantAcceleration':
      return [{ motion: 'constantAcceleration', dragCoefficient: null }];
    case 'quadraticDrag':
      return [{ motion: 'quadraticDrag', dragCoefficient: null }];
    case 'quadraticDragPrior':
      return [{ motion: 'quadraticDrag', dragCoefficient: ballDrag(nominal, flight.start.v0) }];
    case 'boreAndFlight':
      return [{ motion: 'boreAndFlight', dragCoefficient: WIDE_DRAG }];
    default:
      return [
        { motion: 'uniform', dragCoefficient: WIDE_DRAG },
        { motion: 'constantAcceleration', dragCoefficient: WIDE_DRAG },
        { motion: 'quadraticDrag', dragCoefficient: WIDE_DRAG },
      ];
  }
}

interface Fitted {
  readonly estimator: Estimator;
  readonly fit: CandidateFit;
  /** Share among the zones tried before the film is looked at, times the room the zone leaves the parameters. */
  readonly share: number;
}

const NO_ZONE = [{ profile: null, share: 1 }] as const;

function fitAll(
  versions: readonly Version[],
  zones: readonly { readonly profile: ZoneProfile | null; readonly share: number }[],
  flight: Flight,
  nominal: Setting,
  sigmaScale: number,
): Fitted[] {
  const start = Float64Array.of(flight.start.t0, flight.start.v0, 0, 0, 0);
  return versions.flatMap((version) => {
    const same = zones.flatMap(({ profile, share }) => {
      const candidate = { ...version, zone: profile };
      const estimator = createEstimator(candidate, flight, nominal, sigmaScale);
      const fit = estimator.fit(nominal, start);
      if (!(fit.ok && fit.value.dof > 0)) return [];
      start.set(fit.value.theta);
      return [{ estimator, fit: fit.value, share }];
    });
    // Zones of one version differ in nothing that counts parameters: between them the likelihood is integrated over
    // the parameters (Laplace), which a zone that leaves them wider room gains from.
    if (same.length === 0) return [];
    const usual = mean(same.map(({ fit }) => fit.logVolume));
    return same.map((one) => ({
      ...one,
      share: one.share * Math.exp((one.fit.logVolume - usual) / 2),
    }));
  });
}

/** Fits every version of the equation of motion the choice allows and weighs them; null where none can be fitted. */
export function chooseModels(choice: FitChoice, flight: Flight, nominal: Setting): Choice | null {
  const versions = versionsOf(choice, flight, nominal);
  const stated = fitAll(versions, ZONE_PROFILES, flight, nominal, 1);
  const [first, ...others] = stated;
  if (first === undefined) return null;
  const excess = ({ fit }: Fitted) => fit.chiSquare / fit.dof;
  const calmest = others.reduce((a, b) => (excess(b) < excess(a) ? b : a), first);
  const sigmaScale = Math.sqrt(Math.max(1, excess(calmest)));
  const tooWide = 1 - chiSquareCdf(calmest.fit.chiSquare, calmest.fit.dof) < SIGNIFICANCE;
  const fitted =
    sigmaScale > 1 ? fitAll(versions, ZONE_PROFILES, flight, nominal, sigmaScale) : stated;
  // What is known beforehand counts as observed: two more than the points.
  const criterion = ({ fit, share }: Fitted): number =>
    akaike(fit.chiSquare, fit.parameters, flight.points.length + 2, tooWide ? sigmaScale : 1) -
    2 * Math.log(share);
  const { criteria, checks } = withoutImplausible(fitted, criterion, nominal);
  const raw = akaikeWeights(criteria);
  const limit = choice === 'auto' ? NEGLIGIBLE * Math.max(...raw) : 0;
  const kept = raw.map((weight) => (weight >= limit ? weight : 0));
  const total = kept.reduce((a, b) => a + b, 0);
  const members = fitted
    .map((one, i) => ({ ...one, weight: (kept[i] as number) / total }))
    .filter(({ weight }) => weight > 0);
  const zoneless = fitAll(versions, NO_ZONE, flight, nominal, sigmaScale);
  return {
    members,
    best: members.reduce((a, b) => (b.weight > a.weight ? b : a)),
    compared: compare([...fitted, ...zoneless], members, criterion),
    checks,
    speedsUp: fitted.some(({ fit }) => (fit.theta[DRAG] as number) < 0),
    sigmaScale,
    noiseDof: tooWide ? calmest.fit.dof : null,
  };
}

/** Criteria with implausible fits ruled out; where all are, they stand all the same and the failed checks say so. */
function withoutImplausible(
  fitted: readonly Fitted[],
  criterion: (one: Fitted) => number,
  nominal: Setting,
): { criteria: number[]; checks: FitCheck[] } {
  const faults = fitted.map(({ fit }) => implausible(fit, nominal));
  const plain = fitted.map(criterion);
  const kept = plain.map((value, i) => (faults[i] === null ? value : Number.POSITIVE_INFINITY));
  const told = new Map(
    fitted.flatMap(({ fit }, i): (readonly [string, FitCheck])[] => {
      const fault = faults[i] ?? null;
      if (fault === null) return [];
      const check = notBelieved(modelName(fit.candidate), fault);
      return [[check.message, check]];
    }),
  );
  const finite = kept.some(Number.isFinite) ? kept : plain;
  return {
    // A sample too small for the small-sample criterion of every model: the shares beforehand decide.
    criteria: finite.some(Number.isFinite)
      ? finite
      : fitted.map(({ share }) => -2 * Math.log(share)),
    checks: [...told.values()],
  };
}

/** What is not believable in a fit, as the end of a sentence. */
const FAULTS = {
  speedsUp: 'it has the ball speeding up after the exit.',
  drag: `its drag is more than ${DRAG_LIMIT} times what a ball of that size and mass meets in air.`,
} as const;
type Fault = keyof typeof FAULTS;

const notBelieved = (model: string, fault: Fault): FitCheck => ({
  code: 'implausibleModel',
  passed: false,
  message: `${model} is not believable: ${FAULTS[fault]}`,
  remedy: 'Check scale, clock and the place of the muzzle plane, or use more frames.',
  values: { form: fault, model, most: DRAG_LIMIT },
});

/** What is not believable in a fit; null where nothing is. */
function implausible(fit: CandidateFit, nominal: Setting): Fault | null {
  if (fit.candidate.motion === 'uniform') return null;
  const drag = fit.theta[DRAG] as number;
  if (drag < 0) return 'speedsUp';
  const expected = dragOf(nominal, WIDE_DRAG.value);
  return drag > DRAG_LIMIT * expected ? 'drag' : null;
}

/** One line a model: its zones taken together. */
function compare(
  fitted: readonly Fitted[],
  members: readonly Member[],
  criterion: (one: Fitted) => number,
): ComparedModel[] {
  const names = [...new Set(fitted.map(({ fit }) => modelName(fit.candidate)))];
  const groups = names.map((model) => {
    const same = fitted.filter(({ fit }) => modelName(fit.candidate) === model);
    return { model, same, ofAll: together(same.map(criterion)) };
  });
  const least = Math.min(...groups.map(({ ofAll }) => ofAll));
  return groups.map(({ model, same, ofAll }) => {
    const criteria = same.map(criterion);
    const best = same[criteria.indexOf(Math.min(...criteria))] as Fitted;
    const shares = akaikeWeights(criteria.some(Number.isFinite) ? criteria : criteria.map(() => 0));
    const mixed = average(same.map((one, i) => ({ ...one, weight: shares[i] as number })));
    const at = V0 * PARAMETERS + V0;
    const weight = members
      .filter(({ fit }) => same.some((one) => one.fit === fit))
      .reduce((sum, member) => sum + member.weight, 0);
    return {
      model,
      chiSquare: best.fit.chiSquare,
      dof: best.fit.dof,
      aicc: ofAll,
      weight,
      evidenceRatio: evidenceRatio(ofAll, least),
      exitVelocity: mixed.theta[V0] as number,
      u: Math.sqrt((mixed.within[at] as number) + (mixed.between[at] as number)),
    };
  });
}
