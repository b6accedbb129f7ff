import type { FrameInspection } from './resultTypes';

/** What the planes of a fit laid open come down to. */
export interface ResidualReading {
  /** Root mean square over the pixels that count in the fit; 1 where the model leaves only noise. */
  readonly rms: number;
  /** Largest deviation of either sign among them. */
  readonly largest: number;
}

/** Null where there is no residual or nothing of the frame was fitted. */
export function residualReading({ residual, weight }: FrameInspection): ResidualReading | null {
  if (residual === null) return null;
  let sum = 0;
  let count = 0;
  let largest = 0;
  for (let i = 0; i < residual.length; i++) {
    const value = residual[i] as number;
    if (!Number.isFinite(value) || (weight !== null && (weight[i] as number) <= 0)) continue;
    sum += value * value;
    count += 1;
    if (Math.abs(value) > Math.abs(largest)) largest = value;
  }
  return count === 0 ? null : { rms: Math.sqrt(sum / count), largest };
}

/** Number of pixels that were masked or thrown out. */
export const leftOutPixels = ({ weight }: FrameInspection): number =>
  weight === null ? 0 : weight.reduce((count, one) => count + (one === 0 ? 1 : 0), 0);
