import { DEVIATION_OVER_MEDIAN, median } from '../core/statistics';

/** Published tuning constants: 95 % efficiency for normal errors (Huber 1981; Holland & Welsch 1977). */
const HUBER = 1.345;
const TUKEY = 4.685;

export interface RobustFit<F> {
  readonly fit: F;
  /** Weight each observation ended with, 0..1. */
  readonly weights: Float64Array;
  /** Robust scatter in units of the stated uncertainty, at least 1. */
  readonly scatter: number;
}

/**
 * Iterated reweighting on top of any least-squares fit: `fitWith` is called with the standard uncertainties, those
 * of far-off observations enlarged. Huber's weights bring it near, Tukey's then let gross errors go altogether.
 * `parameters` is the number fitted. Null where `fitWith` gives null.
 */
export function fitRobustly<F extends { readonly residuals: Float64Array }>(
  fitWith: (sigmas: Float64Array) => F | null,
  sigmas: Float64Array,
  parameters: number,
): RobustFit<F> | null {
  const n = sigmas.length;
  const weights = new Float64Array(n).fill(1);
  const enlarged = Float64Array.from(sigmas);
  const inflation = Math.sqrt(n / Math.max(1, n - parameters));
  let fit = fitWith(enlarged);
  let scatter = 1;
  for (let round = 0; round < 30 && fit !== null; round++) {
    const { residuals } = fit;
    const scaled = residuals.map((r, i) => Math.abs(r / (sigmas[i] as number)));
    scatter = Math.max(1, DEVIATION_OVER_MEDIAN * median(scaled) * inflation);
    let change = 0;
    for (let i = 0; i < n; i++) {
      const distance = (scaled[i] as number) / scatter;
      const weight = round < 10 ? huberWeight(distance) : tukeyWeight(distance);
      change = Math.max(change, Math.abs(weight - (weights[i] as number)));
      weights[i] = weight;
      // A vanished weight still leaves a finite uncertainty, so that every fit stays well posed.
      enlarged[i] = (sigmas[i] as number) / Math.sqrt(Math.max(weight, 1e-8));
    }
    if (change < 1e-3 && round > 10) break;
    fit = fitWith(enlarged);
  }
  return fit && { fit, weights, scatter };
}

const huberWeight = (distance: number): number => (distance <= HUBER ? 1 : HUBER / distance);
const tukeyWeight = (distance: number): number =>
  distance >= TUKEY ? 0 : (1 - (distance / TUKEY) ** 2) ** 2;
