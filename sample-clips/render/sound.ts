import type { Random } from './random';
import type { Truth } from './scenario';

export const SAMPLE_RATE = 48_000;

/** When the two events reach the microphone, s on the film's clock as the sound track has it. */
export interface SoundTimes {
  readonly burst: number;
  readonly impact: number;
}

/**
 * A sound track of the shot, -1..1, from time 0 on: room noise, the seal's crack with one echo off
 * the bench, and the thud in the catch box.
 */
export function soundTrack(times: SoundTimes, seconds: number, random: Random): Float32Array {
  const samples = new Float32Array(Math.ceil(seconds * SAMPLE_RATE));
  let room = 0;
  let air = 0;
  for (let k = 0; k < samples.length; k++) {
    const white = random.normal(0, 1);
    room += 0.06 * (white - room);
    air += 0.5 * (white - air);
    samples[k] = 0.06 * room + 0.013 * air;
  }
  crack(samples, times.burst, 0.62, random);
  crack(samples, times.burst + 0.0041, 0.13, random);
  thud(samples, times.impact, 0.36, random);
  return samples.map((value) => Math.max(-1, Math.min(1, value)));
}

/** Where the sounds arrive: each travels the same way to the microphone. */
export function arrivals(truth: Truth, impactTime: number): SoundTimes {
  const delay = truth.microphone / truth.soundSpeed - truth.soundOffset;
  return { burst: truth.burstTime + delay, impact: impactTime + delay };
}

/** A pressure jump that swings back, with a rattle dying away in 2 ms. */
function crack(samples: Float32Array, at: number, size: number, random: Random): void {
  let rattle = 0;
  add(samples, at, 0.02, (t) => {
    rattle += 0.55 * (random.normal(0, 1) - rattle);
    const pulse = Math.cos(2 * Math.PI * 1400 * t) * Math.exp(-t / 0.0006);
    const rise = 1 - Math.exp(-t / 0.00003);
    return size * rise * (pulse + 0.45 * rattle * Math.exp(-t / 0.002));
  });
}

/** A ball in sand: low, a few milliseconds long. */
function thud(samples: Float32Array, at: number, size: number, random: Random): void {
  let grit = 0;
  add(samples, at, 0.05, (t) => {
    grit += 0.15 * (random.normal(0, 1) - grit);
    const body = Math.sin(2 * Math.PI * 310 * t) * Math.exp(-t / 0.006);
    const rise = 1 - Math.exp(-t / 0.00012);
    return size * rise * (body + 0.9 * grit * Math.exp(-t / 0.004));
  });
}

function add(samples: Float32Array, at: number, length: number, wave: (t: number) => number): void {
  const first = Math.max(0, Math.ceil(at * SAMPLE_RATE));
  const last = Math.min(samples.length, Math.floor((at + length) * SAMPLE_RATE));
  for (let k = first; k < last; k++) {
    samples[k] = (samples[k] as number) + wave(k / SAMPLE_RATE - at);
  }
}
