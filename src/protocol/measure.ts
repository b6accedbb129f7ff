import type { GreyFrame } from '../core/frame';
import type { Outcome } from '../core/reason';
import type { ImagePoint } from '../core/units';
import type {
  Background,
  BallModel,
  Candidate,
  CentreMeasurement,
  StreakLine,
} from '../image/types';
import type { SealObservation, SealView } from '../seal/types';

/** What is looked for in every frame of the clip. */
export interface SurveySetup {
  readonly background: Background;
  readonly ball: BallModel;
  readonly streak: StreakLine;
  readonly seals: { readonly muzzle: SealView | null; readonly rear: SealView | null };
}

/** What one frame gave. */
export interface FrameSurvey {
  readonly frame: number;
  /** Grey values along the streak line. */
  readonly streak: Float32Array;
  readonly candidates: readonly Candidate[];
  readonly seals: {
    readonly muzzle: SealObservation | null;
    readonly rear: SealObservation | null;
  };
  /** Mean grey value of the static part of the frame over that of the background. */
  readonly gain: number;
  /** Mean absolute grey difference to the frame before in this batch; null for the batch's first. */
  readonly change: number | null;
}

export interface CentreHint {
  readonly frame: GreyFrame;
  readonly at: ImagePoint;
}

/** A measuring worker: no state but the setup. */
export interface MeasureApi {
  /** Loads what it needs (WASM) and keeps the setup. */
  prepare(setup: SurveySetup): Promise<void>;
  survey(frames: readonly GreyFrame[]): Promise<FrameSurvey[]>;
  /** Sub-pixel centres near the given places, with the ball model (blur) now known. */
  centres(hints: readonly CentreHint[], ball: BallModel): Promise<Outcome<CentreMeasurement>[]>;
}
