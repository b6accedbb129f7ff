import type { Stage } from '../../../src/reduction/types';

export interface DecodeTiming {
  readonly frames: number;
  readonly seconds: number;
}

/** Seconds from the order to measure. */
export interface ReduceTiming {
  /** Until the first centre was known. */
  readonly firstPoint: number;
  /** Until every centre was: the film is not needed any more. */
  readonly measured: number;
  /** Until the result. */
  readonly seconds: number;
  /** Of which the Monte Carlo check. */
  readonly trials: number;
  /** Until the last word of each stage. */
  readonly stages: Partial<Record<Stage, number>>;
  readonly used: number;
  readonly velocity: number | null;
  readonly velocityU: number | null;
  readonly warnings: readonly string[];
}

/** What the bench's page offers. */
export interface PipelinePage {
  /** Opens the file put into its input. */
  open(): Promise<{ readonly frames: number; readonly decoder: string }>;
  decode(): Promise<DecodeTiming>;
  reduce(shot: string): Promise<ReduceTiming>;
}
