import type { Cancellation } from '../core/cancellation';
import type { FrameRange } from '../core/film';
import type { GreyFrame } from '../core/frame';
import type { Scene } from './scene';
import type { FrameMeasurer, ReductionEvent, ReductionInputs } from './types';

/** Where frames come from. */
export interface FrameSupply {
  frames(range: FrameRange): AsyncIterable<GreyFrame>;
  /** Told of a frame that nobody will use again, so that its memory is freed. Left out: whoever gave it may use it again. */
  done?(frame: GreyFrame): void;
  /**
   * Holds the frames of these ranges, given before, against a second decoder's; throws what is wrong with them. Left out:
   * the decoder itself tells of damage.
   */
  check?(ranges: readonly FrameRange[]): Promise<void>;
}

/** What every pass through a film works with. */
export interface Work {
  readonly inputs: ReductionInputs;
  readonly scene: Scene;
  readonly film: FrameSupply;
  readonly measurer: FrameMeasurer;
  readonly onEvent: (event: ReductionEvent) => void;
  readonly cancellation: Cancellation;
}

/** Frames handed to a measurer at once. */
export const BATCH_FRAMES = 8;
