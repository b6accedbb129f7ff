import type { Disc } from './discModel';
import type { DiscPixels } from './discPixels';
import { shadeStrain } from './discPriors';
import { LAMP } from './discShade';
import { medianInPlace } from './median';
import type { Background } from './types';

/** Sum of squares of the polynomial's terms over their expected sizes, eight terms, from which on they stand for a lamp. */
const STRAINED = 20;

/** Even brightness, or the known look, at the level of the middle: median of the pixels that differ from the background. */
export function startShade(pixels: DiscPixels, disc: Disc, noise: Background['noise']): void {
  const inner: number[] = [];
  const differing: number[] = [];
  for (let i = 0; i < pixels.count; i++) {
    if (pixels.edge[i] === 1 || pixels.used[i] === 0) continue;
    const r = Math.hypot((pixels.x[i] as number) - disc.x, (pixels.y[i] as number) - disc.y);
    if (r > 0.8 * disc.radius) continue;
    const value = pixels.value[i] as number;
    inner.push(value);
    const change = value - (pixels.background[i] as number);
    if (change * change > 16 * (noise.readVariance + noise.gain * value)) differing.push(value);
  }
  const values = Float64Array.from(differing.length * 4 > inner.length ? differing : inner);
  disc.shade[0] = values.length > 0 ? medianInPlace(values, values.length) : 0;
}

/**
 * Gives the slope of the brightness across the image to a lamp, halfway between the camera and the
 * image's plane. From behind it would do as well together with a slope of the other sign, so it has to
 * start on its side.
 */
export function startLamp(shade: Float64Array): void {
  const x = shade[1] as number;
  const y = shade[2] as number;
  shade[LAMP] = x;
  shade[LAMP + 1] = y;
  shade[LAMP + 2] = Math.hypot(x, y);
  shade[1] = 0;
  shade[2] = 0;
  shade[3] = (shade[3] as number) - (shade[LAMP + 2] as number);
}

/**
 * Hands the lamp what the polynomial has taken over from it; false where the polynomial is no larger
 * than it may be. Once the polynomial explains a matt ball the lamp's own light is not missed, and
 * Gauss-Newton does not find out of there.
 */
export function freeLamp(shade: Float64Array, level: number): boolean {
  if (shadeStrain(shade, level) < STRAINED) return false;
  for (let j = 0; j < 3; j++) {
    shade[LAMP + j] = (shade[LAMP + j] as number) + (shade[1 + j] as number);
  }
  shade.fill(0, 1, LAMP);
  return true;
}
