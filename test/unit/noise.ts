import ziggurat from '@stdlib/random-base-improved-ziggurat';

/** Seeded standard normal numbers for tests. */
export const normalStream = (seed: number): (() => number) => ziggurat.factory({ seed: seed + 1 });
