import { ExitframeError } from '../../core/reason';
import type { SpareMemory } from '../spareMemory';

/** Luma of a decoded frame as coded, not yet turned upright. */
export interface Luma {
  readonly data: Uint8Array | Uint16Array;
  readonly width: number;
  readonly height: number;
  readonly bitDepth: number;
  /** Whether its values are of limited range, as the browser tells or guesses. */
  readonly isLimited: boolean;
}

/** Formats with luma in a plane of its own, first: 8 bits, and little-endian 10 or 12 bits. */
const LUMA_FIRST = /^(?:I4\d\dA?(?:P(10|12))?|NV12)$/;

/**
 * Copies luma planes into spare memory, never by way of red, green and blue. There is no copying of one plane alone, so
 * all are copied, into memory that is used again for the next frame, and the rest is dropped. The caller closes the frame.
 * Throws `undecodable` where a frame's format has no luma plane.
 */
export function lumaCopier(memory: SpareMemory): (frame: VideoFrame) => Promise<Luma> {
  let spare: ArrayBuffer | null = null;
  return async (frame) => {
    const format = LUMA_FIRST.exec(frame.format ?? '');
    const rect = frame.visibleRect; // the coded size is larger by what fills up blocks
    if (format === null || rect === null) {
      throw new ExitframeError(
        'undecodable',
        `The browser's decoder gives frames without a luma plane (${frame.format ?? 'no known format'}).`,
        'Use another browser.',
        { values: { form: 'noLuma', format: frame.format ?? '' } },
      );
    }
    const { width, height } = rect;
    const bitDepth = Number(format[1] ?? 8);
    const size = frame.allocationSize({ rect });
    const buffer = spare?.byteLength === size ? spare : new ArrayBuffer(size);
    spare = null; // the next frame may come before this one is copied
    const [{ offset, stride } = { offset: 0, stride: width }] = await frame.copyTo(buffer, {
      rect,
    });
    const Samples = bitDepth === 8 ? Uint8Array : Uint16Array;
    const { BYTES_PER_ELEMENT } = Samples;
    const data = new Samples(memory.take(width * height * BYTES_PER_ELEMENT));
    packRows(new Samples(buffer, offset), width, stride / BYTES_PER_ELEMENT, data);
    spare = buffer;
    return { data, width, height, bitDepth, isLimited: frame.colorSpace.fullRange === false };
  };
}

/** Puts the rows of a plane into `rows`, without what lies between them. */
function packRows(
  plane: Uint8Array | Uint16Array,
  width: number,
  stride: number,
  rows: Uint8Array | Uint16Array,
): void {
  if (stride === width) {
    rows.set(plane.subarray(0, rows.length));
    return;
  }
  for (let from = 0, to = 0; to < rows.length; from += stride, to += width) {
    rows.set(plane.subarray(from, from + width), to);
  }
}
