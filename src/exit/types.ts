import type { Estimate } from '../core/estimate';
import type { Outcome } from '../core/reason';
import type { Metres, Pixels, Seconds } from '../core/units';
import type { FitChoice } from '../shot/schema';
import type { Spread } from '../uncertainty/draw';

/** One ball centre as the estimator takes it: still in pixels and frames, so that shared inputs can be varied. */
export interface FlightPoint {
  readonly frame: number;
  /** Middle of the exposure at the first line read, on the nominal clock. */
  readonly frameTime: Seconds;
  /** Line on which the centre lies, counted along the readout from the first line read. */
  readonly line: Pixels;
  /** Distance along the flight axis from the stated muzzle point. */
  readonly along: Pixels;
  /** Standard uncertainty of `along`, independent from frame to frame. */
  readonly alongU: Pixels;
  /** Standard uncertainty of `frameTime`, independent from frame to frame. */
  readonly timeU: Seconds;
  /** How far `along` moves for one standard uncertainty of each of `SharedInputs.shiftSources`, in their order; left out: none. */
  readonly shifts?: readonly Pixels[];
}

/**
 * A cause that moves every point of a shot at once, each by an amount of its own (lens, plane): see
 * `FlightPoint.shifts`. Causes are independent of each other; several may carry one name and share a line of the budget.
 */
export interface ShiftSource {
  readonly source: string;
  /** Standard uncertainty, in `unit`; the same for all causes of one name. */
  readonly u: number;
  readonly unit: string;
  /** Left out: normal. */
  readonly spread?: Spread;
}

/** A source of uncertainty common to every point, as a share of the quantity it scales. */
export interface RelativeSource {
  readonly source: string;
  readonly type: 'A' | 'B';
  /** Relative standard uncertainty. */
  readonly u: number;
  readonly dof: number | null;
  /** The unit the input is stated in, and the relative change that one of it makes, signed; null or left out: none. */
  readonly stated?: { readonly unit: string; readonly share: number } | null;
  /** Left out: normal, or Student's t where there are degrees of freedom. */
  readonly spread?: Spread;
}

/** One reading the air's density is worked out from. */
export interface AirSource {
  readonly source: string;
  /** Standard uncertainty of the reading, in `unit`. */
  readonly u: number;
  readonly unit: string;
  /** Relative change of the density for one such uncertainty, signed. */
  readonly share: number;
}

/** Inputs that move every point of a shot together; they do not average down with more frames. */
export interface SharedInputs {
  /** Metres per pixel on the flight line. */
  readonly metresPerPixel: number;
  /** What its uncertainty is made of: known length, end points, parallax, cosine of the axis... */
  readonly scaleSources: readonly RelativeSource[];
  /** Relative errors of the clock (every interval stretched alike). */
  readonly clockSources: readonly RelativeSource[];
  /** Seconds a line of the rolling shutter; value 0 for a global one. */
  readonly lineTime: Estimate;
  /** Standard uncertainty of the muzzle plane's place along the axis. */
  readonly muzzleU: Pixels;
  readonly ballDiameter: Estimate;
  readonly ballMass: Estimate;
  /** Density of the air ahead, kg/m^3; bounds what drag is plausible. */
  readonly airDensity: Estimate;
  /** K; with the density it gives the Reynolds and Mach numbers that the drag to be expected depends on. */
  readonly airTemperature: number;
  /** What the density's uncertainty is made of; left out: the density was measured itself. */
  readonly airSources?: readonly AirSource[];
  /** Left out: none. */
  readonly shiftSources?: readonly ShiftSource[];
}

export interface ExitOptions {
  readonly model: FitChoice;
  readonly robust: boolean;
  readonly coverage: number;
  readonly seed: number;
  /** At most so many trials of the Monte Carlo check; left out: as `propagate` does. */
  readonly mostTrials?: number;
}

/** The fitted path, ready to be read at any time. */
export interface FittedPath {
  /** Distance from the muzzle plane, m, and speed, m/s, each with its standard uncertainty, all inputs counted. */
  at(time: Seconds): { s: Metres; sU: Metres; v: number; vU: number };
  /** Time at which the centre is at `s`, and its standard uncertainty. */
  timeAt(s: Metres): Outcome<Estimate>;
  /** Mean speed over `times`, m/s, `shares` adding up to 1. */
  meanSpeed(times: readonly Seconds[], shares: readonly number[]): MeanSpeed;
}

/** A mean of the fitted speed, its uncertainty kept apart by cause. */
export interface MeanSpeed {
  readonly value: number;
  /** Standard uncertainty from the centres and the choice of model alone, and its degrees of freedom. */
  readonly ownU: number;
  readonly dof: number | null;
  /** What one standard uncertainty of each shared input does to it, in the order of `sharedInputs`. */
  readonly moved: readonly number[];
}
