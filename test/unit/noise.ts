import { factory } from '@stdlib/random-base-improved-ziggurat';

/** Seeded standard normal numbers for tests. */
export const normalStream = (seed: number): (() => number) => factory({ seed: seed + 1 });
