import { headersOf, lettersAt } from '../bytes';
import { orientationIn } from './exif';
import { UPRIGHT } from './orientation';
import type { ImageHeader } from './types';

/** Start-of-frame markers: all of 0xC0 to 0xCF but the tables and arithmetic-coding settings among them. */
const isFrame = (marker: number) =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

const EXIF_MARKER = 0xe1;
/** Marker, length and 'Exif' with two zeros; a directory as in TIFF follows. */
const EXIF_HEAD = 10;
/** Segments and fill bytes before the frame header; a camera writes some tens. */
const MOST_SEGMENTS = 10_000;

/** Walks the segments to the frame header (ITU-T T.81, B.2.2). */
export async function jpegHeader(blob: Blob): Promise<ImageHeader | null> {
  const read = headersOf(blob);
  let orientation = UPRIGHT;
  for (let at = 2, walked = 0; at < blob.size && walked < MOST_SEGMENTS; walked++) {
    const segment = await read(at, EXIF_HEAD);
    if (segment.getUint8(0) !== 0xff) return null;
    const marker = segment.getUint8(1);
    if (marker === 0xff) {
      at += 1; // fill byte
      continue;
    }
    if (isFrame(marker)) {
      return {
        bits: segment.getUint8(4),
        height: segment.getUint16(5),
        width: segment.getUint16(7),
        colour: segment.getUint8(9),
        orientation,
      };
    }
    const end = at + 2 + segment.getUint16(2);
    if (marker === EXIF_MARKER && lettersAt(segment, 4) === 'Exif') {
      orientation = await orientationIn(blob.slice(at + EXIF_HEAD, end));
    }
    at = end;
  }
  return null;
}
