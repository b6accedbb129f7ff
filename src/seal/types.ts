import type { ImagePoint, ImageRect, ImageVector, Pixels } from '../core/units';

/** Where a seal is watched. Everything in pixels of the upright image. */
export interface SealView {
  /** A point on the seal's plane, on the flight line. */
  readonly plane: ImagePoint;
  /** Unit vector out of the tube. */
  readonly axis: ImageVector;
  readonly region: ImageRect;
  /** Half the width watched, across the axis: the clamp ring's opening and a little more. */
  readonly halfAperture: Pixels;
}

/** What one frame shows of the seal. */
export interface SealObservation {
  readonly frame: number;
  /** How far the edge of the film still joined to the seal plane stands out of the plane, and its standard uncertainty. */
  readonly front: Pixels;
  readonly frontU: Pixels;
  /** How far out the outermost change lies, joined to the plane or not. */
  readonly reach: Pixels;
  /** Root mean square departure of the outline from a smooth bulge, px. */
  readonly roughness: Pixels;
  /** Share of the area under the outline that shows no film, 0..1: gaps behind pieces that came off. */
  readonly opening: number;
  /** Number of separate pieces seen in the region. */
  readonly pieces: number;
  /** Area changed against the background, px^2. */
  readonly changedArea: number;
  readonly picture: SealPicture;
}

/**
 * The view straightened: columns run outwards along the axis, rows across it, in square cells. Change against the
 * scene with the seal at rest, grey values.
 */
export interface SealPicture {
  readonly columns: number;
  readonly rows: number;
  /** Side of a cell, px. */
  readonly cell: Pixels;
  /** Row by row; starts at the seal plane. */
  readonly change: Float32Array;
  /** Noise standard deviation of a cell's change. */
  readonly noise: number;
  /** The least change that is taken for anything but noise and coding, grey values. */
  readonly least: number;
}

/** One connected patch of a mask. */
export interface MaskComponent {
  /** Number of pixels set. */
  readonly area: number;
}

/** Splits a mask (non-zero: set; row by row, `width * height`) into its connected patches. */
export type FindComponents = (
  mask: Uint8Array,
  width: number,
  height: number,
) => readonly MaskComponent[];
