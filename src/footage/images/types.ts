import type { Rotation } from '../rotate';

export type ImageFormat = 'png' | 'bmp' | 'tiff' | 'jpeg';

/** How coded pixels become the upright image: mirrored left to right first, then turned clockwise. */
export interface Orientation {
  readonly mirrored: boolean;
  readonly rotation: Rotation;
}

/** What an image's header says; every image of a sequence must say the same. */
export interface ImageHeader {
  /** As coded. */
  readonly width: number;
  readonly height: number;
  /** Bits a sample. */
  readonly bits: number;
  /** Grey, colour, palette, ... in the format's own number. */
  readonly colour: number;
  readonly orientation: Orientation;
}
