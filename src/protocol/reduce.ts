import type { AudioTrack, FootageInfo } from '../footage/source';
import type { StreakLine } from '../image/types';
import type { Position, Result } from '../shot/result';
import type { Shot } from '../shot/schema';

/** The stages of a reduction, in order. */
export const STAGES = ['background', 'survey', 'track', 'centres', 'fit', 'uncertainty'] as const;
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
  | { readonly kind: 'position'; readonly position: Position };

/** What the fit says of the film as a whole, for drawing on it. Arrays run over `times`. */
export interface FitCurve {
  readonly times: Float64Array;
  /** Distance from the muzzle plane along the axis, m, and its standard uncertainty. */
  readonly s: Float64Array;
  readonly sU: Float64Array;
  readonly v: Float64Array;
  readonly vU: Float64Array;
}

export interface Reduction {
  readonly result: Result;
  readonly curve: FitCurve | null;
  /** Bulge of the muzzle seal against time, for the plot; px converted to m. */
  readonly seal: {
    readonly times: Float64Array;
    readonly front: Float64Array;
    readonly frontU: Float64Array;
  } | null;
}

/** What a reduction is given besides the shot. */
export interface ReductionInputs {
  readonly shot: Shot;
  readonly info: FootageInfo;
  readonly timestamps: Float64Array | null;
  readonly footageSha256: string | null;
  readonly audio: AudioTrack | null;
}

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
