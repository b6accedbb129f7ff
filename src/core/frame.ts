/**
 * One frame of grey values (luma as coded, never rescaled) of the upright image, row by row.
 * `data.length === width * height`; 16-bit footage stays 16-bit.
 */
export interface GreyFrame {
  /** Display order, from 0. */
  readonly index: number;
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array | Uint16Array;
  /** Largest grey value the format can hold: 255, 1023, 4095, 65535. */
  readonly white: number;
  /** Grey value from which on the light is lost, where that is below `white`: limited range. */
  readonly clipsAt?: number;
}
