/** A seeded stream of random numbers. */
export interface Random {
  /** Uniform in [low, high). */
  between(low: number, high: number): number;
  /** Standard normal. */
  normal(): number;
  /** True with this probability. */
  chance(probability: number): boolean;
  pick<T>(from: readonly [T, ...T[]]): T;
}

/** Mulberry32 (public domain), normal numbers by the polar method. Streams of a seed do not touch each other. */
export function seeded(seed: number, stream: number): Random {
  let state = (Math.imul(seed + 1, 0x9e3779b1) ^ Math.imul(stream + 1, 0x85ebca77)) >>> 0;
  const unit = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  let spare: number | null = null;
  const normal = (): number => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    for (;;) {
      const a = 2 * unit() - 1;
      const b = 2 * unit() - 1;
      const s = a * a + b * b;
      if (s === 0 || s >= 1) continue;
      const scale = Math.sqrt((-2 * Math.log(s)) / s);
      spare = b * scale;
      return a * scale;
    }
  };
  return {
    between: (low, high) => low + (high - low) * unit(),
    normal,
    chance: (probability) => unit() < probability,
    pick: (from) => from[Math.floor(unit() * from.length)] as (typeof from)[number],
  };
}
