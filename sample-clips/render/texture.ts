import type { Random } from './random';

/** Smooth random relief over the image, about -1..1, from lattices of the given cell sizes in px. */
export function relief(
  width: number,
  height: number,
  cells: readonly number[],
  random: Random,
): Float32Array {
  const out = new Float32Array(width * height);
  for (const cell of cells) {
    const columns = Math.ceil(width / cell) + 2;
    const rows = Math.ceil(height / cell) + 2;
    const lattice = Float64Array.from({ length: columns * rows }, () => random.uniform(-1, 1));
    for (let y = 0; y < height; y++) {
      const j = Math.floor(y / cell);
      const v = ease(y / cell - j);
      for (let x = 0; x < width; x++) {
        const i = Math.floor(x / cell);
        const u = ease(x / cell - i);
        const at = j * columns + i;
        const upper = mix(lattice[at] as number, lattice[at + 1] as number, u);
        const lower = mix(lattice[at + columns] as number, lattice[at + columns + 1] as number, u);
        const k = y * width + x;
        out[k] = (out[k] as number) + mix(upper, lower, v) / cells.length;
      }
    }
  }
  return out;
}

function mix(a: number, b: number, f: number): number {
  return a + (b - a) * f;
}

function ease(f: number): number {
  return f * f * (3 - 2 * f);
}
