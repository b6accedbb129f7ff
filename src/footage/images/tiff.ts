import { formatCount } from '../../core/format';
import { ExitframeError } from '../../core/reason';
import { headersOf, lettersAt } from '../bytes';
import type { FootageFile } from '../source';
import { orientationOf } from './orientation';
import type { ImageHeader } from './types';

/** One image of a TIFF file and where its directory stands. */
export interface TiffPage extends ImageHeader {
  readonly offset: number;
}

const WIDTH = 256;
const HEIGHT = 257;
const BITS = 258;
const COLOUR = 262; // photometric interpretation
const ORIENTATION = 274;
const SHORT = 3;
/** More than any camera writes into one file, and few enough to be listed in seconds. */
const MOST_IMAGES = 200_000;

type Read = ReturnType<typeof headersOf>;

/**
 * The images of a TIFF file in order: directories that each name the next one (TIFF 6.0, section
 * 2). Throws `imagesLoop`, `tooManyImages`; `RangeError` where they go on past the file's end.
 */
export async function tiffPages(
  { name, blob }: FootageFile,
  signal?: AbortSignal,
): Promise<TiffPage[]> {
  const read = headersOf(blob);
  const { little, first } = await startOf(read);
  const pages: TiffPage[] = [];
  const seen = new Set<number>();
  for (let offset = first; offset !== 0; ) {
    signal?.throwIfAborted();
    if (seen.has(offset)) throw loop(name, pages.length);
    if (pages.length === MOST_IMAGES) throw tooMany(name);
    seen.add(offset);
    const { page, next } = await directoryAt(read, offset, little);
    pages.push({ ...page, offset });
    offset = next;
  }
  return pages;
}

/** The first image of a TIFF file, or what the head of a photograph in another format says (Exif). */
export async function firstDirectory(blob: Blob): Promise<ImageHeader> {
  const read = headersOf(blob);
  const { little, first } = await startOf(read);
  return (await directoryAt(read, first, little)).page;
}

async function startOf(read: Read): Promise<{ little: boolean; first: number }> {
  const head = await read(0, 8);
  const little = lettersAt(head, 0, 2) === 'II';
  return { little, first: head.getUint32(4, little) };
}

async function directoryAt(read: Read, offset: number, little: boolean) {
  const count = (await read(offset, 2)).getUint16(0, little);
  const directory = await read(offset + 2, count * 12 + 4);
  const tags = await readTags(read, directory, count, little);
  const page: ImageHeader = {
    width: tags.get(WIDTH) ?? 0,
    height: tags.get(HEIGHT) ?? 0,
    bits: tags.get(BITS) ?? 1,
    colour: tags.get(COLOUR) ?? 0,
    orientation: orientationOf(tags.get(ORIENTATION)),
  };
  return { page, next: directory.getUint32(count * 12, little) };
}

/** First value of each tag of interest. */
async function readTags(
  read: Read,
  directory: DataView,
  count: number,
  little: boolean,
): Promise<Map<number, number>> {
  const tags = new Map<number, number>();
  for (let i = 0; i < count; i++) {
    const entry = i * 12;
    const tag = directory.getUint16(entry, little);
    if (![WIDTH, HEIGHT, BITS, COLOUR, ORIENTATION].includes(tag)) continue;
    const short = directory.getUint16(entry + 2, little) === SHORT;
    const bytes = directory.getUint32(entry + 4, little) * (short ? 2 : 4);
    // Up to four bytes of values stand in the entry itself, more of them elsewhere.
    const values = bytes > 4 ? await read(directory.getUint32(entry + 8, little), 4) : directory;
    const at = bytes > 4 ? 0 : entry + 8;
    tags.set(tag, short ? values.getUint16(at, little) : values.getUint32(at, little));
  }
  return tags;
}

const loop = (name: string, count: number) =>
  new ExitframeError(
    'imagesLoop',
    `"${name}" is damaged: after ${formatCount(count)} images the list of them leads back to an earlier one.`,
    'Copy the file again, or save the pictures one by one.',
    { values: { name, count } },
  );

const tooMany = (name: string) =>
  new ExitframeError(
    'tooManyImages',
    `"${name}" lists more than ${formatCount(MOST_IMAGES)} images.`,
    'Split it, or save the film as a video.',
    { values: { name, most: formatCount(MOST_IMAGES) } },
  );
