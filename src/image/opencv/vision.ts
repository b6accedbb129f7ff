import { type FittedCamera, fitCamera, type TargetView } from './camera';
import { libraryReady } from './library';
import { type Component, components, correlate, type Plane } from './pictures';

/** The operations of OpenCV that the measuring core uses, free of its own types. */
export interface Vision {
  /** Pieces of the non-zero pixels of `mask`, 8-connected, in reading order of their first pixel. */
  components(mask: Uint8Array, width: number, height: number): Component[];
  /**
   * Correlation coefficient (-1..1) of `template` with every place it fits into `image` whole:
   * `(image.width - template.width + 1) x (image.height - template.height + 1)`, row by row; 0 where
   * the image is flat.
   */
  correlate(image: Plane, template: Plane): Plane;
  /** One focal length for both directions, no tangential distortion, no third radial term. */
  fitCamera(views: readonly TargetView[], width: number, height: number): FittedCamera;
}

let loading: Promise<Vision> | null = null;

/** Starts the library once a thread (about a second) and keeps it. */
export function loadVision(): Promise<Vision> {
  loading ??= libraryReady().then(() => ({ components, correlate, fitCamera }));
  return loading;
}
