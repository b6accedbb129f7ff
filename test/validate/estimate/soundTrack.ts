import type { Random } from '../render/random';

/** What a synthetic sound track is made of. Shares no code with what times it. */
export interface SoundKind {
  readonly name: string;
  /** Root mean square of the first millisecond of the sound over that of the noise, dB; null: no sound at all. */
  readonly signalToNoise: number | null;
  /** Whether the sound is cut off at full scale. */
  readonly overloaded: boolean;
}

export interface SoundShot {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  /** s after the first sample. */
  readonly onset: number;
}

const SECONDS = 0.25;
const CRACK_SECONDS = 0.03;

/** A quarter of a second with one sudden sound, its echoes, and the noise of a room; 16 bit. */
export function renderSound(kind: SoundKind, random: Random): SoundShot {
  const sampleRate = random.pick([44_100, 48_000]);
  const n = Math.round(SECONDS * sampleRate);
  const onset = random.uniform(0.1, 0.18);
  const noise = roomNoise(n, sampleRate, random);
  const sound = new Float64Array(n);
  const crack = drawCrack(random, sampleRate);
  add(sound, onset, sampleRate, crack);
  for (let echo = Math.floor(random.uniform(0, 4)); echo > 0; echo--) {
    const size = random.uniform(0.1, 0.9) * random.pick([-1, 1]);
    add(sound, onset + random.uniform(0.6e-3, 12e-3), sampleRate, (t) => size * crack(t));
  }
  const first = Math.ceil(onset * sampleRate);
  const loudness = rootMeanSquare(sound.subarray(first, first + Math.round(1e-3 * sampleRate)));
  const ratio = kind.signalToNoise === null ? 0 : 10 ** (kind.signalToNoise / 20);
  const mixed = noise.map((x, i) => x + (ratio * (sound[i] as number)) / loudness);
  const peak = mixed.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  const gain = (kind.overloaded ? random.uniform(2, 6) : random.uniform(0.1, 0.9)) / peak;
  return { samples: Float32Array.from(mixed, (x) => coded(gain * x)), sampleRate, onset };
}

const coded = (x: number): number =>
  Math.max(-32768, Math.min(32767, Math.round(32768 * x))) / 32768;

/** Noise of root mean square 1: hiss, rumble and the hum of the mains in shares that are drawn. */
function roomNoise(n: number, sampleRate: number, random: Random): Float64Array {
  const shares = [random.uniform(0.05, 1), random.uniform(0, 1), random.uniform(0, 0.4)] as const;
  const slowness = random.uniform(0.02, 0.3);
  const phase = random.uniform(0, 2 * Math.PI);
  const hum = random.pick([50, 60]);
  let rumble = 0;
  const out = Float64Array.from({ length: n }, (_, i) => {
    rumble += slowness * (random.normal(0, 1) - rumble);
    const tone = Math.sin((2 * Math.PI * hum * i) / sampleRate + phase);
    // A one-pole low-pass leaves this share of the root mean square.
    const even = rumble / Math.sqrt(slowness / (2 - slowness));
    return shares[0] * random.normal(0, 1) + shares[1] * even + shares[2] * Math.SQRT2 * tone;
  });
  const size = rootMeanSquare(out);
  return out.map((x) => x / size);
}

/** A pressure jump with ring and rattle: sharp or somewhat slower, deep or high, long or short. */
function drawCrack(random: Random, sampleRate: number): (t: number) => number {
  const rise = Math.exp(random.uniform(Math.log(5e-6), Math.log(60e-6)));
  const pitch = Math.exp(random.uniform(Math.log(500), Math.log(5000)));
  const fall = Math.exp(random.uniform(Math.log(0.3e-3), Math.log(2e-3)));
  const rattling = random.uniform(0, 0.8);
  const rattleFall = random.uniform(1e-3, 5e-3);
  const sign = random.pick([-1, 1]);
  let grit = 0;
  const rattle = Float64Array.from({ length: Math.ceil(CRACK_SECONDS * sampleRate) + 1 }, () => {
    grit += 0.55 * (random.normal(0, 1) - grit);
    return grit;
  });
  return (t) => {
    const body = Math.cos(2 * Math.PI * pitch * t) * Math.exp(-t / fall);
    const rough = (rattle[Math.floor(t * sampleRate)] ?? 0) * Math.exp(-t / rattleFall);
    return sign * (1 - Math.exp(-t / rise)) * (body + rattling * rough);
  };
}

function add(to: Float64Array, at: number, sampleRate: number, wave: (t: number) => number): void {
  const last = Math.min(to.length - 1, Math.floor((at + CRACK_SECONDS) * sampleRate));
  for (let i = Math.ceil(at * sampleRate); i <= last; i++) {
    to[i] = (to[i] as number) + wave(i / sampleRate - at);
  }
}

const rootMeanSquare = (values: Float64Array): number =>
  Math.sqrt(values.reduce((sum, x) => sum + x * x, 0) / values.length);
