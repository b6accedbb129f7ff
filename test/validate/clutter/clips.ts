import { ALL_KINDS, type Kind } from './kinds';
import { seeded } from './random';

export interface Clip {
  readonly seed: number;
  readonly kinds: readonly Kind[];
}

/** Hard clips of two to four kinds each, every kind in its turn; drawn from the seed. */
export function hardClips(seed: number, count: number): Clip[] {
  const random = seeded(seed, 100);
  return Array.from({ length: count }, (_, i) => {
    const kinds = [ALL_KINDS[i % ALL_KINDS.length] as Kind];
    const most = 2 + Math.floor(random.between(0, 3));
    while (kinds.length < most) {
      const kind = ALL_KINDS[Math.floor(random.between(0, ALL_KINDS.length))] as Kind;
      if (!kinds.includes(kind)) kinds.push(kind);
    }
    return { seed: seed * 1000 + i, kinds };
  });
}
