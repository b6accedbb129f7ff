import type { Column } from './column';
import type { PistonRun } from './pistonRun';

/** The gas along the barrel at one instant, behind and ahead of the ball: cells from the rear seal on. */
export interface Profile {
  /** s after the rear seal opens */
  readonly time: number;
  /** The ball's centre, m from the rear seal. */
  readonly ball: number;
  /** m, Pa and m/s, single precision: for drawing. */
  readonly position: Float32Array;
  readonly pressure: Float32Array;
  readonly velocity: Float32Array;
  readonly shocks: readonly Shock[];
}

export interface Shock {
  /** m from the rear seal */
  readonly position: number;
  /** Pressure behind over that before it. */
  readonly strength: number;
  /** Which way it runs through the gas. */
  readonly direction: 'forwards' | 'backwards';
}

/** Weaker jumps are not called shocks: a compression wave that has not steepened would pass for one. */
const LEAST_STRENGTH = 1.1;
/** A captured shock spreads over few cells: a jump counts where this many cells hold it. */
const SHOCK_CELLS = 5;

export function profileOf(run: PistonRun, start: number): Profile {
  const columns = run.front === null ? [run.rear] : [run.rear, run.front];
  const cells = columns.flatMap((column) =>
    Array.from({ length: column.cells }, (_, i) => ({ column, i })),
  );
  return {
    time: run.time,
    ball: start + run.way,
    position: Float32Array.from(cells, ({ column, i }) => middle(column, i)),
    pressure: Float32Array.from(cells, ({ column, i }) => column.state.pressure[i] as number),
    velocity: Float32Array.from(cells, ({ column, i }) => column.state.velocity[i] as number),
    shocks: columns.flatMap(shocksIn),
  };
}

const middle = ({ left, right, cells }: Column, i: number): number =>
  left + ((i + 0.5) * (right - left)) / cells;

/**
 * Shocks of a column: where the gas is squeezed the most within a run of cells that all squeeze, and pressure jumps
 * across five cells there as a shock's does.
 */
export function shocksIn(column: Column): Shock[] {
  const { cells, state } = column;
  const { pressure, velocity } = state;
  const found: Shock[] = [];
  const squeeze = (i: number) => (velocity[i] as number) - (velocity[i + 1] as number);
  const half = SHOCK_CELLS >> 1;
  for (let i = half; i < cells - 1 - half; i++) {
    if (!(squeeze(i) > squeeze(i - 1) && squeeze(i) >= squeeze(i + 1))) continue;
    const behind = pressure[i - half] as number;
    const before = pressure[i + 1 + half] as number;
    const strength = Math.max(behind / before, before / behind);
    if (strength < LEAST_STRENGTH || !steep(column, i, strength)) continue;
    found.push({
      position: 0.5 * (middle(column, i) + middle(column, i + 1)),
      strength,
      direction: behind > before ? 'forwards' : 'backwards',
    });
  }
  return found;
}

/** Whether most of the jump is taken between the two middle pairs of cells, as in no smooth wave. */
function steep({ state }: Column, i: number, strength: number): boolean {
  const { pressure } = state;
  const near = Math.abs(Math.log((pressure[i + 2] as number) / (pressure[i - 1] as number)));
  return near > 0.75 * Math.log(strength);
}
