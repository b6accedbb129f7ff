import type { FrameInspection } from '../image/types';
import type { Reduction, ReductionEvent, ReductionInputs } from '../reduction/types';

/** The reducing worker: runs one reduction at a time, over the film and measuring workers' ports. */
export interface ReduceApi {
  connect(film: MessagePort, measurers: readonly MessagePort[]): Promise<void>;
  /** Events come several at a time. */
  reduce(
    inputs: ReductionInputs,
    onEvents: (events: readonly ReductionEvent[]) => void,
  ): Promise<Reduction>;
  /**
   * The same reduction after an edit that leaves the pixels alone (rejected or hand-placed points, fit model,
   * rate, scale uncertainty): nothing is decoded again. Refused with `pixelsNeeded` where it must be.
   */
  refit(inputs: ReductionInputs): Promise<Reduction>;
  /** The fit of one frame of the film measured last, laid open; null where the ball was not looked for in it. */
  inspect(frame: number): Promise<FrameInspection | null>;
  cancel(): Promise<void>;
}
