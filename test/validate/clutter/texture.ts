import type { Random } from './random';

/** Smooth noise of about -1..1 on a grid of `cell` px, drawn once from the random stream; repeats after 32 cells. */
export function smoothNoise(random: Random, cell: number): (x: number, y: number) => number {
  const SIZE = 32;
  const values = Float32Array.from({ length: SIZE * SIZE }, () => random.between(-1, 1));
  const at = (i: number, j: number) => values[(j & (SIZE - 1)) * SIZE + (i & (SIZE - 1))] as number;
  const ease = (t: number) => t * t * (3 - 2 * t);
  return (x, y) => {
    const i = Math.floor(x / cell);
    const j = Math.floor(y / cell);
    const fx = ease(x / cell - i);
    const fy = ease(y / cell - j);
    const top = at(i, j) * (1 - fx) + at(i + 1, j) * fx;
    const bottom = at(i, j + 1) * (1 - fx) + at(i + 1, j + 1) * fx;
    return top * (1 - fy) + bottom * fy;
  };
}
