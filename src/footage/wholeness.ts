import { formatCount } from '../core/format';
import { ExitframeError } from '../core/reason';
import { headersOf, lettersAt, viewOf } from './bytes';
import type { FootageFile } from './source';

/**
 * Checks that a film's file is as long as its own outermost headers say, by walking them without
 * reading what they hold. Formats it does not know pass. Throws `truncated`, `tooManyParts`.
 *
 * Layouts: ISO/IEC 14496-12, 4.2 (boxes); RFC 8794 (EBML); the RIFF specification of 1991. From memory.
 */
export async function requireWhole(file: FootageFile): Promise<void> {
  const head = await viewOf(file.blob, 0, 16);
  if (head.byteLength < 16) return;
  if (['ftyp', 'moov', 'mdat', 'wide', 'free', 'skip'].includes(lettersAt(head, 4))) {
    return requireWholeBoxes(file);
  }
  if (lettersAt(head, 0) === 'RIFF') return requireWholeRiff(file);
  if (head.getUint32(0) === EBML_HEADER) return requireWholeEbml(file);
}

/** Far more than a film has that is written piece by piece, as browsers and phones do. */
const MOST_PARTS = 100_000;

async function requireWholeBoxes(file: FootageFile): Promise<void> {
  const { size } = file.blob;
  const read = headersOf(file.blob);
  let indexed = false;
  for (let at = 0, parts = 0; at + 8 <= size; parts++) {
    if (parts === MOST_PARTS) throw tooManyParts(file);
    const box = await read(at, 16);
    const type = lettersAt(box, 4);
    indexed ||= type === 'moov';
    const short = box.getUint32(0);
    // 0: to the end of the file; 1: a long size follows.
    const long = short === 1 && box.byteLength === 16 ? Number(box.getBigUint64(8)) : short;
    const length = short === 0 ? size - at : long;
    if (length < 8) return; // no box: whatever follows is not for us to judge
    if (at + length > size && type === 'moov') throw withoutIndex(file);
    if (at + length > size && indexed) throw tooShort(file, at + length);
    at += length;
  }
  if (!indexed) throw withoutIndex(file);
}

/** Chunks follow one another at even places; a film of more than 1 GB has several RIFFs. */
async function requireWholeRiff(file: FootageFile): Promise<void> {
  const { size } = file.blob;
  const read = headersOf(file.blob);
  for (let at = 0, parts = 0; at + 8 <= size; parts++) {
    if (parts === MOST_PARTS) throw tooManyParts(file);
    const chunk = await read(at, 8);
    if (lettersAt(chunk, 0) !== 'RIFF') return;
    const length = chunk.getUint32(4, true);
    if (length === 0) return; // some cameras never fill it in
    if (at + 8 + length > size) throw tooShort(file, at + 8 + length);
    at += 8 + length + (length % 2);
  }
}

const EBML_HEADER = 0x1a45dfa3;
const SEGMENT = 0x18538067;

async function requireWholeEbml(file: FootageFile): Promise<void> {
  const head = await viewOf(file.blob, 4, 8);
  const header = sizeAt(head, 0);
  if (header.value === null) return;
  const at = 4 + header.length + header.value;
  const segment = await viewOf(file.blob, at, 12);
  if (segment.byteLength < 12 || segment.getUint32(0) !== SEGMENT) return;
  const { length, value } = sizeAt(segment, 4);
  if (value !== null && at + 4 + length + value > file.blob.size) {
    throw tooShort(file, at + 4 + length + value);
  }
}

/** A number whose leading zero bits tell its length in bytes; all ones: unknown. */
function sizeAt(view: DataView, offset: number): { length: number; value: number | null } {
  const length = Math.clz32(view.getUint8(offset)) - 23;
  if (length > 8) return { length, value: null };
  let value = BigInt(view.getUint8(offset) & (0xff >> length));
  for (let i = 1; i < length; i++) value = value * 256n + BigInt(view.getUint8(offset + i));
  const unknown = value === 2n ** BigInt(7 * length) - 1n;
  return { length, value: unknown ? null : Number(value) };
}

const tooShort = ({ name, blob }: FootageFile, stated: number) =>
  new ExitframeError(
    'truncated',
    `"${name}" is cut off: it should have ${stated} bytes and has ${blob.size}.`,
    'Copy the clip from the camera again.',
    { values: { form: 'bytes', name, stated, there: blob.size } },
  );

const tooManyParts = ({ name }: FootageFile) =>
  new ExitframeError(
    'tooManyParts',
    `"${name}" is damaged: it is made of more than ${formatCount(MOST_PARTS)} parts.`,
    'Copy the clip from the camera again.',
    { values: { name, most: formatCount(MOST_PARTS) } },
  );

const withoutIndex = ({ name }: FootageFile) =>
  new ExitframeError(
    'truncated',
    `"${name}" is cut off: its index (moov), which cameras write last, is missing.`,
    'Copy the clip from the camera again; a recording that broke off needs the camera’s own repair.',
    { values: { form: 'index', name } },
  );
