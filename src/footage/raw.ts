import type { FootageInfo, FrameRange, RawLayout } from '../core/film';
import { formatCount } from '../core/format';
import type { GreyFrame } from '../core/frame';
import { bytesPerSample, fitRaw, frameBytes } from '../core/rawLayout';
import { ExitframeError } from '../core/reason';
import { levelsOf } from './levels';
import { indicesOf } from './range';
import { requireFrames } from './requireFrames';
import { requireSize } from './size';
import type { FootageFile, FrameSource } from './source';
import { unreadable } from './unreadable';
import { chosenFor } from './wording';

/**
 * Headerless grey, read as stated. Throws `impossibleSize`, `rawMisfit` where frames do not fill
 * the file, `singleFrame`; reading it `rawBeyondBits` where a value has more bits than stated, `unreadable`.
 */
export function openRaw(file: FootageFile, layout: RawLayout): FrameSource {
  const { width, height, bits } = layout;
  requireSize(file.name, width, height, bytesPerSample(layout));
  const { count, left } = fitRaw(file.blob.size, layout);
  if (left > 0) {
    throw new ExitframeError(
      'rawMisfit',
      `"${file.name}" does not hold whole frames of ${width} x ${height} with ${bits} bits: ${formatCount(left)} bytes are left over.`,
      'State another size, depth, header or gap between frames.',
      {
        values: {
          name: file.name,
          frame: `${width} x ${height}`,
          bits: String(bits),
          left: formatCount(left),
        },
      },
    );
  }
  requireFrames(file.name, count);
  const info: FootageInfo = {
    name: file.name,
    container: 'raw',
    codec: 'uncompressed grey',
    ...{ width, height, frameCount: count, playbackRate: null, rotation: 0, bitDepth: bits },
    ...{ pixelAspect: 1, hasAudio: false, interlaced: { stated: null, separated: null } },
    levels: levelsOf(bits, false),
    decoder: {
      name: 'exitframe',
      why: chosenFor('raw', 'The file has no header; it is read as stated.'),
    },
  };
  return {
    info,
    timestamps: async () => null,
    frames: (range, signal) => framesOf(file, layout, count, range, signal),
    audio: async () => null,
    close: async () => {},
  };
}

async function* framesOf(
  file: FootageFile,
  layout: RawLayout,
  count: number,
  range: FrameRange,
  signal?: AbortSignal,
): AsyncGenerator<GreyFrame> {
  const { width, height, bits, skip, gap } = layout;
  const length = frameBytes(layout);
  const white = 2 ** bits - 1;
  for (const index of indicesOf(range, count)) {
    signal?.throwIfAborted();
    const start = skip + index * (length + gap);
    const bytes = await bytesOf(file, start, start + length);
    const data = valuesOf(bytes, layout);
    if (bits === 10 || bits === 12) requireBits(file.name, data, index, white);
    yield { index, width, height, data, white };
  }
}

async function bytesOf({ name, blob }: FootageFile, start: number, end: number) {
  try {
    return await blob.slice(start, end).arrayBuffer();
  } catch (error) {
    throw unreadable(name, error);
  }
}

function valuesOf(bytes: ArrayBuffer, { bits, byteOrder }: RawLayout): Uint8Array | Uint16Array {
  if (bits === 8) return new Uint8Array(bytes);
  const values = new Uint16Array(bytes.byteLength / 2);
  const view = new DataView(bytes);
  for (let i = 0; i < values.length; i++) values[i] = view.getUint16(2 * i, byteOrder === 'little');
  return values;
}

/** Values that are too large tell that depth or byte order is stated wrongly. */
function requireBits(
  name: string,
  data: Uint8Array | Uint16Array,
  index: number,
  white: number,
): void {
  let most = 0;
  for (const value of data) most = Math.max(most, value);
  if (most <= white) return;
  throw new ExitframeError(
    'rawBeyondBits',
    `Frame ${index} of "${name}" holds the grey value ${most}; the bits stated hold ${white} at most.`,
    'State more bits, the other byte order, or another size of header or gap.',
    {
      values: {
        name,
        frame: formatCount(index),
        value: formatCount(most),
        white: formatCount(white),
      },
    },
  );
}
