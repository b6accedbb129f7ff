import { UPRIGHT } from './orientation';
import { firstDirectory } from './tiff';
import type { Orientation } from './types';

/**
 * How the camera was held, by the notes of a picture (Exif: a directory as in TIFF). A picture whose notes are damaged
 * is still a picture: it is taken as it is coded.
 */
export async function orientationIn(exif: Blob): Promise<Orientation> {
  try {
    return (await firstDirectory(exif)).orientation;
  } catch (error) {
    if (error instanceof RangeError) return UPRIGHT;
    throw error;
  }
}
