import type { ImagePoint, ImageRect, ImageVector, Pixels } from '../core/units';

/** Where a seal is watched. Everything in pixels of the upright image. */
export interface SealView {
  /** A point on the seal's plane, on the flight line. */
  readonly plane: ImagePoint;
  /** Unit vector out of the tube. */
  readonly axis: ImageVector;
  readonly region: ImageRect;
  /** Half the clamp ring's opening, across the axis. */
  readonly halfAperture: Pixels;
}

/** What one frame shows of the seal. */
export interface SealObservation {
  readonly frame: number;
  /** How far the film's outermost edge stands out of its rest position along the axis, and its standard uncertainty. */
  readonly front: Pixels;
  readonly frontU: Pixels;
  /** Root mean square departure of the outline from a smooth bulge, px. */
  readonly roughness: Pixels;
  /** Number of separate pieces seen in the region. */
  readonly pieces: number;
  /** Area changed against the background, px^2. */
  readonly changedArea: number;
}
