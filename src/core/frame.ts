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
  /** Of a field of interlaced film: the lines that were filmed. Those between are filled in and tell nothing new. */
  readonly filmed?: FilmedLines;
}

/** The same frame in memory of its own. */
export const copyOf = (frame: GreyFrame): GreyFrame => ({ ...frame, data: frame.data.slice() });

/** Every other line of an upright picture, from the first on. */
export interface FilmedLines {
  readonly lines: 'rows' | 'columns';
  readonly first: 0 | 1;
}

/** Whether a pixel was filmed, and not filled in from those beside it. */
export const isFilmed = ({ filmed }: GreyFrame, x: number, y: number): boolean =>
  filmed === undefined || ((filmed.lines === 'rows' ? y : x) - filmed.first) % 2 === 0;
