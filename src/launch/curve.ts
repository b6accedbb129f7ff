import type { LaunchCurve } from './types';

/** One sample of a launch, in the units of `LaunchCurve`. */
export type Sample = { readonly [Key in keyof LaunchCurve]: number };

/** Samples of the curve in the time scale of constant force. */
export const SAMPLES = 400;

/** A growing curve. */
export function createCurve(): { readonly curve: LaunchCurve; add(sample: Sample): void } {
  const curve: Record<keyof LaunchCurve, number[]> = {
    time: [],
    position: [],
    speed: [],
    acceleration: [],
    basePressure: [],
    frontPressure: [],
    sealPressure: [],
  };
  return {
    curve,
    add(sample) {
      for (const key of Object.keys(curve) as (keyof LaunchCurve)[]) curve[key].push(sample[key]);
    },
  };
}
