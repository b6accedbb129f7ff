import { ExitframeError } from '../core/reason';
import { headersOf, lettersAt, viewOf } from './bytes';
import { tooManyParts, tooShort } from './damaged';
import { EBML_HEADER, requireWholeEbml } from './ebml';
import { requireWholeGif } from './gif';
import { requireEqualTables } from './sampleTables';
import type { FootageFile } from './source';
import { requireWholeY4m, Y4M } from './y4m';

/**
 * Checks that a film's file is as long as its own outermost headers say, by walking them without
 * reading what they hold, and that these do not contradict each other. Formats it does not know pass.
 * Throws `truncated`, `tooManyParts`, `brokenParts`, `brokenIndex`.
 *
 * Layouts: ISO/IEC 14496-12, 4.2 (boxes); the RIFF specification of 1991. From memory.
 */
export async function requireWhole(file: FootageFile): Promise<void> {
  const head = await viewOf(file.blob, 0, 16);
  if (head.byteLength < 16) return;
  if (['ftyp', 'moov', 'mdat', 'wide', 'free', 'skip'].includes(lettersAt(head, 4))) {
    return requireWholeBoxes(file);
  }
  if (lettersAt(head, 0) === 'RIFF') return requireWholeRiff(file);
  if (lettersAt(head, 0) === 'GIF8') return requireWholeGif(file);
  if (lettersAt(head, 0, Y4M.length) === Y4M) return requireWholeY4m(file);
  if (head.getUint32(0) === EBML_HEADER) return requireWholeEbml(file);
}

/** Far more than a film has that is written piece by piece, as browsers and phones do. */
const MOST_PARTS = 100_000;

async function requireWholeBoxes(file: FootageFile): Promise<void> {
  const { size } = file.blob;
  const read = headersOf(file.blob);
  let indexed = false;
  for (let at = 0, parts = 0; at + 8 <= size; parts++) {
    if (parts === MOST_PARTS) throw tooManyParts(file.name, MOST_PARTS);
    const box = await read(at, 16);
    const type = lettersAt(box, 4);
    indexed ||= type === 'moov';
    const short = box.getUint32(0);
    // 0: to the end of the file; 1: a long size follows.
    const long = short === 1 && box.byteLength === 16 ? Number(box.getBigUint64(8)) : short;
    const length = short === 0 ? size - at : long;
    if (length < 8) return; // no box: whatever follows is not for us to judge
    if (at + length > size && type === 'moov') throw withoutIndex(file);
    if (at + length > size && indexed) throw tooShort(file.name, at + length, size);
    if (type === 'moov') await requireEqualTables(file.name, read, at + 8, at + length);
    at += length;
  }
  if (!indexed) throw withoutIndex(file);
}

/** Chunks follow one another at even places; a film of more than 1 GB has several RIFFs. */
async function requireWholeRiff(file: FootageFile): Promise<void> {
  const { size } = file.blob;
  const read = headersOf(file.blob);
  for (let at = 0, parts = 0; at + 8 <= size; parts++) {
    if (parts === MOST_PARTS) throw tooManyParts(file.name, MOST_PARTS);
    const chunk = await read(at, 8);
    if (lettersAt(chunk, 0) !== 'RIFF') return;
    const length = chunk.getUint32(4, true);
    if (length === 0) return; // some cameras never fill it in
    if (at + 8 + length > size) throw tooShort(file.name, at + 8 + length, size);
    at += 8 + length + (length % 2);
  }
}

const withoutIndex = ({ name }: FootageFile) =>
  new ExitframeError(
    'truncated',
    `"${name}" is cut off: its index (moov), which cameras write last, is missing.`,
    'Copy the clip from the camera again; a recording that broke off needs the camera’s own repair.',
    { values: { form: 'index', name } },
  );
