import { headersOf, lettersAt } from '../bytes';
import { orientationIn } from './exif';
import { UPRIGHT } from './orientation';
import type { ImageHeader, Orientation } from './types';

/** The signature, before the first chunk. */
const SIGNATURE = 8;
/** Length and name before a chunk's data, a checksum after them. */
const CHUNK_HEAD = 8;
const CHECKSUM = 4;
/** Encoders split a picture into some hundreds of chunks. */
const MOST_CHUNKS = 100_000;

type Read = ReturnType<typeof headersOf>;

/** IHDR is the first chunk: width, height, bits, colour type (ISO/IEC 15948, 11.2.2). */
export async function pngHeader(blob: Blob): Promise<ImageHeader> {
  const read = headersOf(blob);
  const view = await read(SIGNATURE + CHUNK_HEAD, 10);
  return {
    width: view.getUint32(0),
    height: view.getUint32(4),
    bits: view.getUint8(8),
    colour: view.getUint8(9),
    orientation: await notedOrientation(blob, read),
  };
}

/**
 * Exif notes are a chunk of their own (eXIf), before the pixels or after them (extensions to PNG 1.2, version 1.5.0,
 * 3.7; from memory). A file that breaks off on the way there says nothing.
 */
async function notedOrientation(blob: Blob, read: Read): Promise<Orientation> {
  let at = SIGNATURE;
  for (let walked = 0; at + CHUNK_HEAD <= blob.size && walked < MOST_CHUNKS; walked++) {
    const head = await read(at, CHUNK_HEAD);
    const start = at + CHUNK_HEAD;
    const end = start + head.getUint32(0);
    if (lettersAt(head, 4) === 'eXIf') return orientationIn(blob.slice(start, end));
    at = end + CHECKSUM;
  }
  return UPRIGHT;
}
