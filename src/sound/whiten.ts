/** What of a sample cannot be foretold from those before it, where the sound is like `noise`. */
export interface Whitener {
  /** Whitened samples `from` up to `to`; those before the track count as 0. */
  apply(samples: ArrayLike<number>, from: number, to: number): Float64Array;
  /** The same of a shape that begins after silence, without noise: what whitening makes of it. */
  response(shape: Float64Array): Float64Array;
  /** Standard deviation of the whitened noise. */
  readonly sigma: number;
}

/** Enough for the colour of a room and a microphone, few enough for some hundred samples. */
const ORDER = 16;
/** 16 bit coding, by which most sound has passed: standard deviation of its rounding. */
const ROUNDING = 1 / 32768 / Math.sqrt(12);
/** Added to the noise's variance, as a share, so that a pure tone does not make the equations singular. */
const RIDGE = 1e-9;

/**
 * Autoregression fitted to the noise by Yule and Walker's equations, solved by Levinson and Durbin's recursion.
 * The error of foretelling new noise is Akaike's (Ann. Inst. Statist. Math. 21 (1969) 243): its weights are fitted too.
 */
export function whitenerOf(noise: ArrayLike<number>): Whitener {
  const n = noise.length;
  const level = meanOf(noise);
  const lags = Array.from({ length: ORDER + 1 }, (_, lag) => {
    let sum = 0;
    for (let i = lag; i < n; i++) {
      sum += ((noise[i] as number) - level) * ((noise[i - lag] as number) - level);
    }
    return sum / n;
  });
  let error = (lags[0] as number) * (1 + RIDGE) + ROUNDING ** 2;
  let weights: number[] = [];
  for (let m = 1; m <= ORDER; m++) {
    const foretold = weights.reduce((sum, w, j) => sum + w * (lags[m - 1 - j] as number), 0);
    const reflection = ((lags[m] as number) - foretold) / error;
    weights = [
      ...weights.map((w, j) => w - reflection * (weights[m - 2 - j] as number)),
      reflection,
    ];
    error *= 1 - reflection ** 2;
  }
  const unforetold = (at: (i: number) => number, i: number): number =>
    weights.reduce((left, w, j) => left - w * at(i - 1 - j), at(i));
  const apply: Whitener['apply'] = (samples, from, to) => {
    const at = (i: number): number => (i < 0 ? 0 : (samples[i] as number) - level);
    return Float64Array.from({ length: to - from }, (_, i) => unforetold(at, from + i));
  };
  const response: Whitener['response'] = (shape) =>
    shape.map((_, i) => unforetold((at) => shape[at] ?? 0, i));
  return {
    apply,
    response,
    sigma: Math.max(ROUNDING, Math.sqrt(error * ((n + ORDER) / (n - ORDER)))),
  };
}

function meanOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] as number;
  return sum / values.length;
}
