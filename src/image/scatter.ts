import { mean, median } from '../core/statistics';
import type { CentreMeasurement, FitEvidence } from './types';

/** Of frames that scatter more than this many times the usual, something else is the matter. */
const MOST_INFLATION = 3;
/** Largest factor on the variance that errors shared by neighbouring pixels are taken to make: coded films showed 800. */
const MOST_SHARED = 1000;
/** Fewer differences along the flight tell nothing of the scatter. */
const FEWEST_DIFFERENCES = 8;
/** Four centres tell of the scatter only where they follow each other: their span in usual steps. */
const LONGEST_SPAN = 6;
/** A difference beyond this many times the mean square is a centre gone astray. */
const STRAY = 9;
/**
 * Third differences of independent errors are correlated by -15/20, 6/20 and -1/20: their mean square
 * scatters as that of fewer independent ones, by 1 + 2 (0.75^2 + 0.3^2 + 0.05^2).
 */
const DIFFERENCES_PER_DOF = 2.3;
/**
 * Where neighbouring pixels share errors, the residuals tell the variance of the centre no better than so
 * many independent values would. Measured: balls of radius 20 px through x264, the variance over that told
 * scatters by a factor of 1.8.
 */
const DOF_OF_WAVES = 4;

/** How far errors of the fits exceed independent noise of the stated variance, and the part all frames share. */
export interface Scatter {
  /** By variance. */
  readonly inflation: number;
  /** Variances of x and y, px^2. */
  readonly unmodelled: readonly [x: number, y: number];
}

/** Pools the waves' pulls: their scatter about their mean over the frames is noise, the mean is the model's fault. */
export function learnScatter(frames: readonly FitEvidence[]): Scatter {
  const pulls = poolPulls(frames);
  return { inflation: 1 + chanceShared(pulls) * (likeliest(pulls) - 1), unmodelled: pulls.common };
}

/** What the pulls of several frames show. */
interface Pulls {
  /** Their scatter over that of independent noise, by variance. */
  readonly inflation: number;
  /** So many independent values it has. */
  readonly dof: number;
  /** Mean square that they have in common, px^2. */
  readonly common: readonly [number, number];
}

/** The inflation nearest to what is shown: errors that pixels share only add. */
const likeliest = ({ inflation }: Pulls) => Math.max(1, inflation);

/**
 * Chance that neighbouring pixels share errors. The camera's noise is known beforehand, and of a film
 * without compression it is all there is: then the inflation is one. A coded film's may be anything up to the
 * most, any factor as likely as another. Both are as likely beforehand; Bayes' rule, the scatter following a
 * chi-square law.
 */
function chanceShared({ inflation, dof }: Pulls): number {
  const steps = 400;
  const logs = Array.from({ length: steps }, (_, i) => {
    const log = ((i + 0.5) / steps) * Math.log(MOST_SHARED);
    return (dof / 2) * (inflation * (1 - Math.exp(-log)) - log);
  });
  const top = Math.max(0, ...logs);
  const shared = logs.reduce((sum, log) => sum + Math.exp(log - top) / steps, 0);
  return shared / (shared + Math.exp(-top));
}

function poolPulls(frames: readonly FitEvidence[]): Pulls {
  const usual = median(frames.map(({ inflation }) => inflation));
  const kept = frames.filter(({ inflation }) => inflation <= MOST_INFLATION * usual);
  const n = kept.length;
  const cells = kept[0]?.pull.length ?? 0;
  const commons: [number, number] = [0, 0];
  let ratio = 0;
  let dof = 0;
  for (let axis = 0; axis < 2; axis++) {
    let scatter = 0;
    let expected = 0;
    let common = 0;
    let squared = 0;
    for (let i = (axis * cells) / 2; i < ((axis + 1) * cells) / 2; i++) {
      let sum = 0;
      let squares = 0;
      let usually = 0;
      for (const frame of kept) {
        const pull = frame.pull[i] as number;
        sum += pull;
        squares += pull * pull;
        usually += (frame.expected[i] as number) / n;
      }
      expected += usually;
      squared += usually * usually;
      const variance = (squares - (sum * sum) / n) / (n - 1);
      scatter += variance;
      common += (sum / n) ** 2 - variance / n;
    }
    commons[axis] = Math.max(0, common);
    ratio += expected > 0 ? scatter / expected / 2 : 0.5;
    // Both axes look at the same waves.
    dof += squared > 0 ? ((n - 1) * expected ** 2) / squared / 2 : 0;
  }
  return { inflation: ratio, dof, common: commons };
}

/** A centre and when it was measured, in any unit. */
export interface TimedCentre {
  readonly time: number;
  readonly centre: CentreMeasurement;
}

/**
 * The centres of one flight with their covariances set right by the flight, all measured with the same
 * learnt look, in order of time.
 *
 * A codec carries blocks from frame to frame by whole quarters of a pixel (ITU-T H.264, 8.4.2.2) and
 * codes what is then wrong only where it exceeds its step: the whole ball is shifted, and a fit leaves
 * nothing of that over. But a flight is smooth: third differences of the places hold the errors alone.
 * They count as far as the residuals show that neighbouring pixels share errors at all, so that the few
 * frames of a film without compression do not add their chance to its uncertainties.
 */
export function judgeScatter(flight: readonly TimedCentre[]): CentreMeasurement[] {
  const centres = flight.map(({ centre }) => centre);
  const told = centres.flatMap(({ evidence }) => (evidence?.learnt ? [evidence] : []));
  const stated = told[0]?.learnt?.inflation;
  if (stated === undefined || told.length < FEWEST_DIFFERENCES) return centres;
  const shown = poolPulls(told);
  const chance = chanceShared(shown);
  const along = scatterInFlight(flight);
  const factorOf = (axis: 0 | 1) => {
    const differences = along === null ? 0 : along[axis].dof;
    const flown = along === null ? 0 : stated * along[axis].ratio;
    const shared =
      (DOF_OF_WAVES * likeliest(shown) + differences * flown) / (DOF_OF_WAVES + differences);
    return (1 + chance * (Math.max(1, shared) - 1)) / stated;
  };
  const factors = [factorOf(0), factorOf(1)] as const;
  // What the pulls have in common is as much too small as their scatter.
  const common = (axis: 0 | 1) =>
    shown.common[axis] * Math.max(1, (factors[axis] * stated) / shown.inflation);
  return centres.map((centre) => {
    const { evidence, varX, varY, covXY } = centre;
    if (evidence?.learnt === undefined) return centre;
    const [x, y] = evidence.learnt.unmodelled;
    return {
      ...centre,
      varX: factors[0] * (varX - x) + common(0),
      varY: factors[1] * (varY - y) + common(1),
      covXY: Math.sqrt(factors[0] * factors[1]) * covXY,
    };
  });
}

interface FlightScatter {
  /** Mean square third difference of the places over that expected by the covariances without the part that all frames share. */
  readonly ratio: number;
  readonly dof: number;
}

/** How x and y scatter along the flight; null: too few centres follow each other. */
function scatterInFlight(
  flight: readonly TimedCentre[],
): readonly [FlightScatter, FlightScatter] | null {
  const steps = flight.slice(1).map(({ time }, i) => time - (flight[i]?.time ?? time));
  if (steps.length === 0) return null;
  const longest = LONGEST_SPAN * median(steps);
  const ratios: [number[], number[]] = [[], []];
  for (let i = 3; i < flight.length; i++) {
    const four = flight.slice(i - 3, i + 1);
    const span = (four[3]?.time ?? 0) - (four[0]?.time ?? 0);
    if (!(span <= longest)) continue;
    let dx = 0;
    let dy = 0;
    let varX = 0;
    let varY = 0;
    for (const { time, centre } of four) {
      // Newton's divided difference of third order: none of a motion of second order in time.
      let weight = span ** 3;
      for (const other of four) if (other.time !== time) weight /= time - other.time;
      dx += weight * centre.x;
      dy += weight * centre.y;
      const [x, y] = centre.evidence?.learnt?.unmodelled ?? [0, 0];
      varX += weight * weight * (centre.varX - x);
      varY += weight * weight * (centre.varY - y);
    }
    ratios[0].push((dx * dx) / varX);
    ratios[1].push((dy * dy) / varY);
  }
  const x = withoutStray(ratios[0]);
  const y = withoutStray(ratios[1]);
  return x === null || y === null ? null : [x, y];
}

function withoutStray(ratios: readonly number[]): FlightScatter | null {
  let kept = ratios.filter(Number.isFinite);
  for (let round = 0; round < 3 && kept.length > 0; round++) {
    const most = STRAY * mean(kept);
    kept = kept.filter((ratio) => ratio <= most);
  }
  return kept.length < FEWEST_DIFFERENCES
    ? null
    : { ratio: mean(kept), dof: kept.length / DIFFERENCES_PER_DOF };
}
