import type { Reason } from '../core/reason';
import type { ImagePoint, ImageVector, Pixels, Seconds } from '../core/units';
import type { Candidate } from '../image/types';

/** Motion in the image: p(t) = origin + velocity (t - time) + half acceleration (t - time)^2. */
export interface Path {
  readonly time: Seconds;
  readonly origin: ImagePoint;
  /** px/s */
  readonly velocity: ImageVector;
  /** px/s^2 */
  readonly acceleration: ImageVector;
}

/** Candidates of one frame. */
export interface FrameCandidates {
  readonly frame: number;
  readonly candidates: readonly Candidate[];
}

/** Mid-exposure of the line at (x, y) of a frame. */
export type TimeOf = (frame: number, x: Pixels, y: Pixels) => Seconds;

/** What is known of the flight before the film is looked at. */
export interface TrackPrior {
  /** Direction of travel, any length; null: unknown. */
  readonly axis: ImageVector | null;
  /** A point the flight passes; null: unknown. */
  readonly muzzle: ImagePoint | null;
  readonly radius: Pixels;
  /** No ball is faster, px/s; no limit unless given. */
  readonly maxSpeed?: number;
  /** Time of the line that shows this place in a frame. */
  readonly timeOf: TimeOf;
  /** Share of its speed that the air can take from the ball per pixel of its way at most; left out: not known. */
  readonly slowing?: number;
  /** Centres placed by a person; each stands in its frame for whatever was found there. */
  readonly placed: readonly Place[];
  /** Where a person says the ball is: its path passes there, but the places are not measurements. */
  readonly seeds: readonly Place[];
}

export interface Place {
  readonly frame: number;
  readonly x: Pixels;
  readonly y: Pixels;
}

export interface TrackPoint {
  readonly frame: number;
  readonly candidate: Candidate;
  /** Where the path through all points has the centre in this frame: the place to measure from. */
  readonly at: ImagePoint;
}

/** One object followed over frames. */
export interface Track {
  readonly points: readonly TrackPoint[];
  /** Motion through all points. */
  readonly path: Path;
  /** Unit direction of travel in the image. */
  readonly axis: ImageVector;
  /** Mean speed along the axis, px/s. */
  readonly speed: number;
  /** Tracks that came near it but were judged not to be the ball, with the reason. */
  readonly rivals: readonly { readonly frames: number; readonly reason: Reason }[];
}
