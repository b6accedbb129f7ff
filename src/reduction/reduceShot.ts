import type { Cancellation } from '../core/cancellation';
import { concludeShot } from './concludeShot';
import { measureFilm } from './measureFilm';
import type { FrameMeasurer, Reduction, ReductionEvent, ReductionInputs } from './types';
import type { FrameSupply } from './work';

/** One shot from frames to result: measures the film, then concludes from what was measured. */
export async function reduceShot(
  inputs: ReductionInputs,
  film: FrameSupply,
  measurer: FrameMeasurer,
  onEvent: (event: ReductionEvent) => void,
  cancellation: Cancellation,
): Promise<Reduction> {
  const measured = await measureFilm(inputs, film, measurer, onEvent, cancellation);
  return concludeShot(inputs, measured, onEvent);
}
