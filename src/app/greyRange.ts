import type { GreyFrame } from '../core/frame';

/** Shares of the pixels left darker than black and brighter than white when greys are stretched. */
const DARK_SHARE = 0.002;
const BRIGHT_SHARE = 0.002;
const BINS = 1024;

/** The grey values between which nearly all of a frame's pixels lie. */
export function greyRange({ data, white }: GreyFrame): { low: number; high: number } {
  const counts = new Uint32Array(BINS);
  const binOf = (BINS - 1) / white;
  for (let i = 0; i < data.length; i++) {
    const bin = Math.round((data[i] as number) * binOf);
    counts[bin] = (counts[bin] as number) + 1;
  }
  const atShare = (share: number) => {
    let seen = 0;
    for (let bin = 0; bin < BINS; bin++) {
      seen += counts[bin] as number;
      if (seen > share * data.length) return bin / binOf;
    }
    return white;
  };
  const low = atShare(DARK_SHARE);
  const high = atShare(1 - BRIGHT_SHARE);
  return high > low ? { low, high } : { low: 0, high: white };
}
