import type { Random } from './random';

/** A linear camera of 8 bit: the variance of its noise before rounding is read + gain * grey value. */
export interface Camera {
  readonly read: number;
  readonly gain: number;
}

/** Variance that rounding to whole grey values adds. */
const ROUNDING = 1 / 12;

/** Variance of a pixel of this expected grey value. */
export const varianceAt = ({ read, gain }: Camera, level: number): number =>
  read + gain * level + ROUNDING;

/** One exposure: shot and read noise, both normal, rounded to 8 bit. */
export function expose(expected: Float64Array, { read, gain }: Camera, random: Random): Uint8Array {
  const out = new Uint8Array(expected.length);
  for (let p = 0; p < out.length; p++) {
    const level = expected[p] as number;
    const value = Math.round(random.normal(level, Math.sqrt(read + gain * level)));
    out[p] = value < 0 ? 0 : Math.min(value, 255);
  }
  return out;
}
