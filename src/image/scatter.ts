import { median } from '../core/statistics';
import type { CentreMeasurement, FitEvidence } from './types';

/** Of frames that scatter more than this many times the usual, something else is the matter. */
const MOST_INFLATION = 3;
/** Fewer differences along the flight tell nothing of the scatter. */
const FEWEST_DIFFERENCES = 8;
/** Four centres tell of the scatter only where they follow each other: their span in usual steps. */
const LONGEST_SPAN = 6;
/** A difference beyond this many times the mean square is a centre gone astray. */
const STRAY = 9;
/**
 * The most by which an error that moves the whole ball may exceed what the residuals have of it, by
 * variance. Measured: balls of radius 20 px through x264 at rate factors 15 to 30 err by up to twice
 * what the residuals tell.
 */
const MOST_UNSEEN = 5;

/** How far errors of the fits exceed independent noise of the stated variance, and the part all frames share. */
export interface Scatter {
  /** By variance. */
  readonly inflation: number;
  /** Variances of x and y, px^2. */
  readonly unmodelled: readonly [x: number, y: number];
}

/** Pools the waves' pulls: their scatter about their mean over the frames is noise, the mean is the model's fault. */
export function learnScatter(frames: readonly FitEvidence[]): Scatter {
  const { inflation, common, n } = poolPulls(frames);
  // The pattern's own uncertainty moves all frames alike.
  const byShade = (axis: 0 | 1) => median(frames.map((frame) => frame.byShade[axis])) / n;
  return {
    inflation,
    unmodelled: [Math.max(common[0], byShade(0)), Math.max(common[1], byShade(1))],
  };
}

function poolPulls(frames: readonly FitEvidence[]): {
  readonly inflation: number;
  readonly common: readonly [number, number];
  readonly n: number;
} {
  const usual = median(frames.map(({ inflation }) => inflation));
  const kept = frames.filter(({ inflation }) => inflation <= MOST_INFLATION * usual);
  const n = kept.length;
  const cells = kept[0]?.pull.length ?? 0;
  const commons: [number, number] = [0, 0];
  let ratio = 0;
  for (let axis = 0; axis < 2; axis++) {
    let scatter = 0;
    let expected = 0;
    let common = 0;
    for (let i = (axis * cells) / 2; i < ((axis + 1) * cells) / 2; i++) {
      let sum = 0;
      let squares = 0;
      for (const frame of kept) {
        const pull = frame.pull[i] as number;
        sum += pull;
        squares += pull * pull;
        expected += (frame.expected[i] as number) / n;
      }
      const variance = (squares - (sum * sum) / n) / (n - 1);
      scatter += variance;
      common += (sum / n) ** 2 - variance / n;
    }
    commons[axis] = Math.max(0, common);
    ratio += expected > 0 ? scatter / expected / 2 : 0.5;
  }
  return { inflation: ratio, common: commons, n };
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
 * They count as far as the residuals too show more than the camera's noise, so that the
 * few frames of a film without compression do not add their chance to its uncertainties.
 */
export function judgeScatter(flight: readonly TimedCentre[]): CentreMeasurement[] {
  const centres = flight.map(({ centre }) => centre);
  const told = centres.flatMap(({ evidence }) => (evidence?.learnt ? [evidence] : []));
  const stated = told[0]?.learnt?.inflation;
  if (stated === undefined || told.length < FEWEST_DIFFERENCES) return centres;
  const shown = poolPulls(told);
  const along = scatterInFlight(flight);
  const inflation = along === null ? shown.inflation : clamp(stated * along, shown.inflation);
  const unseen = inflation / shown.inflation;
  return centres.map((centre) => {
    const { evidence, varX, varY, covXY } = centre;
    if (evidence?.learnt === undefined) return centre;
    const [x, y] = evidence.learnt.unmodelled;
    const factor = inflation / evidence.learnt.inflation;
    return {
      ...centre,
      varX: factor * (varX - x) + unseen * Math.max(x, shown.common[0]),
      varY: factor * (varY - y) + unseen * Math.max(y, shown.common[1]),
      covXY: factor * covXY,
    };
  });
}

const clamp = (value: number, shown: number): number =>
  Math.max(shown, Math.min(value, shown + (MOST_UNSEEN - 1) * Math.max(0, shown - 1)));

/**
 * Mean square third difference of the places over that expected by the covariances without the part that
 * all frames share; null: too few centres follow each other.
 */
function scatterInFlight(flight: readonly TimedCentre[]): number | null {
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
  for (let round = 0; round < 3; round++) {
    const most = (STRAY * kept.reduce((sum, ratio) => sum + ratio, 0)) / kept.length;
    kept = kept.filter((ratio) => ratio <= most);
  }
  if (kept.length < 2 * FEWEST_DIFFERENCES) return null;
  return kept.reduce((sum, ratio) => sum + ratio, 0) / kept.length;
}
