import type { ImageRect, ImageVector } from '../core/units';

/**
 * Pictures between pixels by cubic B-splines (Unser, IEEE Signal Process. Mag. 16 (6) (1999) 22): the spline through
 * the grey values is a sum of bells, one a pixel, each weighted by that pixel's coefficient. Far less blur and shift
 * of sharp edges than cubic convolution, for the same four coefficients each way.
 */
export interface BellWeights {
  /** Weights of the coefficients at -1, 0, 1 and 2 for a place `t` (0..1) beyond pixel 0. */
  readonly value: readonly [number, number, number, number];
  /** Their derivatives by `t`. */
  readonly slope: readonly [number, number, number, number];
}

export function bellWeights(t: number): BellWeights {
  const s = 1 - t;
  return {
    value: [
      (s * s * s) / 6,
      2 / 3 - (t * t * (2 - t)) / 2,
      2 / 3 - (s * s * (2 - s)) / 2,
      (t * t * t) / 6,
    ],
    slope: [(-s * s) / 2, (3 * t * t) / 2 - 2 * t, 2 * s - (3 * s * s) / 2, (t * t) / 2],
  };
}

const POLE = Math.sqrt(3) - 2;
/** The pole's power falls below single precision after so many pixels. */
const MEMORY = 14;

/** Coefficients of the spline through the grey values, row by row; beyond the border the picture is mirrored. */
export function splineCoefficients(
  levels: ArrayLike<number>,
  width: number,
  height: number,
): Float32Array {
  const coefficients = Float32Array.from(levels);
  for (let y = 0; y < height; y++) filterLine(coefficients, y * width, 1, width);
  for (let x = 0; x < width; x++) filterLine(coefficients, x, width, height);
  return coefficients;
}

/** One line of the recursive filter, in place. */
function filterLine(c: Float32Array, start: number, stride: number, count: number): void {
  if (count < 2) return;
  const at = (i: number) => c[start + i * stride] as number;
  const mirrored = (i: number) => at(i < count ? i : Math.max(0, 2 * (count - 1) - i));
  let sum = 0;
  for (let i = 0, power = 1; i < MEMORY; i++, power *= POLE) sum += power * mirrored(i);
  let last = 6 * sum;
  c[start] = last;
  for (let i = 1; i < count; i++) {
    last = 6 * at(i) + POLE * last;
    c[start + i * stride] = last;
  }
  const before = at(count - 2);
  last = (POLE / (POLE * POLE - 1)) * (at(count - 1) + POLE * before);
  c[start + (count - 1) * stride] = last;
  for (let i = count - 2; i >= 0; i--) {
    last = POLE * (last - at(i));
    c[start + i * stride] = last;
  }
}

/** Variance of an interpolated pixel over that of a single one, noise white. */
export function varianceKept(shift: ImageVector): number {
  const along = (by: number) => {
    const { value } = bellWeights(-by - Math.floor(-by));
    let sum = 0;
    for (let pixel = -MEMORY; pixel <= MEMORY; pixel++) {
      // What a single pixel of one adds: its coefficients are sqrt(3) z^|distance|.
      let weight = 0;
      for (let k = 0; k < 4; k++) {
        weight += (value[k] as number) * Math.sqrt(3) * POLE ** Math.abs(k - 1 - pixel);
      }
      sum += weight * weight;
    }
    return sum;
  };
  return along(shift[0]) * along(shift[1]);
}

/**
 * The picture with the given coefficients moved by `shift` (to the right and down for positive numbers): fills `into`,
 * of the picture's size, inside `rect` (whole numbers, within the picture).
 */
export function moveInto(
  into: Float32Array,
  coefficients: Float32Array,
  width: number,
  height: number,
  shift: ImageVector,
  [left, top, columns, rows]: ImageRect,
): void {
  const baseX = Math.floor(-shift[0]);
  const baseY = Math.floor(-shift[1]);
  const [a, b, c, d] = bellWeights(-shift[0] - baseX).value;
  const down = bellWeights(-shift[1] - baseY).value;
  const sum = new Float64Array(columns);
  // Rows interpolated along x, kept for the four rows of the result that need each.
  const ring = Array.from({ length: 4 }, () => new Float64Array(columns));
  const fill = (target: Float64Array, y: number) => {
    const start = Math.min(height - 1, Math.max(0, y)) * width;
    for (let i = 0; i < columns; i++) {
      const x = left + i + baseX;
      const p = start + x;
      if (x >= 1 && x + 2 < width) {
        target[i] =
          a * (coefficients[p - 1] as number) +
          b * (coefficients[p] as number) +
          c * (coefficients[p + 1] as number) +
          d * (coefficients[p + 2] as number);
      } else {
        const at = (dx: number) =>
          coefficients[start + Math.min(width - 1, Math.max(0, x + dx))] as number;
        target[i] = a * at(-1) + b * at(0) + c * at(1) + d * at(2);
      }
    }
  };
  for (let k = 0; k < 3; k++) fill(ring[k] as Float64Array, top + baseY - 1 + k);
  for (let j = 0; j < rows; j++) {
    fill(ring[(j + 3) % 4] as Float64Array, top + j + baseY + 2);
    sum.fill(0);
    for (let k = 0; k < 4; k++) {
      const w = down[k] as number;
      const source = ring[(j + k) % 4] as Float64Array;
      for (let i = 0; i < columns; i++) sum[i] = (sum[i] as number) + w * (source[i] as number);
    }
    into.set(sum, (top + j) * width + left);
  }
}
