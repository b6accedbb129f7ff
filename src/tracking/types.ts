import type { Reason } from '../core/reason';
import type { ImageVector, Seconds } from '../core/units';
import type { Candidate } from '../image/types';

/** Candidates of one frame; `time` as the clock gives it at the first line read. */
export interface FrameCandidates {
  readonly frame: number;
  readonly time: Seconds;
  readonly candidates: readonly Candidate[];
}

export interface TrackPoint {
  readonly frame: number;
  readonly candidate: Candidate;
}

/** One object followed over frames. */
export interface Track {
  readonly points: readonly TrackPoint[];
  /** Unit direction of travel in the image. */
  readonly axis: ImageVector;
  /** Mean speed along the axis, px/s. */
  readonly speed: number;
  /** Tracks that came near it but were judged not to be the ball, with the reason. */
  readonly rivals: readonly { readonly frames: number; readonly reason: Reason }[];
}
