import type { Estimate } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import type { FramesPerSecond, Seconds } from '../core/units';
import { FLICKER_SHARE, noFlicker, tooFewFlickers } from './flicker';

/**
 * Recording rate from a timer filmed in the clip: the frames between two readings over the time that passed on it.
 * `readingU`: standard uncertainty of one reading of the timer, s. A frame shows one moment of the timer, so the
 * frame count itself is exact to one frame at each end (uniform).
 */
export function rateFromTimer(
  fromFrame: number,
  toFrame: number,
  elapsed: Seconds,
  readingU: Seconds,
): Outcome<Estimate> {
  const frames = toFrame - fromFrame;
  if (!(frames >= 1)) {
    return failure(
      'timerFrames',
      'The second frame must come after the first.',
      'Pick a later frame for the second reading.',
    );
  }
  if (!(elapsed > 0)) {
    return failure(
      'timerElapsed',
      'The time that passed on the filmed timer must be above zero.',
      'Type the difference of the two readings.',
    );
  }
  const value = frames / elapsed;
  const relative = Math.hypot(
    Math.SQRT2 * (1 / Math.sqrt(12) / frames),
    (Math.SQRT2 * readingU) / elapsed,
  );
  return success({ value, u: value * relative });
}

/** Mains frequency is commonly held within 0.2 Hz (common practice, no source): standard uncertainty of the lamp's flicker, relative. */
const MAINS_RELATIVE_U = 0.002;

/**
 * Recording rate from a lamp that flickers at a known frequency (twice the mains frequency), from the mean
 * level of each frame. Least-squares sine fit on a grid of frequencies, refined by a parabola.
 * `levels`: one number a frame, any scale. Needs two full flickers in the clip.
 */
export function rateFromLamp(
  levels: ArrayLike<number>,
  flicker: FramesPerSecond,
  expectedRate: FramesPerSecond,
): Outcome<Estimate> {
  const n = levels.length;
  const cyclesPerFrame = flicker / expectedRate;
  if (!(cyclesPerFrame > 0 && cyclesPerFrame < 0.5)) {
    return failure(
      'lampTooFast',
      `At the expected rate the lamp flickers ${cyclesPerFrame.toFixed(2)} times a frame; the rate needs more than 2 frames a flicker.`,
      'Use a filmed timer.',
      { times: cyclesPerFrame.toFixed(2) },
    );
  }
  const tooShort = tooFewFlickers(n * cyclesPerFrame);
  if (tooShort !== null) return tooShort;
  let mean = 0;
  for (let i = 0; i < n; i++) mean += (levels[i] as number) / n;
  let total = 0;
  for (let i = 0; i < n; i++) total += ((levels[i] as number) - mean) ** 2;
  if (!(total > 0)) return noFlicker();
  // Grid of an eighth of the frequency resolution 1/n, over half to twice the expected frequency.
  const step = 1 / (8 * n);
  const from = Math.max(cyclesPerFrame / 2, 1 / n);
  const count = Math.floor((Math.min(cyclesPerFrame * 2, 0.5) - from) / step);
  const power = Array.from({ length: count }, (_, k) => sinePower(levels, mean, from + k * step));
  const peak = power.reduce((best, p, k) => (p > (power[best] as number) ? k : best), 0);
  if (peak === 0 || peak === count - 1 || (power[peak] as number) < FLICKER_SHARE * total) {
    return noFlicker();
  }
  const [a, b, c] = [power[peak - 1], power[peak], power[peak + 1]] as [number, number, number];
  const frequency = from + (peak + (0.5 * (a - c)) / (a - 2 * b + c)) * step;
  // Variance of a sine's frequency in white noise (Cramer-Rao; Rife and Boorstyn 1974, from memory).
  const noise = Math.max(total - b, 0) / Math.max(n - 3, 1);
  const amplitude2 = (2 * b) / n;
  const frequencyU = Math.sqrt((24 * noise) / (amplitude2 * n ** 3)) / (2 * Math.PI);
  const value = flicker / frequency;
  return success({ value, u: value * Math.hypot(frequencyU / frequency, MAINS_RELATIVE_U) });
}

/** Sum of squares explained by a sine of the given frequency (cycles per sample), mean removed. */
function sinePower(levels: ArrayLike<number>, mean: number, frequency: number): number {
  let cc = 0;
  let ss = 0;
  let cs = 0;
  let yc = 0;
  let ys = 0;
  for (let i = 0; i < levels.length; i++) {
    const phase = 2 * Math.PI * frequency * i;
    const c = Math.cos(phase);
    const s = Math.sin(phase);
    const y = (levels[i] as number) - mean;
    cc += c * c;
    ss += s * s;
    cs += c * s;
    yc += y * c;
    ys += y * s;
  }
  const determinant = cc * ss - cs * cs;
  if (Math.abs(determinant) < 1e-12 * cc * ss) return 0;
  const p = (yc * ss - ys * cs) / determinant;
  const q = (ys * cc - yc * cs) / determinant;
  return p * yc + q * ys;
}
