import { viewOf } from '../bytes';
import { UPRIGHT } from './orientation';
import type { ImageHeader } from './types';

/** Size and bits a pixel in the header after the file's own 14 bytes; 12 bytes long, it is the oldest kind. */
export async function bmpHeader(blob: Blob): Promise<ImageHeader> {
  const view = await viewOf(blob, 14, 16);
  const oldest = view.getUint32(0, true) === 12;
  const bits = view.getUint16(oldest ? 10 : 14, true);
  return {
    width: oldest ? view.getUint16(4, true) : view.getInt32(4, true),
    height: oldest ? view.getUint16(6, true) : Math.abs(view.getInt32(8, true)), // negative: top first
    bits: Math.min(bits, 8),
    colour: bits,
    orientation: UPRIGHT,
  };
}
