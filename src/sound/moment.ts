import { failure, type Outcome, success } from '../core/reason';

/** How probable each moment of a beginning is, seen in whitened sound. */
export interface Moments {
  /** In samples from the first of the window, rising. */
  readonly at: readonly number[];
  /** Their probabilities, adding up to 1. */
  readonly probability: readonly number[];
}

/** A sound sets in as 1 - exp(-t / rise), in s: a pressure front within a sample or a few, a body struck over longer. */
export const FRONT = [4e-6, 12e-6, 30e-6, 60e-6] as const;
export const STROKE = [10e-6, 40e-6, 160e-6, 640e-6] as const;
/** And dies away as exp(-t / fall), in s. */
const FALLS = [0.6e-3, 3e-3] as const;
/** For so long, s, the jump itself is heard: its square is twice the mean square of what swings after it. */
const JUMP = 60e-6;
const JUMP_SQUARE = 2;
/** Moments tried between two samples. */
const FINE = 10;
/** Logarithm of the likelihood ratio beyond which a moment is out of the question. */
const NEGLIGIBLE = 12;

/**
 * Likelihood of each moment near sample `about`; `rises` are as likely, and so is each fall. From the moment on the sound has, besides the
 * noise, a variance that grows and dies away; how large it is, is fitted at each moment, so the likelihood of a moment
 * is exp(-(AIC - AICmin) / 2) with AIC as of a change of variance. `reach` samples either side are tried.
 */
export function momentsNear(
  whitened: Float64Array,
  sigma: number,
  sampleRate: number,
  about: number,
  reach: number,
  rises: readonly number[],
): Outcome<Moments> {
  const squares = whitened.map((x) => (x / sigma) ** 2);
  const shapes = rises.flatMap((rise) =>
    FALLS.map((fall) => envelopeTables(rise, fall, sampleRate, squares.length)),
  );
  const first = Math.max(1, Math.round(about - reach));
  const last = Math.min(squares.length - 2, Math.round(about + reach));
  const coarse = new Map<number, number>();
  for (let k = first; k <= last; k++) coarse.set(k, logLikelihood(squares, shapes, k, 0));
  const best = Math.max(...coarse.values());
  const at: number[] = [];
  const logs: number[] = [];
  for (const [k, value] of coarse) {
    // Between samples the likelihood may lie above that of both: neighbours of likely ones are looked at too.
    const near = Math.max(value, coarse.get(k + 1) ?? value, coarse.get(k - 1) ?? value);
    if (near < best - NEGLIGIBLE) continue;
    for (let part = 0; part < FINE; part++) {
      at.push(k + part / FINE);
      logs.push(part === 0 ? value : logLikelihood(squares, shapes, k, part));
    }
  }
  const top = Math.max(...logs);
  if (!Number.isFinite(top)) {
    return failure('noSoundOnset', 'The sound holds no beginning that could be timed.');
  }
  const raw = logs.map((value) => Math.exp(value - top));
  const total = raw.reduce((a, b) => a + b, 0);
  return success({ at, probability: raw.map((p) => p / total) });
}

/** Variance of the sound at whole samples after a moment `part` tenths of a sample after a sample, one table a part. */
type Tables = readonly Float64Array[];

function envelopeTables(rise: number, fall: number, sampleRate: number, length: number): Tables {
  return Array.from({ length: FINE }, (_, part) =>
    Float64Array.from({ length }, (_unused, i) => {
      const t = (i - part / FINE) / sampleRate;
      if (t <= 0) return 0;
      const size = (1 - Math.exp(-t / rise)) * Math.exp(-t / fall);
      return (t < JUMP ? JUMP_SQUARE : 1) * size ** 2;
    }),
  );
}

/** Logarithm of the likelihood of a beginning `part` tenths after sample k, averaged over rise and fall. */
function logLikelihood(
  squares: Float64Array,
  shapes: readonly Tables[],
  k: number,
  part: number,
): number {
  const logs = shapes.map((tables) => shapeLikelihood(squares, tables[part] as Float64Array, k));
  const top = Math.max(...logs);
  return top + Math.log(logs.reduce((sum, value) => sum + Math.exp(value - top), 0) / logs.length);
}

/** That of one shape over that of noise alone, logarithm. The noise's variance is 1. */
function shapeLikelihood(squares: Float64Array, shape: Float64Array, k: number): number {
  const n = squares.length;
  let power = startingPower(squares, shape, k);
  // Fisher scoring for the size of the variance; it has settled after a few rounds.
  for (let round = 0; round < 3; round++) {
    let slope = 0;
    let information = 0;
    for (let i = k; i < n; i++) {
      const g = shape[i - k] as number;
      const v = 1 + power * g;
      const share = g / v;
      slope += share * ((squares[i] as number) / v - 1);
      information += share * share;
    }
    if (information > 0) power = Math.max(power / 4, power + slope / information);
  }
  let log = 0;
  for (let i = k; i < n; i++) {
    const v = 1 + power * (shape[i - k] as number);
    log += (squares[i] as number) * (1 - 1 / v) - Math.log(v);
  }
  return log / 2;
}

function startingPower(squares: Float64Array, shape: Float64Array, k: number): number {
  let excess = 0;
  let weight = 0;
  for (let i = k; i < squares.length; i++) {
    excess += (squares[i] as number) - 1;
    weight += shape[i - k] as number;
  }
  return Math.max(0.01, excess / Math.max(weight, 1e-9));
}
