import type { Estimate, Quantity, Reported } from '../core/estimate';
import type { Reason, ReasonValues } from '../core/reason';
import type { Shot } from './schema';

export const RESULT_FORMAT = 'exitframe-result';
export const RESULT_VERSION = 4;

/** One frame's ball centre. */
export interface Position {
  readonly frame: number;
  /** Middle of the exposure, at the line the centre is on; s after the zero of the clock. */
  readonly time: number;
  /** Centre, upright pixels; null where none was found. */
  readonly x: number | null;
  readonly y: number | null;
  readonly ux: number | null;
  readonly uy: number | null;
  /** Covariance of x and y, px^2. */
  readonly cov: number | null;
  /** Distance along the flight axis from the muzzle plane, m, and its own standard uncertainty (shared scale left out). */
  readonly s: number | null;
  readonly us: number | null;
  /** Visible share of the outline, 0..1. */
  readonly visible: number;
  /** How far the still scene had moved in this frame from its usual place, px; taken off before `s`. */
  readonly shift: readonly [number, number];
  readonly used: boolean;
  readonly manual: boolean;
  /** Why it was not used; null where it was. */
  readonly why: Reason | null;
}

/** What is known of an input, as a Monte Carlo trial draws it (JCGM 101:2008, 6.4). */
export type Distribution = 'normal' | 'student' | 'rectangular' | 'triangular' | 'discrete';

/** One input of an uncertainty budget (JCGM 100:2008, clause 5 and Annex H.1 layout). */
export interface BudgetEntry {
  readonly source: string;
  readonly type: 'A' | 'B';
  readonly distribution: Distribution;
  /** Standard uncertainty of the input, in `unit`. */
  readonly u: number;
  readonly unit: string;
  /** Change of the result per change of the input. */
  readonly sensitivity: number;
  /** |sensitivity| * u, in the result's unit. */
  readonly contribution: number;
  /** null: unlimited. */
  readonly dof: number | null;
}

export interface FitCheck {
  readonly code: string;
  readonly passed: boolean;
  /** One plain sentence. */
  readonly message: string;
  /** What to do about a check that failed; null where there is nothing to do. */
  readonly remedy: string | null;
  /** What stands in it, for those who say it in another language; `form` tells the sentences of one code apart. */
  readonly values?: ReasonValues;
}

export interface FitParameter extends Estimate {
  readonly name: string;
  readonly unit: string;
}

export interface ComparedModel {
  readonly model: string;
  readonly chiSquare: number;
  readonly dof: number;
  /** Akaike's criterion: AIC with the uncertainties as stated, AICc where the scatter was fitted; all zones together. */
  readonly aicc: number;
  /** Akaike weight among the models compared, 0..1. */
  readonly weight: number;
  /** How many times better the best of all models compared is supported than this one; null: beyond 1e6. */
  readonly evidenceRatio: number | null;
  readonly exitVelocity: number;
  readonly u: number;
}

export interface FitReport {
  readonly model: string;
  readonly parameters: readonly FitParameter[];
  readonly covariance: readonly (readonly number[])[];
  readonly chiSquare: number;
  readonly dof: number;
  /** m, in the order of the used positions. */
  readonly residuals: readonly number[];
  /** How many used positions count for less than in full, their robust weight being under one half; 0 where none was asked for. */
  readonly downWeighted: number;
  readonly compared: readonly ComparedModel[];
  readonly checks: readonly FitCheck[];
}

export interface MonteCarloReport {
  readonly trials: number;
  readonly value: number;
  readonly u: number;
  readonly interval: readonly [number, number];
  /** Whether it validates the budget's interval (JCGM 101:2008, clause 8). */
  readonly agrees: boolean;
}

export interface Warning extends Reason {
  readonly remedy: string;
}

/** How probable each moment is, as a curve: `density` (1/s) at `times` (s after the zero of the clock), area 1. */
export interface Posterior {
  readonly times: readonly number[];
  readonly density: readonly number[];
}

export type SealBurst =
  | (Quantity & {
      readonly bulgeOnset: Reported;
      /** Last frame with the seal whole and first with it open. */
      readonly between: readonly [number, number];
      readonly posterior: Posterior;
    })
  | {
      readonly unavailable: Reason;
      /** Moments between which the seal must have opened, s, as far as the film tells; null: no bound that side. */
      readonly bounds: readonly [earliest: number | null, latest: number | null];
    };

/** What else is read off the flight. */
export interface FlightReport {
  /** Direction of travel at the exit above the image's rows, rad; positive: upwards. */
  readonly elevation: Reported;
  /** J */
  readonly kineticEnergy: Reported;
  /** kg m/s */
  readonly momentum: Reported;
  /** Mean acceleration over the part of the bore that is seen, m/s^2. */
  readonly boreAcceleration: Reported;
  /** Deceleration by the air right after the exit, muzzle zone left out, m/s^2; and the drag coefficient it implies. */
  readonly deceleration: Reported;
  readonly dragCoefficient: Reported;
  /** Null: the shot states no target. */
  readonly target: TargetReport | null;
}

export interface TargetReport {
  /** The centre reaches the stated distance, s; and its speed there, m/s, before and after what stands there. */
  readonly time: Reported;
  readonly speedBefore: Reported;
  readonly speedAfter: Reported;
  /** Kinetic energy before minus after, J. */
  readonly energyGivenUp: Reported;
}

/** What the sound track tells, corrected for the way of the sound to the microphone; times on the film's clock, s. */
export interface SoundReport {
  readonly burst: Reported;
  /** That minus the burst seen on the film, s, and whether the difference is explained by its uncertainty. */
  readonly minusFilm: Reported;
  readonly agrees: boolean | null;
  /** Impact on the backstop, and the mean speed from the muzzle to there, m/s. */
  readonly impact: Reported;
  readonly meanSpeed: Reported;
}

/** One input of the budget and what knowing it better would bring, largest first. */
export interface Advice {
  readonly source: string;
  /** Its share of the variance, 0..1. */
  readonly share: number;
  /** One plain sentence: what would help. */
  readonly message: string;
}

/** The speed told from the blur alone: length of the streak over the exposure. */
export interface StreakReport {
  /** Mean speed along the axis over the frames used, m/s. */
  readonly speed: Quantity;
  /** That minus the fitted speed over the same frames, m/s; the scale they share cancels as far as it does. */
  readonly minusFit: Quantity;
  /** Whether the difference is explained by its uncertainty. */
  readonly agrees: boolean;
  /** Frames used. */
  readonly frames: number;
}

/** Shaking of the camera or the launcher, told from the still scene. */
export interface ShakeReport {
  /** Root-mean-square distance of the scene from its usual place, px. */
  readonly rms: number;
  /** Largest, px. */
  readonly most: number;
  /** Standard uncertainty of one frame's shift, px each way. */
  readonly u: number;
}

/** What a result was made from. */
export interface ResultInputs {
  /** Of program, shot, footage and the scene it was held against, hexadecimal: where it is equal the result is. */
  readonly sha256: string;
  readonly shot: Shot;
  /** Name of the shot of the same setup whose still scene this one's was held against; null: of none. */
  readonly heldAgainst: string | null;
}

export interface Result {
  readonly format: typeof RESULT_FORMAT;
  readonly version: typeof RESULT_VERSION;
  readonly shot: string;
  readonly software: string;
  readonly footageSha256: string | null;
  /** Null: made on the page, or before results held them. */
  readonly inputs: ResultInputs | null;
  /** m/s along the flight axis, at the muzzle plane. */
  readonly exitVelocity: Reported;
  /** s after the zero of the clock. */
  readonly exitTime: Reported;
  readonly sealBurst: SealBurst;
  /** The rear seal's: the puncture that starts the shot. Null: none is stated. */
  readonly rearBurst: SealBurst | null;
  /** Exit time minus burst time, s; positive: the seal went first. */
  readonly lead: Reported;
  /** The moment the ball's leading point reaches the seal plane, s, and that minus the burst. */
  readonly contact: Reported;
  readonly contactLead: Reported;
  /** Correlation coefficient of burst and exit times; null where either is missing. */
  readonly burstExitCorrelation: number | null;
  readonly positions: readonly Position[];
  readonly fit: FitReport | { readonly unavailable: Reason };
  readonly budget: {
    readonly exitVelocity: readonly BudgetEntry[];
    readonly sealBurst: readonly BudgetEntry[];
    /** What would help the exit velocity most. */
    readonly advice: readonly Advice[];
  };
  readonly monteCarlo: MonteCarloReport | { readonly unavailable: Reason };
  /** Metres per pixel on the flight line, and the unit flight axis in the image. */
  readonly scale: Estimate;
  readonly axis: readonly [number, number];
  /** The speed told from the motion blur; the reason where there is too little of it. */
  readonly streak: StreakReport | { readonly unavailable: Reason };
  readonly flight: FlightReport;
  /** Null: the shot states no sound. */
  readonly sound: SoundReport | { readonly unavailable: Reason } | null;
  /** Rotation in the image plane, rad/s, positive from x towards y (clockwise as seen); needs a mark on the ball. */
  readonly spin: Reported;
  /** First frame in which the ball is no longer whole; later frames are not used. Null: it stays whole. */
  readonly breakUp: { readonly frame: number; readonly reason: Reason } | null;
  /** Other things that moved like a ball and were judged not to be it. */
  readonly rivals: readonly { readonly frames: number; readonly reason: Reason }[];
  /** Null: the scene holds too little detail to tell. */
  readonly shake: ShakeReport | null;
  readonly warnings: readonly Warning[];
}
