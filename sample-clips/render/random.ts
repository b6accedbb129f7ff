import normal from '@stdlib/random-base-improved-ziggurat';
import twister from '@stdlib/random-base-mt19937';

/** A seeded stream of random numbers. */
export interface Random {
  /** Uniform in [low, high). */
  uniform(low: number, high: number): number;
  /** Normal with the given mean and standard deviation. */
  normal(mean: number, sd: number): number;
}

const TWO_TO_32 = 2 ** 32;

/** Streams are separate so that a change of, say, the fragments leaves the noise as it was. */
const STREAMS = ['inputs', 'texture', 'seal', 'noise', 'clicks', 'sound', 'clock'] as const;
export type Stream = (typeof STREAMS)[number];

export function randomStream(seed: number, stream: Stream): Random {
  const source = twister.factory({ seed: 1 + seed * 100 + STREAMS.indexOf(stream) });
  const unit = (): number => source() / TWO_TO_32;
  const standard = normal.factory({
    prng: Object.assign(unit, { MIN: 0, MAX: 1 - 1 / TWO_TO_32 }),
  });
  return {
    uniform: (low, high) => low + (high - low) * unit(),
    normal: (mean, sd) => mean + sd * standard(),
  };
}
