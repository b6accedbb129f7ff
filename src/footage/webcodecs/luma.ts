import { ExitframeError } from '../../core/reason';

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
 * Copies luma planes, never by way of red, green and blue. There is no copying of one plane alone, so all are copied,
 * into memory that is used again for the next frame, and the rest is dropped. The caller closes the frame.
 * Throws `undecodable` where a frame's format has no luma plane.
 */
export function lumaCopier(): (frame: VideoFrame) => Promise<Luma> {
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
    const data =
      bitDepth === 8
        ? packed(new Uint8Array(buffer, offset), width, height, stride)
        : packed(new Uint16Array(buffer, offset), width, height, stride / 2);
    spare = buffer;
    return { data, width, height, bitDepth, isLimited: frame.colorSpace.fullRange === false };
  };
}

/** The rows of a plane without what lies between them, in memory of their own. */
function packed<Plane extends Uint8Array | Uint16Array>(
  plane: Plane,
  width: number,
  height: number,
  stride: number,
): Plane {
  const rows = plane.slice(0, width * height) as Plane;
  if (stride === width) return rows;
  for (let y = 0; y < height; y++) {
    rows.set(plane.subarray(y * stride, y * stride + width), y * width);
  }
  return rows;
}
