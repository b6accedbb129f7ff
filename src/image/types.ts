import type { RadialLens } from '../core/lens';
import type { Outcome } from '../core/reason';
import type { ImagePoint, ImageRect, ImageVector, Pixels } from '../core/units';

/**
 * The static scene and the camera's noise, estimated from the clip itself.
 * Arrays are row by row, `width * height`, in grey values of the footage.
 */
export interface Background {
  readonly width: number;
  readonly height: number;
  /** Grey value of the scene without ball or fragments. */
  readonly level: Float32Array;
  /** Frames that `level` is the mean of, and whose noise it has therefore; left out: so many that it has none. */
  readonly averaged?: number | undefined;
  readonly white: number;
  /** Noise variance at grey value g: `readVariance + gain * g` (EMVA 1288 linear camera model), grey^2. */
  readonly noise: { readonly readVariance: number; readonly gain: number };
  /** 1 for pixels that tell nothing (dead, stuck, hot, flickering by themselves); left out: none. */
  readonly faulty?: Uint8Array;
}

/** How the ball's image looks, as a fit found it. */
export interface BallLook {
  /** Standard deviation of the blur of its edge, pixel and optics together, px. */
  readonly sigma: Pixels;
  /** Motion blur as a multiple of that expected. */
  readonly stretch: number;
  /** Its brightness over the disc, in the terms of the disc model, for a mean brightness of 1. */
  readonly shade: readonly number[];
}

/** What is known of the ball before a frame is looked at. */
export interface BallModel {
  readonly radius: Pixels;
  /** Standard uncertainty of `radius`; 3 % of it unless given. */
  readonly radiusU?: Pixels;
  /** Its look in frames that show it well, with standard uncertainties from frame to frame; left out: not known yet. */
  readonly look?: BallLook & {
    readonly sigmaU: Pixels;
    readonly stretchU: number;
    /** Variance of the fits' residuals, neighbours that err alike included, over that of the noise. */
    readonly inflation: number;
    /** What the model of the ball leaves out and all frames share: variances of x and y, px^2. */
    readonly unmodelled: readonly [x: number, y: number];
  };
  /** Mean grey value of its disc in the background's light, and how far that is from frame to frame; left out: not known yet. */
  readonly brightness?: { readonly value: number; readonly u: number };
  /**
   * Displacement during the exposure, [0, 0] where unknown or none; in the plane it moves in where `camera` states
   * one (see `blurAt`), else in the image.
   */
  readonly blur: ImageVector;
  /**
   * Rolling shutter: direction of the readout (unit vector) and how far the ball moves, in pixels,
   * while one line is read. Stretches and shears its image; left out for a global shutter.
   */
  readonly readout?: { readonly direction: ImageVector; readonly motionPerLine: ImageVector };
  /**
   * The camera, in image pixels freed of distortion and made square: where its axis meets the image, and its
   * focal length. `plane` is the one the ball's centre moves in: points with `normal . X = offset` in the
   * camera's axes (x right, y down, z away), in the pixels that `radius` is in; left out: looked at squarely
   * from `distance`. A ball's image is drawn out away from the camera's axis and its middle is not the image
   * of the ball's centre; left out: neglected.
   */
  readonly camera?: {
    readonly centre: ImagePoint;
    readonly distance: Pixels;
    readonly plane?: {
      readonly normal: readonly [x: number, y: number, z: number];
      readonly offset: Pixels;
      /** Direction in which the blur's x is told, unit vector; its y is the normal's cross product with it. */
      readonly across: readonly [x: number, y: number, z: number];
    };
  };
  /** Distortion of the image made square; left out: none. Counts only where a camera is given. */
  readonly lens?: RadialLens;
  /** Pixel width over pixel height; 1 unless given. Counts only where a camera is given. */
  readonly pixelAspect?: number;
  /** Where it may be. */
  readonly region: ImageRect;
}

/** A place in one frame that may be the ball. */
export interface Candidate {
  readonly x: Pixels;
  readonly y: Pixels;
  /** 0..1, how well the place looks like a disc of the expected size. */
  readonly score: number;
  /** Rough visible share of the disc, 0..1. */
  readonly visible: number;
  /** Its edge as the full picture shows it; left out: too little of one. */
  readonly rim?: Rim;
}

/** A candidate's edge, followed on rays from its middle. */
export interface Rim {
  /** Radius of the circle through most of it as a multiple of the ball's. */
  readonly size: number;
  /** Share of the rays whose edge lies on that circle, 0..1. */
  readonly round: number;
  /** Share of its step that the edge makes within a tenth of the ball's radius each way, where it is sharpest, 0..1. */
  readonly sharp: number;
  /** Place minus background, grey values. */
  readonly contrast: number;
}

/** A sub-pixel centre with its covariance. */
export interface CentreMeasurement {
  readonly x: Pixels;
  readonly y: Pixels;
  /** px^2 */
  readonly varX: number;
  readonly varY: number;
  readonly covXY: number;
  /** Fitted radius and its standard uncertainty. */
  readonly radius: { readonly value: Pixels; readonly u: Pixels };
  /** Share of the outline that was seen, 0..1. */
  readonly visible: number;
  /** Ball minus background, grey values. */
  readonly contrast: number;
  /** Mean grey value of its disc in the background's light; left out for a centre placed by hand. */
  readonly brightness?: number;
  /** Share of the ball's pixels at the format's largest value, 0..1. */
  readonly saturated: number;
  /** Left out for a centre placed by hand. */
  readonly look?: BallLook;
  /**
   * Length of the motion blur as a multiple of that expected, as this frame's pixels alone have it, and
   * its standard uncertainty (what was assumed beforehand taken out again); left out: not told.
   */
  readonly blur?: { readonly stretch: number; readonly u: number };
  /**
   * What the fitted ball leaves over of its surface, for telling a mark on it: mean residual, grey
   * values, on rings of `radii` (share of the ball's radius) times `angles` directions (2 pi k / angles
   * from x towards y), radius by radius, and its variance; left out: not asked for.
   */
  readonly surface?: Surface;
  /** What the fit says of the noise and of its own model; left out for a centre placed by hand. */
  readonly evidence?: FitEvidence;
}

/** How well one fit's model and noise held, to be pooled over frames. */
export interface FitEvidence {
  /** What the residuals, counted in waves around the outline, move the middle by, px: x of all waves, then y. */
  readonly pull: Float32Array;
  /** Mean square that independent noise of the stated variance would give each, px^2. */
  readonly expected: Float32Array;
  /** Squares of the one over the other. */
  readonly inflation: number;
  /** The same of single pixels. */
  readonly white: number;
  /** Part of the variances of x and y that is due to the shading being unknown, px^2. */
  readonly byShade: readonly [x: number, y: number];
  readonly sigmaU: Pixels;
  readonly stretchU: number;
  /**
   * What the stated covariance has of other frames: factor on the noise's, and the part of the variances
   * of x and y that all frames share, px^2; left out: it is this frame's own.
   */
  readonly learnt?: {
    readonly inflation: number;
    readonly unmodelled: readonly [x: number, y: number];
  };
}

/** A ball's surface unrolled around its centre. */
export interface Surface {
  readonly radii: readonly number[];
  readonly angles: number;
  readonly residual: Float32Array;
  /** Variance of `residual`; infinite where nothing was seen. */
  readonly variance: Float32Array;
}

/** One frame's fit laid open, for a person to judge. Planes are of `rect`, row by row. */
export interface FrameInspection {
  readonly frame: number;
  readonly rect: ImageRect;
  /** What was measured, or why it was refused. */
  readonly measurement: Outcome<CentreMeasurement>;
  /** The fitted picture, grey values; null where no fit came about. */
  readonly model: Float32Array | null;
  /** Picture minus model in standard deviations of the noise. */
  readonly residual: Float32Array | null;
  /** Weight of each pixel in the fit, 0..1; 0 for those masked or thrown out, -1 beyond the reach of the fit. */
  readonly weight: Float32Array | null;
  /** Outline of the fitted ball, closed, and for each of its points whether it was seen there. */
  readonly outline: readonly { readonly at: ImagePoint; readonly seen: boolean }[];
}

/** The straight line along which the streak image is read, and the band averaged across it. */
export interface StreakLine {
  readonly origin: ImagePoint;
  /** Unit vector. */
  readonly axis: ImageVector;
  /** First sample and number of samples along the axis, 1 px apart, counted from `origin`. */
  readonly from: Pixels;
  readonly length: number;
  /** Half the band's width across the axis. */
  readonly halfWidth: Pixels;
}
