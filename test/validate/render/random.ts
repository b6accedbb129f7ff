import normal from '@stdlib/random-base-improved-ziggurat';
import twister from '@stdlib/random-base-mt19937';

/** A seeded stream of random numbers. */
export interface Random {
  /** Uniform in [low, high). */
  uniform(low: number, high: number): number;
  /** Normal with the given mean and standard deviation. */
  normal(mean: number, sd: number): number;
  /** One of the given, each as likely. */
  pick<T>(from: readonly [T, ...T[]]): T;
}

const TWO_TO_32 = 2 ** 32;

/** The stream that belongs to these whole numbers, from 0: seed, class, chunk, ... */
export function randomStream(...key: readonly number[]): Random {
  // The generator is started from all words of the key; it wants none to be all zero.
  const source = twister.factory({ seed: Uint32Array.from(key, (word) => word + 1) });
  const unit = (): number => source() / TWO_TO_32;
  const standard = normal.factory({
    prng: Object.assign(unit, { MIN: 0, MAX: 1 - 1 / TWO_TO_32 }),
  });
  return {
    uniform: (low, high) => low + (high - low) * unit(),
    normal: (mean, sd) => mean + sd * standard(),
    pick: (from) => from[Math.floor(unit() * from.length)] ?? from[0],
  };
}
