export type ImageFormat = 'png' | 'bmp' | 'tiff' | 'jpeg';

/** What an image's header says; every image of a sequence must say the same. */
export interface ImageHeader {
  readonly width: number;
  readonly height: number;
  /** Bits a sample. */
  readonly bits: number;
  /** Grey, colour, palette, ... in the format's own number. */
  readonly colour: number;
}
