import { failure, type Outcome, success } from '../core/reason';
import type { Whitener } from './whiten';

/** How probable each moment of a beginning is, seen in whitened sound. */
export interface Moments {
  /** In samples from the first of the window, rising. */
  readonly at: readonly number[];
  /** Their probabilities, adding up to 1. */
  readonly probability: readonly number[];
}

/** A sound sets in as 1 - exp(-t / rise), in s: a pressure front within a sample or a few, a body struck over longer. */
export const FRONT = [5.2e-6, 9e-6, 15.5e-6, 26.7e-6, 46e-6] as const;
export const STROKE = [10e-6, 40e-6, 160e-6, 640e-6] as const;
/** And dies away as exp(-t / fall), in s. */
const FALLS = [0.6e-3, 3e-3] as const;
/** For so long, s, the jump itself is heard: its square is so many times the mean square of what swings after it. */
const JUMP = 60e-6;
const JUMP_SQUARES = [2, 8, 32, 128] as const;
/** Until then the swing has only begun, in step with the jump: so much of its later mean square (judgement, no source). */
const BEGINNING = 0.4;
/** Moments tried between two samples. */
const FINE = 10;
/** Logarithm of the likelihood ratio beyond which a moment is out of the question. */
const NEGLIGIBLE = 12;

/**
 * Likelihood of each moment near sample `about`; `rises` are as likely, and so is each fall. From the moment on the
 * sound holds, besides the noise, a jump of normal size, as whitening leaves it, and a swing whose variance grows and
 * dies away. How large both are is fitted at each moment, so the likelihood of a moment is exp(-(AIC - AICmin) / 2) with
 * AIC as of a change of variance. `reach` samples either side are tried.
 */
export function momentsNear(
  whitened: Float64Array,
  whitener: Whitener,
  sampleRate: number,
  about: number,
  reach: number,
  rises: readonly number[],
): Outcome<Moments> {
  const samples = whitened.map((x) => x / whitener.sigma);
  const shapes = rises.flatMap((rise) =>
    FALLS.flatMap((fall) => shapesOf(rise, fall, sampleRate, samples.length, whitener)),
  );
  const first = Math.max(1, Math.round(about - reach));
  const last = Math.min(samples.length - 2, Math.round(about + reach));
  const coarse = new Map<number, number>();
  const middle = Math.floor(FINE / 2);
  for (let k = first; k <= last; k++) coarse.set(k, logLikelihood(samples, shapes, k, middle));
  const best = Math.max(...coarse.values());
  const at: number[] = [];
  const logs: number[] = [];
  for (const [k, value] of coarse) {
    // Near a sample the likelihood may lie above that of the middle: neighbours of likely ones are looked at too.
    const near = Math.max(value, coarse.get(k + 1) ?? value, coarse.get(k - 1) ?? value);
    if (near < best - NEGLIGIBLE) continue;
    for (let part = 0; part < FINE; part++) {
      at.push(k + partAt(part));
      logs.push(part === middle ? value : logLikelihood(samples, shapes, k, part));
    }
  }
  const top = Math.max(...logs);
  if (!Number.isFinite(top)) {
    return failure('noSoundOnset', 'The sound holds no beginning that could be timed.', undefined, {
      what: 'any',
    });
  }
  const raw = logs.map((value) => Math.exp(value - top));
  const total = raw.reduce((a, b) => a + b, 0);
  return success({ at, probability: raw.map((p) => p / total) });
}

/** Where after a sample the moment lies that stands for a part: its middle, so that none falls on a sample. */
const partAt = (part: number): number => (part + 0.5) / FINE;

/** A sound at whole samples after its moment, for a swing of mean square 1: variance of the swing, deviation of the jump. */
interface Shape {
  readonly swing: Float64Array;
  readonly jump: Float64Array;
}
/** One a part of the way from a sample to the next. */
type Shapes = readonly Shape[];

/** One for each size of the jump. */
function shapesOf(
  rise: number,
  fall: number,
  sampleRate: number,
  length: number,
  whitener: Whitener,
): Shapes[] {
  const plain = Array.from({ length: FINE }, (_, part): Shape => {
    const times = Float64Array.from({ length }, (_unused, i) => (i - partAt(part)) / sampleRate);
    const size = times.map((t) => (t <= 0 ? 0 : (1 - Math.exp(-t / rise)) * Math.exp(-t / fall)));
    const heard = (i: number): boolean => (times[i] as number) < JUMP;
    return {
      swing: size.map((x, i) => (heard(i) ? BEGINNING : 1) * x * x),
      jump: whitener.response(size).map((x, i) => (heard(i) ? x : 0)),
    };
  });
  return JUMP_SQUARES.map((square) =>
    plain.map(({ swing, jump }) => ({ swing, jump: jump.map((x) => Math.sqrt(square) * x) })),
  );
}

/** Logarithm of the likelihood of a beginning a part after sample k, averaged over rise, fall and jump. */
function logLikelihood(
  samples: Float64Array,
  shapes: readonly Shapes[],
  k: number,
  part: number,
): number {
  const logs = shapes.map((parts) => shapeLikelihood(samples, parts[part] as Shape, k));
  const top = Math.max(...logs);
  return top + Math.log(logs.reduce((sum, value) => sum + Math.exp(value - top), 0) / logs.length);
}

/** That of one shape over that of noise alone, logarithm. The noise's variance is 1. */
function shapeLikelihood(samples: Float64Array, { swing, jump }: Shape, k: number): number {
  const power = powerOf(samples, { swing, jump }, k);
  // The jump is one number for all samples: the covariance is diagonal but for a rank of one (Sherman and Morrison).
  let log = 0;
  let own = 0;
  let met = 0;
  for (let i = k; i < samples.length; i++) {
    const x = samples[i] as number;
    const h = jump[i - k] as number;
    const v = 1 + power * (swing[i - k] as number);
    log += x * x * (1 - 1 / v) - Math.log(v);
    own += (h * h) / v;
    met += (h * x) / v;
  }
  const more = 1 + power * own;
  return (log + (power * met * met) / more - Math.log(more)) / 2;
}

/** Mean square of the swing, noise's variance 1, that fits best where the jump counts as variance too. */
function powerOf(samples: Float64Array, { swing, jump }: Shape, k: number): number {
  const variance = (i: number): number => (swing[i - k] as number) + (jump[i - k] as number) ** 2;
  let excess = 0;
  let weight = 0;
  for (let i = k; i < samples.length; i++) {
    excess += (samples[i] as number) ** 2 - 1;
    weight += variance(i);
  }
  let power = Math.max(0.01, excess / Math.max(weight, 1e-9));
  // Fisher scoring; it has settled after a few rounds.
  for (let round = 0; round < 3; round++) {
    let slope = 0;
    let information = 0;
    for (let i = k; i < samples.length; i++) {
      const g = variance(i);
      const v = 1 + power * g;
      const share = g / v;
      slope += share * ((samples[i] as number) ** 2 / v - 1);
      information += share * share;
    }
    if (information > 0) power = Math.max(power / 4, power + slope / information);
  }
  return power;
}
