import { viewOf } from '../bytes';
import type { ImageHeader } from './types';

/** Start-of-frame markers: all of 0xC0 to 0xCF but the tables and arithmetic-coding settings among them. */
const isFrame = (marker: number) =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

/** Walks the segments to the frame header (ITU-T T.81, B.2.2). */
export async function jpegHeader(blob: Blob): Promise<ImageHeader | null> {
  for (let at = 2; at < blob.size; ) {
    const segment = await viewOf(blob, at, 10);
    if (segment.getUint8(0) !== 0xff) return null;
    const marker = segment.getUint8(1);
    if (marker === 0xff) {
      at += 1; // fill byte
    } else if (isFrame(marker)) {
      return {
        bits: segment.getUint8(4),
        height: segment.getUint16(5),
        width: segment.getUint16(7),
        colour: segment.getUint8(9),
      };
    } else {
      at += 2 + segment.getUint16(2);
    }
  }
  return null;
}
