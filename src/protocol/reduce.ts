import type { Reduction, ReductionEvent, ReductionInputs } from '../reduction/types';

/** The reducing worker: runs one reduction at a time, over the film and measuring workers' ports. */
export interface ReduceApi {
  connect(film: MessagePort, measurers: readonly MessagePort[]): Promise<void>;
  reduce(inputs: ReductionInputs, onEvent: (event: ReductionEvent) => void): Promise<Reduction>;
  /**
   * The same reduction after an edit that leaves the pixels alone (rejected or hand-placed points, fit model,
   * rate, scale uncertainty): nothing is decoded again. Refused with `pixelsNeeded` where it must be.
   */
  refit(inputs: ReductionInputs): Promise<Reduction>;
  cancel(): Promise<void>;
}
