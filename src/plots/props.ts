import type { BudgetEntry, Position, Posterior } from '../shot/result';
import type { ShownUnit } from './units';

/*
 * What each plot is given: finished numbers in SI units. Components, one a file of the same name:
 * PositionPlot, ResidualPlot, VelocityPlot, SealPlot, Timeline, BudgetChart.
 */

/** A curve over time with the half width of its coverage band. Arrays run together. */
export interface BandCurve {
  readonly times: ArrayLike<number>;
  readonly values: ArrayLike<number>;
  /** Standard uncertainty of each value; the band is `coverageFactor` times as wide. */
  readonly u: ArrayLike<number>;
  readonly coverageFactor: number;
  /** Coverage probability the factor stands for, 0..1; stated in the legend. */
  readonly coverage: number;
}

/** A moment with its coverage interval, s. */
export interface PlotInstant {
  readonly kind: 'burst' | 'exit' | 'onset' | 'contact';
  readonly time: number;
  readonly low: number;
  readonly high: number;
  readonly label: string;
}

interface PlotFrame {
  /** Drawn as current; null: none. */
  readonly currentFrame?: number | null;
  onPickFrame?(frame: number): void;
}

export interface PositionPlotProps extends PlotFrame {
  /** Refused positions are drawn as crosses, as on the film; those without a distance are left out. */
  readonly positions: readonly Position[];
  readonly curve: BandCurve | null;
  readonly instants: readonly PlotInstant[];
  /** Muzzle zone: distances from the muzzle plane, m; null: not shown. */
  readonly zone: { readonly from: number; readonly to: number } | null;
}

export interface ResidualPoint {
  readonly frame: number;
  readonly time: number;
  /** Measured minus fitted, m, and its standard uncertainty. */
  readonly residual: number;
  readonly u: number;
  readonly used: boolean;
  readonly manual: boolean;
}

export interface ResidualPlotProps extends PlotFrame {
  readonly points: readonly ResidualPoint[];
}

/** Speed between two neighbouring centres, drawn at the middle of their times. */
export interface SpeedDifference {
  readonly time: number;
  readonly v: number;
  readonly u: number;
}

export interface VelocityPlotProps {
  /** Unit in which speeds are shown. */
  readonly unit: ShownUnit;
  readonly curve: BandCurve | null;
  readonly differences: readonly SpeedDifference[];
  /** The exit: its time, speed and the speed's coverage interval. */
  readonly exit: {
    readonly time: number;
    readonly value: number;
    readonly interval: readonly [number, number];
  } | null;
}

export interface SealPlotProps {
  readonly times: ArrayLike<number>;
  /** How far the film stands out of its rest position, m, and its standard uncertainty. */
  readonly front: ArrayLike<number>;
  readonly frontU: ArrayLike<number>;
  readonly instants: readonly PlotInstant[];
  /** How probable each moment of opening is; null where it was not found. */
  readonly posterior: Posterior | null;
  /** Moments between which it must have opened, s, where it was not found; null: no bound that side. */
  readonly bounds: readonly [earliest: number | null, latest: number | null] | null;
}

export interface BudgetChartProps {
  readonly entries: readonly BudgetEntry[];
  /** Standard uncertainty of the result, same unit as the contributions. */
  readonly combined: number;
  /** Unit in which they are shown. */
  readonly unit: ShownUnit;
}
