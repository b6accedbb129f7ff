import type { GreyFrame } from '../core/frame';
import { backSubstitute, triangulate } from '../core/linalg';
import { median } from '../core/statistics';
import type { ImageVector } from '../core/units';
import { type Area, type Detail, detailOf } from './detail';
import { medianInPlace } from './median';
import { bellWeights, splineCoefficients } from './resample';
import type { Background } from './types';

/**
 * How far the still scene stands from its usual place in one frame: what the background shows at p the frame shows
 * at p + (x, y). Positive: to the right, down. Variances and covariance in px^2.
 */
export interface Shift {
  readonly x: number;
  readonly y: number;
  readonly varX: number;
  readonly varY: number;
  readonly covXY: number;
}

/** The scene's shift in a frame; null where it holds too little detail, or another scene, to tell. */
export type Registrar = (frame: GreyFrame) => Shift | null;

/** Pixels compared in each frame: a millisecond's work, and what they leave open is a few thousandths of a pixel. */
const MOST_PIXELS = 1800;
const FEWEST_PIXELS = 60;
const FEWEST_TILES = 6;
/** Farthest shift looked for, px. */
const REACH = 8;
/** Pixels compared at every whole shift in reach. */
const COARSE_PIXELS = 200;
/** Another whole shift is believed only where it leaves so much less difference than none: patterns repeat. */
const CLEARLY_BETTER = 0.7;
const MOST_ROUNDS = 8;
const SETTLED = 2e-4;
/** Residuals of this many deviations and more do not count (Tukey's biweight, 95 % efficient on normal noise). */
const CUT = 4.685;
const MEDIAN_TO_DEVIATION = 1.4826;
/** Share of the pixels that must fit the scene. */
const LEAST_SHARE = 0.4;
/** A shift less certain than this tells nothing, px. */
const LARGEST_U = 0.2;
/** Shift each way, brightness and a level added to it. */
const PARAMETERS = 4;

/** Prepares the pixels of the background with the most detail for comparing with frames. */
export function createRegistrar(background: Background, area: Area = {}): Registrar {
  const smooth = { ...background, level: smoothed(background) };
  const detail = detailOf(smooth, area, { margin: REACH + 3, most: MOST_PIXELS });
  const { pixels, tiles } = detail;
  if (pixels.length < FEWEST_PIXELS || tiles < FEWEST_TILES) return () => null;
  const place = createFit(smooth, detail);
  const step = Math.max(1, Math.floor(pixels.length / COARSE_PIXELS));
  const coarse = pixels.filter((_, i) => i % step === 0);
  return (frame) =>
    frame.width === background.width && frame.height === background.height
      ? place(frame, wholeShift(frame, background, coarse))
      : null;
}

/** The whole shift in reach with the least difference, each pixel's cut off where it is no longer noise. */
function wholeShift(
  frame: GreyFrame,
  { level, width, noise, white }: Background,
  pixels: Uint32Array,
): ImageVector {
  const ratios: number[] = [];
  for (const p of pixels) {
    if ((level[p] as number) > 0.02 * white) {
      ratios.push((frame.data[p] as number) / (level[p] as number));
    }
  }
  const gain = ratios.length > 0 ? median(ratios) : 1;
  let best: ImageVector = [0, 0];
  let least = 0;
  const cut = 8 * Math.sqrt(noise.readVariance + noise.gain * white * 0.5);
  const cost = (dx: number, dy: number, stopAt: number): number => {
    const offset = dy * width + dx;
    let sum = 0;
    for (let i = 0; i < pixels.length; i++) {
      const p = pixels[i] as number;
      const d = Math.abs((frame.data[p + offset] as number) - gain * (level[p] as number));
      sum += Math.min(d, cut);
      if (sum > stopAt) return sum;
    }
    return sum;
  };
  least = CLEARLY_BETTER * cost(0, 0, Number.POSITIVE_INFINITY);
  for (let dy = -REACH; dy <= REACH; dy++) {
    for (let dx = -REACH; dx <= REACH; dx++) {
      if (dx === 0 && dy === 0) continue;
      const sum = cost(dx, dy, least);
      if (sum < least) [least, best] = [sum, [dx, dy]];
    }
  }
  return best;
}

/**
 * Binomial mean over 3 x 3 pixels, 16 times: frames and background are compared so smoothed, because between pixels
 * the sharpest edges cannot be interpolated without shifting them.
 */
function smoothAt(data: ArrayLike<number>, p: number, width: number): number {
  const row = (q: number) =>
    (data[q - 1] as number) + 2 * (data[q] as number) + (data[q + 1] as number);
  return row(p - width) + 2 * row(p) + row(p + width);
}

function smoothed({ level, width, height }: Background): Float32Array {
  const smooth = level.slice();
  for (let y = 1; y < height - 1; y++) {
    for (let p = y * width + 1; p < (y + 1) * width - 1; p++) {
      smooth[p] = smoothAt(level, p, width) / 16;
    }
  }
  return smooth;
}

/** Robust Gauss-Newton over the chosen pixels; keeps its own memory. */
function createFit(background: Background, { pixels, tile, tiles }: Detail) {
  const { width, noise } = background;
  const level = splineCoefficients(background.level, width, background.height);
  const n = pixels.length;
  const residual = new Float64Array(n);
  const scratch = new Float64Array(n);
  const slopes = new Float64Array(2 * n);
  const value = new Float64Array(n);
  const seen = new Float64Array(n);
  const normal = new Float64Array(PARAMETERS * PARAMETERS);
  const gradient = new Float64Array(PARAMETERS);
  const step = new Float64Array(PARAMETERS);
  // Nothing is known below the noise of a pixel; smoothing keeps (6/16)^2 of its variance.
  const leastDeviation = (6 / 16) * Math.sqrt(noise.readVariance);
  const column = (i: number, j: number, gain: number): number => {
    if (j === 0) return -gain * (slopes[2 * i] as number);
    if (j === 1) return -gain * (slopes[2 * i + 1] as number);
    return j === 2 ? (value[i] as number) : 1;
  };

  /** The background as it would stand in the frame: values and slopes at the pixels moved back by the shift. */
  const lay = (x: number, y: number) => {
    const baseX = Math.floor(-x);
    const baseY = Math.floor(-y);
    const across = bellWeights(-x - baseX);
    const down = bellWeights(-y - baseY);
    const [a, b, c, d] = across.value;
    const [da, db, dc, dd] = across.slope;
    const offset = baseY * width + baseX;
    for (let i = 0; i < n; i++) {
      let p = (pixels[i] as number) + offset - width;
      let v = 0;
      let sx = 0;
      let sy = 0;
      for (let k = 0; k < 4; k++, p += width) {
        const l0 = level[p - 1] as number;
        const l1 = level[p] as number;
        const l2 = level[p + 1] as number;
        const l3 = level[p + 2] as number;
        const wy = down.value[k] as number;
        const h = a * l0 + b * l1 + c * l2 + d * l3;
        v += wy * h;
        sx += wy * (da * l0 + db * l1 + dc * l2 + dd * l3);
        sy += (down.slope[k] as number) * h;
      }
      value[i] = v;
      slopes[2 * i] = sx;
      slopes[2 * i + 1] = sy;
    }
  };
  const deviationOf = (): number => {
    for (let i = 0; i < n; i++) scratch[i] = Math.abs(residual[i] as number);
    return Math.max(leastDeviation, MEDIAN_TO_DEVIATION * medianInPlace(scratch, n));
  };
  /** Sums J w J' over the pixels and J w r; `weigh` gives w from the residual in cuts. */
  const gather = (gain: number, cut: number, weigh: (u2: number) => number) => {
    normal.fill(0);
    gradient.fill(0);
    for (let i = 0; i < n; i++) {
      const r = residual[i] as number;
      const u2 = (r / cut) ** 2;
      if (u2 >= 1) continue;
      const w = weigh(u2);
      for (let j = 0; j < PARAMETERS; j++) {
        const wj = w * column(i, j, gain);
        gradient[j] = (gradient[j] as number) + wj * r;
        for (let k = j; k < PARAMETERS; k++) {
          const at = k * PARAMETERS + j;
          normal[at] = (normal[at] as number) + wj * column(i, k, gain);
        }
      }
    }
    for (let j = 0; j < PARAMETERS; j++) {
      for (let k = 0; k < j; k++) normal[k * PARAMETERS + j] = normal[j * PARAMETERS + k] as number;
    }
  };

  return (frame: GreyFrame, [startX, startY]: ImageVector): Shift | null => {
    let [x, y] = [startX, startY];
    let gain = 1;
    let added = 0;
    for (let i = 0; i < n; i++) seen[i] = smoothAt(frame.data, pixels[i] as number, width) / 16;
    const compare = () => {
      lay(x, y);
      for (let i = 0; i < n; i++) {
        residual[i] = (seen[i] as number) - gain * (value[i] as number) - added;
      }
      return CUT * deviationOf();
    };
    for (let round = 0; round < MOST_ROUNDS; round++) {
      gather(gain, compare(), (u2) => (1 - u2) ** 2);
      triangulate(normal, PARAMETERS, PARAMETERS, gradient);
      if (!backSubstitute(normal, PARAMETERS, PARAMETERS, gradient, step)) return null;
      const [dx, dy] = [step[0] as number, step[1] as number];
      // A first guess with another brightness may throw far; half a pixel at a time does not.
      const most = 0.5;
      x += Math.min(most, Math.max(-most, dx));
      y += Math.min(most, Math.max(-most, dy));
      gain += step[2] as number;
      added += step[3] as number;
      if (!(Math.abs(x) < REACH + 1 && Math.abs(y) < REACH + 1)) return null;
      if (Math.abs(dx) < SETTLED && Math.abs(dy) < SETTLED) break;
    }
    const cut = compare();
    return covarianceAt(x, y, gain, cut);
  };

  /**
   * Covariance of the robust fit (Huber, Robust Statistics, 1981, 7.6, from memory), residuals taken to hang together
   * within a tile, as codecs and small movements in the scene make them.
   */
  function covarianceAt(x: number, y: number, gain: number, cut: number): Shift | null {
    let kept = 0;
    const scores = new Float64Array(tiles * PARAMETERS);
    const white = new Float64Array(PARAMETERS * PARAMETERS);
    for (let i = 0; i < n; i++) {
      const r = residual[i] as number;
      const u2 = (r / cut) ** 2;
      if (u2 >= 1) continue;
      kept++;
      const psi = r * (1 - u2) ** 2;
      const at = (tile[i] as number) * PARAMETERS;
      for (let j = 0; j < PARAMETERS; j++) {
        const share = psi * column(i, j, gain);
        scores[at + j] = (scores[at + j] as number) + share;
        for (let k = 0; k < PARAMETERS; k++) {
          const q = j * PARAMETERS + k;
          white[q] = (white[q] as number) + share * psi * column(i, k, gain);
        }
      }
    }
    if (kept < LEAST_SHARE * n) return null;
    gather(gain, cut, (u2) => (1 - u2) * (1 - 5 * u2));
    const inverse = inverseOf(normal);
    if (inverse === null) return null;
    const together = new Float64Array(PARAMETERS * PARAMETERS);
    for (let at = 0; at < scores.length; at += PARAMETERS) {
      for (let j = 0; j < PARAMETERS; j++) {
        for (let k = 0; k < PARAMETERS; k++) {
          const q = j * PARAMETERS + k;
          together[q] =
            (together[q] as number) + (scores[at + j] as number) * (scores[at + k] as number);
        }
      }
    }
    const alone = sandwich(inverse, white);
    const inTiles = sandwich(inverse, together);
    const share = tiles / (tiles - PARAMETERS);
    // Few tiles tell their own scatter badly: never less than what single pixels say.
    const varX = Math.max(alone[0], share * inTiles[0]);
    const varY = Math.max(alone[2], share * inTiles[2]);
    const covXY = (inTiles[1] * Math.sqrt(varX * varY)) / Math.sqrt(inTiles[0] * inTiles[2] || 1);
    if (!(varX < LARGEST_U ** 2 && varY < LARGEST_U ** 2)) return null;
    return { x, y, varX, varY, covXY };
  }
}

/** Inverse of a symmetric matrix; null where it has none. */
function inverseOf(matrix: Float64Array): Float64Array | null {
  const n = PARAMETERS;
  const inverse = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const copy = Float64Array.from(matrix);
    const unit = new Float64Array(n);
    unit[j] = 1;
    triangulate(copy, n, n, unit);
    const x = new Float64Array(n);
    if (!backSubstitute(copy, n, n, unit, x)) return null;
    inverse.set(x, j * n);
  }
  return inverse;
}

/** Variance of x, covariance, variance of y: A M A of the first two parameters. */
function sandwich(a: Float64Array, m: Float64Array): readonly [number, number, number] {
  const n = PARAMETERS;
  const entry = (r: number, s: number): number => {
    let sum = 0;
    for (let j = 0; j < n; j++) {
      for (let k = 0; k < n; k++) {
        sum += (a[r * n + j] as number) * (m[j * n + k] as number) * (a[s * n + k] as number);
      }
    }
    return sum;
  };
  return [entry(0, 0), entry(0, 1), entry(1, 1)];
}
