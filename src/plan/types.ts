import type { Estimate } from '../core/estimate';
import type { Metres, Pixels, Seconds } from '../core/units';
import type { Readout, Shot } from '../shot/schema';

/** What a person means to film: the ball flies to the right along the picture's middle row. SI, image lengths in pixels. */
export interface Plan {
  readonly name: string;
  /** Exit speed to be expected, m/s; its uncertainty widens what is checked, not the budget. */
  readonly speed: Estimate;
  readonly ball: Shot['ball'];
  readonly air: Shot['air'];
  readonly camera: PlannedCamera;
  readonly view: PlannedView;
  readonly scale: PlannedScale;
  /** Standard uncertainty with which the muzzle plane will be marked. */
  readonly muzzleU: Pixels;
  readonly picture: PlannedPicture;
  readonly coverage: number;
}

export interface PlannedCamera {
  readonly width: Pixels;
  readonly height: Pixels;
  /** Frames/s. */
  readonly rate: Estimate;
  readonly exposure: Estimate;
  readonly readout: Readout;
}

export interface PlannedView {
  /** Field of view along the flight, in its plane. */
  readonly across: Metres;
  /** Of it, what lies before the muzzle plane. */
  readonly beforeMuzzle: Metres;
}

/** One known length lying below the flight, marked at both ends. */
export interface PlannedScale {
  readonly length: Estimate;
  readonly endpointU: Pixels;
  /** How much farther from the camera than the flight it lies, m. */
  readonly depthOffset: Estimate;
  /** Lens to flight line; null: not going to be measured. */
  readonly cameraDistance: Estimate | null;
}

export interface PlannedPicture {
  /** Blur of an edge by the optics, standard deviation, px. */
  readonly softness: Pixels;
  /** Whether the film is kept with loss (H.264 and its like). */
  readonly coded: boolean;
  readonly light: Light;
}

/** How the ball stands out in a picture taken already, and what the plan changes. */
export type Light = {
  /** Exposure of the picture that it was read off. */
  readonly exposure: Seconds;
  /** How many times that picture's light the plan has. */
  readonly factor: number;
} & (
  | {
      readonly kind: 'contrast';
      /** Ball minus background over the standard deviation of a pixel. */
      readonly contrastToNoise: number;
    }
  | {
      readonly kind: 'sensor';
      /** Electrons a pixel holds at white. */
      readonly fullWell: number;
      /** Standard deviation with the lens covered, electrons. */
      readonly readNoise: number;
      /** Grey of ball and background as shares of white. */
      readonly ball: number;
      readonly background: number;
      readonly bitDepth: number;
    }
);

/** What a budget's lines come from. */
export type TermName = 'fit' | 'motion' | 'scale' | 'clock' | 'muzzle' | 'ballAndAir';

export interface Term {
  readonly name: TermName;
  /** Its part of the speed's standard uncertainty, m/s. */
  readonly u: number;
  /** Its part of the variance, 0..1. */
  readonly share: number;
}
