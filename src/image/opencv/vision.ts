import { ExitframeError, reasonOf } from '../../core/reason';
import { requireWebAssembly } from '../../core/webAssembly';
import type { FittedCamera, TargetView } from './camera';
import { visionFailed } from './failures';
import type { Component, Plane } from './pictures';

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

/**
 * Fetches and starts the library (8 MB) once a thread, when it is first asked for, and keeps it. Throws
 * `webAssemblyRefused`, `visionMissing` where it cannot be fetched, or `visionFailed`; after these two only another thread
 * can start it.
 */
export function loadVision(): Promise<Vision> {
  loading ??= load().catch((error: unknown) => {
    loading = null;
    throw error;
  });
  return loading;
}

async function load(): Promise<Vision> {
  requireWebAssembly();
  try {
    const [{ libraryReady }, { components, correlate }, { fitCamera }] = await Promise.all([
      import('./library'),
      import('./pictures'),
      import('./camera'),
    ]);
    await libraryReady();
    return { components, correlate, fitCamera };
  } catch (error) {
    throw notStarted(error);
  }
}

/** A file that does not come is a `TypeError` (HTML, import of module scripts); anything else the library threw. */
function notStarted(error: unknown): ExitframeError {
  const why = reasonOf(error).message;
  if (error instanceof TypeError) {
    return new ExitframeError(
      'visionMissing',
      `The image library OpenCV could not be fetched: ${why}.`,
      'Check that network and server are there, then measure again; inputs and result are kept.',
      { cause: error, values: { why } },
    );
  }
  return visionFailed(why, error);
}
