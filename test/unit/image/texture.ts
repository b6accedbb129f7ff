import type { GreyFrame } from '../../../src/core/frame';
import { generator } from './rendering';

/** A still scene made of smooth spots, each integrated exactly over every pixel wherever it is moved to. */
export interface Texture {
  readonly width: number;
  readonly height: number;
  readonly spots: readonly {
    readonly x: number;
    readonly y: number;
    /** Standard deviation, px. */
    readonly size: number;
    /** Grey values at its middle. */
    readonly height: number;
  }[];
}

/** `size`: standard deviation of the sharpest spots, px; others are up to twice as wide. */
export function texture(
  width: number,
  height: number,
  count: number,
  size: number,
  seed: number,
): Texture {
  const random = generator(seed);
  const spots = Array.from({ length: count }, () => ({
    x: -20 + random.uniform() * (width + 40),
    y: -20 + random.uniform() * (height + 40),
    size: size * (1 + random.uniform()),
    height: 140 * (random.uniform() - 0.5),
  }));
  return { width, height, spots };
}

/** Error function to 1.5e-7 (Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.26). */
function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const sum =
    ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
  return Math.sign(x) * (1 - sum * Math.exp(-x * x));
}

/** Mean of a spot's profile over each of the pixels `from` to `to`, 1 at its middle. */
const profile = (middle: number, size: number, from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => {
    const edge = (at: number) => erf((at - middle) / (size * Math.SQRT2));
    const x = from + i;
    return ((edge(x + 0.5) - edge(x - 0.5)) / 2) * size * Math.sqrt(2 * Math.PI);
  });

/** The scene moved by (dx, dy): to the right and down for positive numbers. */
export function drawTexture(
  { width, height, spots }: Texture,
  dx: number,
  dy: number,
): Float64Array {
  const image = new Float64Array(width * height).fill(110);
  for (const spot of spots) {
    const [x, y] = [spot.x + dx, spot.y + dy];
    const reach = 5 * spot.size + 1;
    const x0 = Math.max(0, Math.ceil(x - reach));
    const x1 = Math.min(width - 1, Math.floor(x + reach));
    const y0 = Math.max(0, Math.ceil(y - reach));
    const y1 = Math.min(height - 1, Math.floor(y + reach));
    if (x1 < x0 || y1 < y0) continue;
    const across = profile(x, spot.size, x0, x1);
    const down = profile(y, spot.size, y0, y1);
    for (const [j, d] of down.entries()) {
      for (const [i, a] of across.entries()) {
        const p = (y0 + j) * width + x0 + i;
        image[p] = (image[p] as number) + spot.height * a * d;
      }
    }
  }
  return image;
}

/** Covers a disc of a frame with one grey value. */
export function cover(frame: GreyFrame, x: number, y: number, radius: number, grey: number): void {
  for (let py = 0; py < frame.height; py++) {
    for (let px = 0; px < frame.width; px++) {
      if (Math.hypot(px - x, py - y) < radius) frame.data[py * frame.width + px] = grey;
    }
  }
}
