import { viewOf } from '../bytes';
import { UPRIGHT } from './orientation';
import type { ImageHeader } from './types';

/** IHDR is the first chunk: width, height, bits, colour type (ISO/IEC 15948, 11.2.2). */
export async function pngHeader(blob: Blob): Promise<ImageHeader> {
  const view = await viewOf(blob, 16, 10);
  return {
    width: view.getUint32(0),
    height: view.getUint32(4),
    bits: view.getUint8(8),
    colour: view.getUint8(9),
    orientation: UPRIGHT,
  };
}
