import { mean, median } from '../core/statistics';
import { WAVES_PER_DOF } from './discEquations';
import { sureOnes } from './sure';
import type { CentreMeasurement, FitEvidence } from './types';

/** Of frames that scatter more than this many times the usual, something else is the matter. */
const MOST_INFLATION = 3;
/** Largest factor on the variance that errors shared by neighbouring pixels are taken to make. */
const MOST_SHARED = 1000;
/** A drawn picture has no noise to speak of; a variance of nothing would count for everything. */
const LEAST_NOISE = 0.01;
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
 * many independent values would. Measured, balls of radius 20 px through x264: the variance over that told
 * scatters by a third.
 */
const DOF_OF_WAVES = 18;
/**
 * The most by which an error that moves the whole ball may exceed what the residuals have of it, by
 * variance; measured as above, at rate factors 15 to 30.
 */
const MOST_UNSEEN = 5;
/**
 * Standard deviation of what a codec shifts a ball by in all frames alike, px: motion is told in quarters of
 * a pixel (ITU-T H.264, 8.4.2.2) and the error of one frame is handed on. Measured as above, at rate factor 23.
 */
const HANDED_ON = 0.02;

/** How far errors of the fits exceed independent noise of the stated variance, and the part all frames share. */
export interface Scatter {
  /** By variance. */
  readonly inflation: number;
  /** Variances of x and y, px^2. */
  readonly unmodelled: readonly [x: number, y: number];
}

/**
 * Pools what the fits of several frames leave over. Single pixels tell how large the noise is at the ball,
 * where the still scene may not have told it. Waves around the outline tell of errors that neighbouring pixels
 * share: their scatter about their mean over the frames is noise, the mean is the model's fault.
 */
export function learnScatter(frames: readonly FitEvidence[]): Scatter {
  const { noise, shared, chance, common, n } = poolEvidence(frames);
  // The pattern's own uncertainty moves all frames alike.
  const byShade = (axis: 0 | 1) => median(frames.map((frame) => frame.byShade[axis])) / n;
  return {
    inflation: noise * sharing(chance, shared),
    unmodelled: [Math.max(common[0], byShade(0)), Math.max(common[1], byShade(1))],
  };
}

/** The factor on the variance where neighbouring pixels share errors by this chance, and then by this much: sharing only adds. */
const sharing = (chance: number, shared: number) => 1 + chance * (Math.max(1, shared) - 1);

/**
 * Chance that neighbouring pixels share errors. Those of a film without compression do not: the scatter of the
 * waves over that of single pixels is one. Of a coded film it may be anything up to the most, any factor as
 * likely as another. Both are as likely beforehand; Bayes' rule, the scatter following a chi-square law of `dof`
 * degrees of freedom.
 */
function chanceShared(shared: number, dof: number): number {
  const steps = 400;
  const logs = Array.from({ length: steps }, (_, i) => {
    const log = ((i + 0.5) / steps) * Math.log(MOST_SHARED);
    return (dof / 2) * (shared * (1 - Math.exp(-log)) - log);
  });
  const top = Math.max(0, ...logs);
  const coded = logs.reduce((sum, log) => sum + Math.exp(log - top) / steps, 0);
  return coded / (coded + Math.exp(-top));
}

interface PooledEvidence {
  /** Mean square of single pixels over that of the stated noise. */
  readonly noise: number;
  /** Scatter of the waves over that which independent noise of this size gives them, by variance. */
  readonly shared: number;
  /** Chance that neighbouring pixels share errors at all. */
  readonly chance: number;
  /** Mean square that the waves have in common, px^2. */
  readonly common: readonly [number, number];
  readonly n: number;
}

function poolEvidence(frames: readonly FitEvidence[]): PooledEvidence {
  const usual = median(frames.map(({ inflation }) => inflation));
  const kept = frames.filter(({ inflation }) => inflation <= MOST_INFLATION * usual);
  const n = kept.length;
  const noise = Math.max(LEAST_NOISE, median(kept.map(({ white }) => white)));
  const cells = kept[0]?.pull.length ?? 0;
  const commons: [number, number] = [0, 0];
  let ratio = 0;
  let dof = 0;
  for (let axis = 0; axis < 2; axis++) {
    let scatter = 0;
    let expected = 0;
    let expectedSquares = 0;
    let common = 0;
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
      const variance = (squares - (sum * sum) / n) / (n - 1);
      scatter += variance;
      expected += usually;
      expectedSquares += usually * usually;
      common += (sum / n) ** 2 - variance / n;
    }
    commons[axis] = Math.max(0, common);
    ratio += expected > 0 ? scatter / expected / 2 : 0.5;
    if (expected > 0) dof += ((n - 1) * expected ** 2) / expectedSquares / WAVES_PER_DOF;
  }
  const shared = ratio / noise;
  return { noise, shared, chance: chanceShared(shared, dof), common: commons, n };
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
  const told = centres.filter(({ evidence }) => evidence?.learnt !== undefined);
  const stated = told[0]?.evidence?.learnt?.inflation;
  if (stated === undefined || told.length < FEWEST_DIFFERENCES) return centres;
  // What is hardly seen pulls the most and would be all that counts.
  const { noise, shared, chance } = poolEvidence(
    sureOnes(told).flatMap(({ evidence }) => evidence ?? []),
  );
  const flown = scatterInFlight(flight);
  // Together, each by what it knows.
  const [along, weight] = flown === null ? [0, 0] : [(stated * flown.ratio) / noise, flown.dof];
  const whole = Math.min(
    (DOF_OF_WAVES * shared + weight * along) / (DOF_OF_WAVES + weight),
    shared + (MOST_UNSEEN - 1) * Math.max(0, shared - 1),
  );
  const inflation = noise * sharing(chance, whole);
  const unseen = sharing(chance, whole / shared);
  return centres.map((centre) => {
    const { evidence, varX, varY, covXY } = centre;
    if (evidence?.learnt === undefined) return centre;
    const [x, y] = evidence.learnt.unmodelled;
    const factor = inflation / evidence.learnt.inflation;
    const right = (variance: number, unmodelled: number) => {
      const scattered = factor * (variance - unmodelled);
      const byCodec = (1 - noise / inflation) * scattered;
      return scattered + unseen * unmodelled + chance * Math.min(HANDED_ON ** 2, byCodec);
    };
    return { ...centre, varX: right(varX, x), varY: right(varY, y), covXY: factor * covXY };
  });
}

/**
 * Mean square third difference of the places over that expected by the covariances without the part that
 * all frames share, and the number of independent values it has; null: too few centres follow each other.
 */
function scatterInFlight(
  flight: readonly TimedCentre[],
): { readonly ratio: number; readonly dof: number } | null {
  const steps = flight.slice(1).map(({ time }, i) => time - (flight[i]?.time ?? time));
  if (steps.length === 0) return null;
  const longest = LONGEST_SPAN * median(steps);
  const ratios: number[] = [];
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
    ratios.push((dx * dx) / varX, (dy * dy) / varY);
  }
  let kept = ratios.filter(Number.isFinite);
  for (let round = 0; round < 3 && kept.length > 0; round++) {
    const most = STRAY * mean(kept);
    kept = kept.filter((ratio) => ratio <= most);
  }
  if (kept.length < 2 * FEWEST_DIFFERENCES) return null;
  return { ratio: mean(kept), dof: kept.length / DIFFERENCES_PER_DOF };
}
