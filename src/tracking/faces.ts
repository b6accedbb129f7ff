import type { Seconds } from '../core/units';
import type { Surface } from '../image/types';

/** The ball's surface in one frame. */
export interface Face {
  readonly frame: number;
  /** Middle of the exposure. */
  readonly time: Seconds;
  readonly surface: Surface;
  /** Ball minus background, grey values: the size that patterns on it are measured by. */
  readonly contrast: number;
}

/**
 * Faces as Fourier coefficients around the rings, in units in which noise has the variance 1 in each of their
 * two parts: `n` frames times `rings * orders` values, orders from 1 up.
 */
export interface Patterns {
  readonly faces: readonly Face[];
  readonly n: number;
  readonly rings: number;
  readonly orders: number;
  readonly times: Float64Array;
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Weight of each frame, 0..1: a frame in which something stands before the ball counts less. */
  readonly weights: Float64Array;
  /** What a grey value comes to in these units, ring by ring. */
  readonly unit: Float64Array;
  /** The ball's mean contrast, grey values. */
  readonly contrast: number;
}

const MOST_ORDERS = 12;
/** A face with more of its directions unseen is not used. */
const MOST_UNSEEN = 0.05;
/** More frames tell nothing new and cost time. */
const MOST_FRAMES = 80;
/** A frame whose pattern departs from the mean this many times more than is usual counts less. */
const UNUSUAL = 4;

/** Patterns of the faces that are seen whole. */
export function patternsOf(faces: readonly Face[]): Patterns | null {
  const whole = faces.filter(({ surface: { variance } }) => {
    let unseen = 0;
    for (let i = 0; i < variance.length; i++) if (!Number.isFinite(variance[i])) unseen++;
    return unseen <= MOST_UNSEEN * variance.length;
  });
  const used = whole.slice(0, MOST_FRAMES);
  const first = used[0]?.surface;
  if (first === undefined) return null;
  const rings = first.radii.length;
  const { angles } = first;
  const same = used.filter(({ surface }) => surface.angles === angles);
  const n = same.length;
  const orders = Math.min(MOST_ORDERS, angles / 2 - 1);
  const size = rings * orders;
  const ringVariance = new Float64Array(rings);
  for (const { surface } of same) {
    for (let r = 0; r < rings; r++) {
      let sum = 0;
      let seen = 0;
      for (let k = r * angles; k < (r + 1) * angles; k++) {
        const variance = surface.variance[k] as number;
        if (!Number.isFinite(variance)) continue;
        sum += variance;
        seen++;
      }
      ringVariance[r] = (ringVariance[r] as number) + sum / Math.max(1, seen) / n;
    }
  }
  const unit = ringVariance.map((variance) => Math.sqrt((2 * angles) / variance));
  const re = new Float64Array(n * size);
  const im = new Float64Array(n * size);
  const cosines = Float64Array.from({ length: angles }, (_, k) =>
    Math.cos((2 * Math.PI * k) / angles),
  );
  for (const [i, { surface }] of same.entries()) {
    for (let r = 0; r < rings; r++) {
      for (let j = 1; j <= orders; j++) {
        let c = 0;
        let s = 0;
        for (let k = 0; k < angles; k++) {
          const value = surface.residual[r * angles + k] as number;
          const turn = (j * k) % angles;
          c += value * (cosines[turn] as number);
          s -= value * (cosines[(turn + (3 * angles) / 4) % angles] as number);
        }
        const at = i * size + r * orders + j - 1;
        re[at] = (c / angles) * (unit[r] as number);
        im[at] = (s / angles) * (unit[r] as number);
      }
    }
  }
  const contrast = same.reduce((sum, face) => sum + Math.abs(face.contrast), 0) / n;
  return {
    faces: same,
    n,
    rings,
    orders,
    times: Float64Array.from(same, ({ time }) => time),
    re,
    im,
    weights: weightsOf(re, im, n, size),
    unit,
    contrast,
  };
}

/** A pattern given by its orders laid back on rings times `angles` directions, grey values; its ring means are nothing. */
export function layBack(
  { rings, orders, unit }: Patterns,
  re: Float64Array,
  im: Float64Array,
  angles: number,
): Float64Array {
  const grid = new Float64Array(rings * angles);
  for (let r = 0; r < rings; r++) {
    for (let k = 0; k < angles; k++) {
      let sum = 0;
      for (let j = 1; j <= orders; j++) {
        const q = r * orders + j - 1;
        const turn = (2 * Math.PI * j * k) / angles;
        sum += (re[q] as number) * Math.cos(turn) - (im[q] as number) * Math.sin(turn);
      }
      grid[r * angles + k] = (2 * sum) / (unit[r] as number);
    }
  }
  return grid;
}

/** Frames far from the mean over the frames count less. */
function weightsOf(re: Float64Array, im: Float64Array, n: number, size: number): Float64Array {
  const powers = new Float64Array(n);
  for (let q = 0; q < size; q++) {
    let meanRe = 0;
    let meanIm = 0;
    for (let i = 0; i < n; i++) {
      meanRe += (re[i * size + q] as number) / n;
      meanIm += (im[i * size + q] as number) / n;
    }
    for (let i = 0; i < n; i++) {
      powers[i] =
        (powers[i] as number) +
        ((re[i * size + q] as number) - meanRe) ** 2 +
        ((im[i * size + q] as number) - meanIm) ** 2;
    }
  }
  const usual = powers.slice().sort()[n >> 1] as number;
  return powers.map((power) => Math.min(1, (UNUSUAL * usual) / Math.max(power, 1e-12)));
}
