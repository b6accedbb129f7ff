import type { GreyFrame } from '../core/frame';
import { median, robustDeviation } from '../core/statistics';
import type { ImageVector } from '../core/units';
import { type Area, type Detail, detailOf } from './detail';
import { soundLevels } from './faults';
import { bellWeights, splineCoefficients } from './resample';
import { createRobustFit } from './robustFit';
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
const MOST_PIXELS_OF_PART = 500;
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
/** px in one round. */
const MOST_STEP = 0.5;
/** It is another scene where the comparison leaves more than this share of its contrast. */
const MOST_LEFT = 0.5;
/** A shift less certain than this tells nothing, px. */
const LARGEST_U = 0.2;
/** Shift each way, brightness and a level added to it. */
const PARAMETERS = 4;

/** Prepares the pixels of the background with the most detail for comparing with frames. */
export const createRegistrar = (background: Background): Registrar =>
  registrarFor({}, prepare(background));

/** The same for each of several parts of the picture. */
export function createRegistrars(background: Background, areas: readonly Area[]): Registrar[] {
  const prepared = prepare(background);
  return areas.map((area) => registrarFor(area, prepared));
}

interface Prepared {
  /** Smoothed as frames are before they are compared. */
  readonly smooth: Background;
  readonly coefficients: Float32Array;
}

function prepare(background: Background): Prepared {
  const level = smoothed({ ...background, level: soundLevels(background) });
  const { width, height } = background;
  return {
    smooth: { ...background, level },
    coefficients: splineCoefficients(level, width, height),
  };
}

function registrarFor(area: Area, prepared: Prepared): Registrar {
  const { smooth } = prepared;
  const most = area.inside === undefined ? MOST_PIXELS : MOST_PIXELS_OF_PART;
  const detail = detailOf(smooth, area, { margin: REACH + 3, most });
  const { pixels, tiles, steepAcross, steepDown } = detail;
  if (Math.min(steepAcross, steepDown) < FEWEST_PIXELS || tiles < FEWEST_TILES) return () => null;
  const place = createFit(prepared, detail);
  const step = Math.max(1, Math.floor(pixels.length / COARSE_PIXELS));
  const coarse = pixels.filter((_, i) => i % step === 0);
  return (frame) =>
    frame.width === smooth.width && frame.height === smooth.height
      ? place(frame, wholeShift(frame, smooth, coarse))
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
  for (let y = 1; y < height - 1; y++) smoothRow(level, width, y, smooth);
  return smooth;
}

function smoothRow(level: Float32Array, width: number, y: number, smooth: Float32Array): void {
  for (let p = y * width + 1; p < (y + 1) * width - 1; p++) {
    smooth[p] = smoothAt(level, p, width) / 16;
  }
}

/** Robust Gauss-Newton over the chosen pixels. */
function createFit({ smooth, coefficients }: Prepared, { pixels, tile, tiles }: Detail) {
  const { width, noise, level } = smooth;
  const n = pixels.length;
  const grey = Array.from(pixels, (p) => level[p] as number);
  const contrast = robustDeviation(grey, median(grey));
  const seen = new Float64Array(n);
  // Nothing is known below the noise of a pixel; smoothing keeps (6/16)^2 of its variance.
  const leastDeviation = (6 / 16) * Math.sqrt(noise.readVariance);
  const fit = createRobustFit(PARAMETERS, leastDeviation, tile, tiles);
  const { residual, derivatives } = fit;

  /** Compares the frame with the background as it would stand in it, moved by (x, y). */
  const compare = (x: number, y: number, gain: number, added: number) => {
    const baseX = Math.floor(-x);
    const baseY = Math.floor(-y);
    const across = bellWeights(-x - baseX);
    const down = bellWeights(-y - baseY);
    const [a, b, c, d] = across.value;
    const [da, db, dc, dd] = across.slope;
    const offset = baseY * width + baseX;
    for (let i = 0; i < n; i++) {
      let p = (pixels[i] as number) + offset - width;
      let value = 0;
      let slopeX = 0;
      let slopeY = 0;
      for (let k = 0; k < 4; k++, p += width) {
        const c0 = coefficients[p - 1] as number;
        const c1 = coefficients[p] as number;
        const c2 = coefficients[p + 1] as number;
        const c3 = coefficients[p + 2] as number;
        const weight = down.value[k] as number;
        const row = a * c0 + b * c1 + c * c2 + d * c3;
        value += weight * row;
        slopeX += weight * (da * c0 + db * c1 + dc * c2 + dd * c3);
        slopeY += (down.slope[k] as number) * row;
      }
      const at = PARAMETERS * i;
      residual[i] = (seen[i] as number) - gain * value - added;
      derivatives[at] = -gain * slopeX;
      derivatives[at + 1] = -gain * slopeY;
      derivatives[at + 2] = value;
      derivatives[at + 3] = 1;
    }
  };

  return (frame: GreyFrame, start: ImageVector): Shift | null => {
    for (let i = 0; i < n; i++) seen[i] = smoothAt(frame.data, pixels[i] as number, width) / 16;
    let [x, y] = start;
    let gain = 1;
    let added = 0;
    for (let round = 0; round < MOST_ROUNDS; round++) {
      compare(x, y, gain, added);
      const step = fit.step();
      if (step === null) return null;
      const [dx, dy, dGain, dAdded] = step as unknown as readonly [number, number, number, number];
      // A first guess with another brightness may throw far; half a pixel at a time does not.
      x += Math.min(MOST_STEP, Math.max(-MOST_STEP, dx));
      y += Math.min(MOST_STEP, Math.max(-MOST_STEP, dy));
      gain += dGain;
      added += dAdded;
      if (!(Math.abs(x) < REACH + 1 && Math.abs(y) < REACH + 1)) return null;
      if (Math.abs(dx) < SETTLED && Math.abs(dy) < SETTLED) break;
    }
    compare(x, y, gain, added);
    const covariance = fit.covariance();
    if (covariance === null || covariance.deviation > MOST_LEFT * gain * contrast) return null;
    return shiftFrom(x, y, covariance.matrix, PARAMETERS, LARGEST_U);
  };
}

/** The first two parameters as a shift; null where they are less certain than `largestU`. */
export function shiftFrom(
  x: number,
  y: number,
  matrix: Float64Array,
  parameters: number,
  largestU: number,
): Shift | null {
  const varX = matrix[0] as number;
  const varY = matrix[parameters + 1] as number;
  if (!(varX < largestU ** 2 && varY < largestU ** 2)) return null;
  return { x, y, varX, varY, covXY: matrix[1] as number };
}
