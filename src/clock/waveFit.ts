import { backSubstitute, inverseGram, triangulate } from '../core/linalg';
import type { Bands, Wave } from './bands';

/** The wave that fits the bands best. */
export interface WaveFit extends Wave {
  readonly frequencyU: number;
  readonly slopeU: number;
  /** Amplitude of the fundamental over the mean brightness. */
  readonly contrast: number;
  /** Share of the variance over time that it explains. */
  readonly explained: number;
  /** Sum of squared residuals and what is left of the values after the parameters. */
  readonly squares: number;
  readonly dof: number;
}

/** Harmonics of the flicker in the model: lamps on rectified mains are no pure sine. */
const HARMONICS = 6;
/**
 * Higher ones, up to this, are left out of the model but not of the uncertainty: frames that meet the lamp at few
 * phases cannot tell them from the lower ones. Taken as strong as in light with a kink, |cos|: 3 / (4 h^2 - 1) of
 * the first (its Fourier series).
 */
const HIGHEST_HARMONIC = 24;
const KINK = 0.75;
const MOST_ROUNDS = 10;

/**
 * Gauss-Newton fit of a periodic wave with its harmonics; each band's mean over time is free. Its uncertainty is
 * the larger of that from white residuals and that from residuals that hang together within a frame (as when the
 * lamp or the exposure wavers from frame to frame): Liang and Zeger, Biometrika 73 (1986) 13, from memory.
 * Null where the bands do not determine it.
 */
export function fitWave(bands: Bands, start: Wave): WaveFit | null {
  const { count, value, times, mean } = bands;
  const n = value.length;
  if (n < 4 * HARMONICS) return null;
  // Which harmonics can be told depends finely on the frequency: the fundamental gives it first.
  const near = descend(bands, start, [1]);
  const harmonics = near === null ? [] : tellableHarmonics(bands, near.wave);
  if (near === null || harmonics[0] !== 1) return null;
  const end = descend(bands, near.wave, harmonics);
  if (end === null) return null;
  const { wave, weights } = end;
  const linear = weights.length;
  const p = linear + 2;
  const dof = n - count - p;
  if (dof < 1) return null;
  const amplitudes = harmonics.map((_, j) =>
    Math.hypot(weights[2 * j] as number, weights[2 * j + 1] as number),
  );
  const amplitude = amplitudes[0] as number;
  // Frames that meet few phases let a harmonic of a wrong wave pass for the light's own beat.
  if (amplitudes.some((other) => other > amplitude)) return null;
  const columns = new Float64Array(n * p);
  fillColumns(bands, wave, harmonics, weights, columns);
  const residual = Float64Array.from(value);
  takeOff(residual, columns, weights);
  const scores = frameScores(columns, residual, p, count);
  const leftOut = columnsLeftOut(bands, wave, columns, p);
  const squares = residual.reduce((sum, r) => sum + r * r, 0);
  const total = value.reduce((sum, y) => sum + y * y, 0);
  triangulate(columns, n, p, new Float64Array(n));
  for (let j = 0; j < p; j++) if (columns[j * n + j] === 0) return null;
  const gram = inverseGram(columns, n, p);
  const frames = times.length;
  /** What a change of the gradient does to parameter j. */
  const moved = (j: number, gradients: Float64Array, at: number): number => {
    let sum = 0;
    for (let c = 0; c < p; c++) sum += (gram[j * p + c] as number) * (gradients[at + c] as number);
    return sum;
  };
  const deviation = (j: number): number => {
    const white = ((gram[j * p + j] as number) * squares) / dof;
    let together = 0;
    for (let k = 0; k < frames; k++) together += moved(j, scores, k * p) ** 2;
    let unknown = 0;
    for (let at = 0; at < leftOut.length; at += p) unknown += moved(j, leftOut, at) ** 2 / 2;
    return Math.sqrt(
      Math.max(white, (together * frames) / Math.max(1, frames - p)) +
        unknown * (KINK * amplitude) ** 2,
    );
  };
  return {
    ...wave,
    frequencyU: deviation(linear),
    slopeU: deviation(linear + 1),
    contrast: amplitude / mean,
    explained: total > 0 ? 1 - squares / total : 0,
    squares,
    dof,
  };
}

/** Gradients that harmonics left out of the model make, cosine and sine of each, h^-2 strong; p numbers each. */
function columnsLeftOut(
  { count, line, share, times }: Bands,
  { frequency, slope }: Wave,
  columns: Float64Array,
  p: number,
): Float64Array {
  const n = times.length * count;
  const gradients = new Float64Array(2 * (HIGHEST_HARMONIC - HARMONICS) * p);
  for (let k = 0; k < times.length; k++) {
    for (let b = 0; b < count; b++) {
      const i = k * count + b;
      const phase = 2 * Math.PI * frequency * (times[k] as number) + slope * (line[b] as number);
      const c1 = Math.cos(phase);
      const s1 = Math.sin(phase);
      let cosine = Math.cos(HARMONICS * phase);
      let sine = Math.sin(HARMONICS * phase);
      for (let h = HARMONICS + 1, at = 0; h <= HIGHEST_HARMONIC; h++, at += 2 * p) {
        [cosine, sine] = [cosine * c1 - sine * s1, sine * c1 + cosine * s1];
        // The columns have no mean over time, so that of the harmonic drops out.
        const strength = (share[b] as number) / (h * h);
        const c = strength * cosine;
        const s = strength * sine;
        for (let j = 0; j < p; j++) {
          const column = columns[j * n + i] as number;
          gradients[at + j] = (gradients[at + j] as number) + c * column;
          gradients[at + p + j] = (gradients[at + p + j] as number) + s * column;
        }
      }
    }
  }
  return gradients;
}

/** Gauss-Newton from `start`, the weights of the harmonics solved for anew at every step. */
function descend(
  bands: Bands,
  start: Wave,
  harmonics: readonly number[],
): { readonly wave: Wave; readonly weights: Float64Array } | null {
  const { value, times, line } = bands;
  const n = value.length;
  const linear = 2 * harmonics.length;
  const p = linear + 2;
  const columns = new Float64Array(n * p);
  const rhs = new Float64Array(n);
  const step = new Float64Array(p);
  const weights = new Float64Array(linear);
  // A step turns the phase of the outermost band and frame by no more than half a radian.
  const mostTurn = 0.5 / Math.max(...line);
  const mostDrift = 0.5 / (2 * Math.PI * (times.at(-1) as number));
  let wave = start;

  /** Solves for the first so many parameters, what `weights` already explain taken off; the answer is `step`. */
  const solve = (parameters: number): boolean => {
    fillColumns(bands, wave, harmonics, weights, columns);
    rhs.set(value);
    takeOff(rhs, columns, weights);
    triangulate(columns, n, parameters, rhs);
    step.fill(0);
    return backSubstitute(columns, n, parameters, rhs, step);
  };
  const solveWeights = (): boolean => {
    weights.fill(0);
    if (!solve(linear)) return false;
    weights.set(step.subarray(0, linear));
    return true;
  };
  for (let round = 0; round < MOST_ROUNDS; round++) {
    if (!solveWeights() || !solve(p)) return null;
    const turn = clamp(step[linear + 1] as number, mostTurn);
    const drift = clamp(step[linear] as number, mostDrift);
    wave = { frequency: wave.frequency + drift, slope: wave.slope + turn };
    if (!Number.isFinite(wave.slope) || !Number.isFinite(wave.frequency)) return null;
    if (Math.abs(turn) < 1e-5 * mostTurn) break;
  }
  return solveWeights() ? { wave, weights } : null;
}

/** Takes the weighted sum of the first columns off `values`. */
function takeOff(values: Float64Array, columns: Float64Array, weights: Float64Array): void {
  const n = values.length;
  for (let j = 0; j < weights.length; j++) {
    const w = weights[j] as number;
    for (let i = 0; i < n; i++)
      values[i] = (values[i] as number) - w * (columns[j * n + i] as number);
  }
}

const clamp = (value: number, most: number): number => Math.min(most, Math.max(-most, value));

/** A harmonic counts as told from those below it where this share of it is its own. */
const OWN_SHARE = 0.2;

/** Harmonics that can be told from each other and from the bands' means over time, in rising order. */
function tellableHarmonics(bands: Bands, wave: Wave): number[] {
  const all = Array.from({ length: HARMONICS }, (_, i) => i + 1);
  const n = bands.value.length;
  const linear = 2 * HARMONICS;
  const columns = new Float64Array(n * (linear + 2));
  fillColumns(bands, wave, all, new Float64Array(linear), columns);
  triangulate(columns, n, linear, new Float64Array(n));
  const least = OWN_SHARE * Math.sqrt(n / 2);
  const own = (j: number) => Math.abs(columns[j * n + j] as number) > least;
  return all.filter((h) => own(2 * h - 2) && own(2 * h - 1));
}

/**
 * Derivatives of the wave, column after column: cosine and sine of each harmonic, then frequency and slope; each
 * band's mean over time taken off.
 */
function fillColumns(
  { count, line, share, value, times }: Bands,
  { frequency, slope }: Wave,
  harmonics: readonly number[],
  weights: Float64Array,
  columns: Float64Array,
): void {
  const n = value.length;
  const last = 2 * harmonics.length;
  columns.fill(0);
  for (let k = 0; k < times.length; k++) {
    const t = times[k] as number;
    for (let b = 0; b < count; b++) {
      const i = k * count + b;
      const x = line[b] as number;
      const phase = 2 * Math.PI * frequency * t + slope * x;
      const strength = share[b] as number;
      const c1 = Math.cos(phase);
      const s1 = Math.sin(phase);
      // Each harmonic is the one below it turned by the fundamental.
      let c = strength;
      let s = 0;
      let turn = 0;
      for (let h = 1, j = 0; j < harmonics.length; h++) {
        [c, s] = [c * c1 - s * s1, s * c1 + c * s1];
        if (harmonics[j] !== h) continue;
        columns[2 * j * n + i] = c;
        columns[(2 * j + 1) * n + i] = s;
        turn += h * ((weights[2 * j + 1] as number) * c - (weights[2 * j] as number) * s);
        j++;
      }
      columns[last * n + i] = 2 * Math.PI * t * turn;
      columns[(last + 1) * n + i] = x * turn;
    }
  }
  for (let j = 0; j < last + 2; j++) {
    for (let b = 0; b < count; b++) {
      let sum = 0;
      for (let i = j * n + b; i < (j + 1) * n; i += count) sum += columns[i] as number;
      const middle = sum / times.length;
      for (let i = j * n + b; i < (j + 1) * n; i += count) {
        columns[i] = (columns[i] as number) - middle;
      }
    }
  }
}

/** Each frame's share of the gradient, p numbers a frame. */
function frameScores(
  columns: Float64Array,
  residual: Float64Array,
  p: number,
  count: number,
): Float64Array {
  const n = residual.length;
  const scores = new Float64Array((n / count) * p);
  for (let i = 0; i < n; i++) {
    const at = Math.floor(i / count) * p;
    const r = residual[i] as number;
    for (let j = 0; j < p; j++) {
      scores[at + j] = (scores[at + j] as number) + r * (columns[j * n + i] as number);
    }
  }
  return scores;
}
