import ziggurat from '@stdlib/random-base-improved-ziggurat';
import twister from '@stdlib/random-base-mt19937';

/** Random numbers that repeat exactly for the same seed and stream. */
export interface Random {
  /** Uniform on [0, 1). */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
}

/**
 * Mersenne twister with 53-bit uniforms, normals by the improved ziggurat. `seed` is any whole number from 0;
 * streams of the same seed are independent in practice.
 */
export function seededRandom(seed: number, stream = 0): Random {
  const words = Uint32Array.of(seed % 2 ** 32, Math.floor(seed / 2 ** 32) % 2 ** 32, stream + 1);
  const next = twister.factory({ seed: words });
  const uniform = () => ((next() >>> 5) * 2 ** 26 + (next() >>> 6)) / 2 ** 53;
  return { uniform, normal: ziggurat.factory({ prng: uniform }) };
}
