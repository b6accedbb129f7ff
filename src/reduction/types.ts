import type { AudioTrack, FootageInfo } from '../core/film';
import type { GreyFrame } from '../core/frame';
import type { Outcome } from '../core/reason';
import type { ImagePoint, ImageRect, ImageVector } from '../core/units';
import type { Shift } from '../image/registration';
import type { SceneFingerprint } from '../image/sceneFingerprint';
import type {
  Background,
  BallModel,
  Candidate,
  CentreMeasurement,
  FrameInspection,
  StreakLine,
} from '../image/types';
import type { SealObservation, SealView } from '../seal/types';
import type { Result } from '../shot/result';
import type { Shot } from '../shot/schema';
import type { SetupScene } from './setupScene';

/** A seal's view, and the scene with it at rest. */
export interface WatchedSeal {
  readonly view: SealView;
  readonly reference: Background;
}

/** What is looked for in every frame of the clip. */
export interface SurveySetup {
  readonly background: Background;
  readonly ball: BallModel;
  /** The muzzle seal; null: none in view. */
  readonly seal: WatchedSeal | null;
  /** The rear seal; null: none is stated. */
  readonly rear: WatchedSeal | null;
  /** Where the launcher's end shows, which may move by itself. */
  readonly launcher: ImageRect;
}

/** What one frame gave. */
export interface FrameSurvey {
  readonly frame: number;
  readonly candidates: readonly Candidate[];
  readonly seal: SealObservation | null;
  readonly rear: SealObservation | null;
  /** Mean grey value of the static part of the frame over that of the background. */
  readonly gain: number;
  /** How far the still scene stands from its usual place, the launcher left out; null: cannot be told. */
  readonly shift: Shift | null;
  /** The same of the launcher's end. */
  readonly launcher: Shift | null;
}

export interface CentreHint {
  readonly frame: GreyFrame;
  readonly at: ImagePoint;
  /** How far the scene stands off in this frame. */
  readonly shift: ImageVector;
  /** The ball as it moves there. */
  readonly ball: BallModel;
}

/** Measures single frames: in this thread, or a pool of workers behind the same three calls. */
export interface FrameMeasurer {
  /** How many calls may usefully be under way at once. */
  readonly lanes: number;
  /** Loads what it needs (WASM) and keeps the setup. */
  prepare(setup: SurveySetup): Promise<void>;
  survey(frames: readonly GreyFrame[]): Promise<FrameSurvey[]>;
  /** Sub-pixel centres near the given places. */
  centres(hints: readonly CentreHint[]): Promise<Outcome<CentreMeasurement>[]>;
  /** One frame's fit laid open. */
  inspect(hint: CentreHint): Promise<FrameInspection>;
}

/** The stages of a reduction, in order. */
export const STAGES = [
  'background',
  'survey',
  'track',
  'centres',
  'check',
  'fit',
  'uncertainty',
] as const;
export type Stage = (typeof STAGES)[number];

/** Told while a reduction runs. */
export type ReductionEvent =
  | {
      readonly kind: 'progress';
      readonly stage: Stage;
      readonly done: number;
      readonly total: number;
    }
  /** The streak line, told once before its rows. */
  | { readonly kind: 'streakLine'; readonly line: StreakLine; readonly frames: number }
  | { readonly kind: 'streakRow'; readonly frame: number; readonly row: Float32Array }
  /** One of those that show the film from end to end (`smallPictures`). */
  | { readonly kind: 'smallPicture'; readonly picture: GreyFrame }
  /** A centre as it is found; the final positions come with the result. */
  | { readonly kind: 'centre'; readonly frame: number; readonly x: number; readonly y: number };

/** What the fit says of the film as a whole, for drawing on it. Arrays run over `times`. */
export interface FitCurve {
  readonly times: Float64Array;
  /** Distance from the muzzle plane along the axis, m, and its standard uncertainty. */
  readonly s: Float64Array;
  readonly sU: Float64Array;
  readonly v: Float64Array;
  readonly vU: Float64Array;
}

/** What the outside air would do to the ball if the tube before it were empty. */
export interface Drive {
  /** N. */
  readonly force: number;
  /** At first, m/s^2, and in standard accelerations of free fall. */
  readonly acceleration: number;
  readonly gravities: number;
}

export interface Reduction {
  readonly result: Result;
  /** A rule of thumb to see the result against; nothing is computed from it. */
  readonly drive: Drive;
  readonly curve: FitCurve | null;
  /** Bulge of the muzzle seal against time, for the plot; px converted to m. */
  readonly seal: {
    readonly times: Float64Array;
    readonly front: Float64Array;
    readonly frontU: Float64Array;
  } | null;
  /** The still scene, to tell in a later shot of this setup whether the camera stood as here. */
  readonly fingerprint: SceneFingerprint;
}

/** What a reduction is given besides the shot. */
export interface ReductionInputs {
  readonly shot: Shot;
  readonly info: FootageInfo;
  readonly timestamps: Float64Array | null;
  readonly footageSha256: string | null;
  readonly audio: AudioTrack | null;
  /** An earlier shot of the same setup, where there is one. */
  readonly setupScene?: SetupScene | null;
}
