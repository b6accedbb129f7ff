import type { Timeline, TimelineEvent } from '../core/timeline';
import type { BudgetEntry, Position, Posterior } from '../shot/result';
import type { LookName } from './looks';
import type { ShownUnit } from './units';

/*
 * What each plot is given: finished numbers in SI units. Components, one a file of the same name:
 * PositionPlot, ResidualPlot, VelocityPlot, SealPlot, Timeline, BudgetChart, SpeedPlot, SealPressurePlot, GasDiagram,
 * ContourPlot.
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

/** The moments of a shot, each with what it is called. */
export interface TimelineProps extends Omit<Timeline, 'events'> {
  readonly events: readonly LabelledEvent[];
}

export interface LabelledEvent extends TimelineEvent {
  readonly label: string;
}

/** A speed, m/s, at a place on the axis, SI, and the ends of its interval. */
interface SpeedAt {
  readonly x: number;
  readonly speed: number;
  readonly low: number;
  readonly high: number;
}

/** What a model says; its points in the order of the axis. */
export interface SpeedCurve {
  readonly name: string;
  readonly look: LookName;
  readonly points: readonly SpeedAt[];
}

/** A measured speed, its place on the axis known to lie between two. */
export interface MeasuredSpeed extends SpeedAt {
  readonly name: string;
  readonly xLow: number;
  readonly xHigh: number;
}

export interface SpeedPlotProps {
  readonly title: string;
  /** What the speed is drawn against, and its unit. */
  readonly axis: { readonly name: string; readonly unit: ShownUnit };
  readonly unit: ShownUnit;
  readonly curves: readonly SpeedCurve[];
  readonly measured: readonly MeasuredSpeed[];
  /** Coverage probability of bands and bars, 0..1. */
  readonly coverage: number;
  /** A measured point was pressed; by its place in the list. */
  onPick?(index: number): void;
}

/** The pressure inside the muzzle seal by one model. */
export interface SealPressureCurve {
  readonly name: string;
  readonly look: LookName;
  /** s, the exit at 0. */
  readonly times: readonly number[];
  /** Pa, absolute. */
  readonly pressures: readonly number[];
  /** When the seal opens, s before the exit, and the interval of that. */
  readonly lead: number;
  readonly leadInterval: readonly [number, number];
}

export interface SealPressurePlotProps {
  readonly curves: readonly SealPressureCurve[];
  /** Pa, absolute. */
  readonly opensAt: number;
  /** The lead on the film, s, and its interval; null: not measured. */
  readonly film: { readonly lead: number; readonly interval: readonly [number, number] } | null;
}

/** What one setting of a plan would give. */
interface ContourCell {
  /** Relative standard uncertainty; null: nothing. */
  readonly value: number | null;
  /** Why there is nothing. */
  readonly why: string | null;
}

export interface ContourPlotProps {
  /** Frames/s, rising, evenly on a logarithmic scale. */
  readonly rates: readonly number[];
  /** m, likewise. */
  readonly fields: readonly number[];
  /** Row by row, a row a field of view. */
  readonly cells: readonly ContourCell[];
  /** The best of them; null: none is possible. */
  readonly best: number | null;
  readonly planned: { readonly rate: number; readonly across: number };
}

/** The gas along the barrel at one instant. */
export interface GasRow {
  /** s after the rear seal opens */
  readonly time: number;
  /** The ball's centre, m from the rear seal. */
  readonly ball: number;
  /** m and Pa, cell by cell from the rear. */
  readonly position: ArrayLike<number>;
  readonly pressure: ArrayLike<number>;
  readonly shocks: readonly { readonly position: number }[];
}

export interface GasDiagramProps {
  readonly rows: readonly GasRow[];
  /** m */
  readonly barrelLength: number;
  /** s after the rear seal opens */
  readonly opening: number;
  readonly exit: number;
}
