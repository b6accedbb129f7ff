import { fitLinear } from '../fit/linear';
import type { FlightPoint, SharedInputs } from './types';

/** One value of every input the shot's points share; the estimator is evaluated at these, nominal or shifted. */
export interface Setting {
  readonly metresPerPixel: number;
  /** True interval over nominal interval. */
  readonly clockStretch: number;
  /** s per line */
  readonly lineTime: number;
  /** Place of the muzzle plane along the axis from where it was stated, px. */
  readonly muzzle: number;
  readonly diameter: number;
  readonly mass: number;
  readonly density: number;
  /** Of the air, K. */
  readonly temperature: number;
  /** Each shift source's amount, in its standard uncertainties. */
  readonly shifts: readonly number[];
}

/** The points that are used, as columns, and the weights they get; all of length n. */
export interface Flight {
  readonly points: readonly FlightPoint[];
  /** Subtracted from every time, s, so that differences keep their digits. */
  readonly reference: number;
  /** What each point counts for, 0..1: less than 1 where it lies far off the path of the others. */
  readonly weights: Float64Array;
  /** Standard uncertainty of the distance, the frame time's own counted, enlarged for what it does not count for, m. */
  readonly sigma: Float64Array;
  /** Share of the variance that comes from the frame times, 0..1. */
  readonly timeShare: number;
  /** From a straight line: exit time after `reference`, s, and speed, m/s. */
  readonly start: { readonly t0: number; readonly v0: number };
}

/** Distance from the muzzle plane, m. */
export function distanceOf(
  { along, shifts }: Pick<FlightPoint, 'along' | 'shifts'>,
  setting: Setting,
): number {
  let place = along - setting.muzzle;
  if (shifts !== undefined) {
    for (let k = 0; k < shifts.length; k++) {
      place += (shifts[k] as number) * (setting.shifts[k] as number);
    }
  }
  return place * setting.metresPerPixel;
}

/** Middle of the exposure on the centre's own line, s. */
export const timeOf = (frameTime: number, line: number, setting: Setting): number =>
  frameTime * setting.clockStretch + line * setting.lineTime;

/** `weights`: of the points; left out: all count in full. */
export function prepareFlight(
  points: readonly FlightPoint[],
  setting: Setting,
  weights: Float64Array = new Float64Array(points.length).fill(1),
): Flight {
  const reference = timeOf(points[0]?.frameTime ?? 0, points[0]?.line ?? 0, setting);
  const n = points.length;
  const times = Float64Array.from(points, (p) => timeOf(p.frameTime, p.line, setting) - reference);
  const distances = Float64Array.from(points, (p) => distanceOf(p, setting));
  const own = Float64Array.from(points, (p) => p.alongU * setting.metresPerPixel);
  const design = new Float64Array(2 * n).fill(1, 0, n);
  design.set(times, n);
  const [s0 = 0, v0 = 0] = fitLinear(design, distances, own).parameters;
  let share = 0;
  const sigma = own.map((u, i) => {
    const byTime = v0 * (points[i]?.timeU ?? 0);
    share += byTime ** 2 / (u ** 2 + byTime ** 2) / n;
    return Math.hypot(u, byTime) / Math.sqrt(weights[i] as number);
  });
  return { points, reference, weights, sigma, timeShare: share, start: { t0: -s0 / v0, v0 } };
}

export const nominalSetting = (shared: SharedInputs): Setting => ({
  metresPerPixel: shared.metresPerPixel,
  clockStretch: 1,
  lineTime: shared.lineTime.value,
  muzzle: 0,
  diameter: shared.ballDiameter.value,
  mass: shared.ballMass.value,
  density: shared.airDensity.value,
  temperature: shared.airTemperature,
  shifts: (shared.shiftSources ?? []).map(() => 0),
});
