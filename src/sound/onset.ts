import type { Quantity } from '../core/estimate';
import type { AudioTrack } from '../core/film';
import { failure, type Outcome, success } from '../core/reason';
import type { Seconds } from '../core/units';
import { likeliestChange } from './aic';
import { FRONT, type Moments, momentsNear, STROKE } from './moment';
import { type Whitener, whitenerOf } from './whiten';

export interface OnsetSearch {
  /** Where the beginning is looked for, on the track's own clock; null: anywhere. */
  readonly between: readonly [from: Seconds, to: Seconds] | null;
  readonly coverage: number;
  /** What is looked for: a burst is heard as a pressure front, an impact as a body struck. */
  readonly what: 'burst' | 'impact';
}

/** Noise is learnt from so much of the track before the beginning, and needs at least so much, s. */
const NOISE = 0.1;
const LEAST_NOISE = 0.004;
/** Needed where the moment is not known beforehand. */
const MUCH_NOISE = 0.05;
/** Loudness is told over so long, s: some ten samples. */
const LOUDNESS = 0.3e-3;
/** A beginning is louder than the noise by this factor of its root mean square; chance does that once in 1e7. */
const LOUD = 2.2;
/** And by this share as loud as the loudest: what is softer comes from elsewhere. A later echo never counts. */
const SHARE_OF_LOUDEST = 0.2;
/** Samples before and after the rough beginning that tell it, s. */
const BEFORE = 3e-3;
const AFTER = 1e-3;
/** Moments this far either side of the picked one are weighed, s. */
const REACH = 1e-3;
/** Samples of the same extreme value that are a flat top. */
const FLAT_TOP = 3;
const FULL_SCALE = 0.98;

/**
 * When a sudden sound begins, s on the track's clock, with the interval and standard uncertainty of its likelihood.
 * The room's noise is whitened as learnt before the sound; the picker of Maeda (Zisin 38 (1985) 365) finds the change
 * of variance there, and the likelihood of each moment around it says how well. The first loud sound counts, so an
 * echo, which comes later, does not. Failures: `soundTooShort`, `noSoundOnset`, `soundClipped`.
 */
export function findOnset(track: AudioTrack, search: OnsetSearch): Outcome<Quantity> {
  const { samples, sampleRate, firstSampleTime } = track;
  const count = (seconds: number) => Math.round(seconds * sampleRate);
  const index = (time: Seconds) => count(time - firstSampleTime);
  const { between, what } = search;
  const quiet = count(between === null ? MUCH_NOISE : LEAST_NOISE);
  const from = Math.max(quiet, between === null ? 0 : index(between[0]));
  const to = Math.min(
    samples.length - count(AFTER),
    between === null ? Infinity : index(between[1]),
  );
  if (!(to - from > 2 * count(LOUDNESS))) {
    return failure(
      'soundTooShort',
      `The sound track does not cover the moment of the ${what} with a little quiet before it.`,
      'Keep the sound from before the shot to after it when the clip is cut, and check the offset between sound and picture.',
      { what },
    );
  }
  // Looked for twice: the noise right before the beginning, not that before the whole stretch, is what it stands out of.
  const rough = roughBeginning(track, from, to, from);
  const again =
    rough === null ? null : roughBeginning(track, from, to, Math.max(from, rough - count(BEFORE)));
  const start = again ?? rough;
  if (start === null) {
    return failure(
      'noSoundOnset',
      `No sound stands out of the noise where the ${what} should be heard.`,
      'Check the offset between sound and picture, or record with the microphone nearer and its gain fixed.',
      { what },
    );
  }
  const clipped = flatTops(samples.subarray(start - count(AFTER), start + count(AFTER)));
  if (clipped) {
    return failure(
      'soundClipped',
      `The sound of the ${what} is overloaded: its peaks are cut off flat.`,
      'Turn the microphone down or set it farther away, at a known distance.',
      { what },
    );
  }
  const low = Math.max(quiet, start - count(BEFORE));
  const whitener = whitenerOf(noiseBefore(track, low));
  const whitened = whitener.apply(samples, low, Math.min(samples.length, start + count(AFTER)));
  const picked = likeliestChange(whitened, whitener.sigma ** 2 / 100) ?? start - low;
  const moments = momentsNear(
    whitened,
    whitener,
    sampleRate,
    picked,
    count(REACH),
    what === 'burst' ? FRONT : STROKE,
  );
  if (!moments.ok) return moments;
  return success(summary(moments.value, (at) => firstSampleTime + (low + at) / sampleRate, search));
}

/** Sound before `end` that noise is learnt from. */
const noiseBefore = ({ samples, sampleRate }: AudioTrack, end: number): Float32Array =>
  samples.subarray(Math.max(0, end - Math.round(NOISE * sampleRate)), end);

/** First sample from which it is loud, between `from` and `to`; null: nowhere. */
function roughBeginning(
  track: AudioTrack,
  from: number,
  to: number,
  noiseEnd: number,
): number | null {
  const whitener: Whitener = whitenerOf(noiseBefore(track, noiseEnd));
  const whitened = whitener.apply(track.samples, from, to);
  const width = Math.round(LOUDNESS * track.sampleRate);
  const loudness: number[] = [];
  let sum = 0;
  for (let i = 0; i < whitened.length; i++) {
    sum += (whitened[i] as number) ** 2;
    if (i >= width) sum -= (whitened[i - width] as number) ** 2;
    if (i >= width - 1) loudness.push(Math.sqrt(Math.max(0, sum) / width) / whitener.sigma);
  }
  const loudest = loudness.reduce((a, b) => Math.max(a, b), 0);
  const enough = Math.max(LOUD, SHARE_OF_LOUDEST * loudest);
  const first = loudness.findIndex((value) => value >= enough);
  return first < 0 ? null : from + first + width - 1;
}

/** Whether peaks near full scale are cut off. */
function flatTops(samples: Float32Array): boolean {
  let run = 1;
  for (let i = 1; i < samples.length; i++) {
    const here = samples[i] as number;
    run = Math.abs(here) >= FULL_SCALE && here === samples[i - 1] ? run + 1 : 1;
    if (run >= FLAT_TOP) return true;
  }
  return false;
}

/** Mean, standard deviation and symmetric interval of the moments. */
function summary(
  { at, probability }: Moments,
  timeOf: (at: number) => Seconds,
  { coverage }: OnsetSearch,
): Quantity {
  const mean = at.reduce((sum, x, i) => sum + x * (probability[i] as number), 0);
  const variance = at.reduce((sum, x, i) => sum + (x - mean) ** 2 * (probability[i] as number), 0);
  const quantile = (share: number): number => {
    let sum = 0;
    for (const [i, x] of at.entries()) {
      const p = probability[i] as number;
      // Each moment stands for the step around it.
      if (sum + p >= share) return x + STEP * ((share - sum) / p - 0.5);
      sum += p;
    }
    return at.at(-1) ?? mean;
  };
  const tail = (1 - coverage) / 2;
  const value = timeOf(mean);
  const u = timeOf(mean + Math.sqrt(variance + STEP ** 2 / 12)) - value;
  const interval = [timeOf(quantile(tail)), timeOf(quantile(1 - tail))] as const;
  return { value, u, interval, coverage, dof: null };
}

/** Distance of the moments tried, samples. */
const STEP = 0.1;
