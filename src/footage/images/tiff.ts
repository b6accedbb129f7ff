import { lettersAt, viewOf } from '../bytes';
import type { ImageHeader } from './types';

/** One image of a TIFF file and where its directory stands. */
export interface TiffPage extends ImageHeader {
  readonly offset: number;
}

const WIDTH = 256;
const HEIGHT = 257;
const BITS = 258;
const COLOUR = 262; // photometric interpretation
const SHORT = 3;

/** The images of a TIFF file in order: directories that each name the next one (TIFF 6.0, section 2). */
export async function tiffPages(blob: Blob): Promise<TiffPage[]> {
  const head = await viewOf(blob, 0, 8);
  const little = lettersAt(head, 0, 2) === 'II';
  const pages: TiffPage[] = [];
  const seen = new Set<number>();
  let offset = head.getUint32(4, little);
  while (offset !== 0 && !seen.has(offset)) {
    seen.add(offset); // a chain that leads back would never end
    const count = (await viewOf(blob, offset, 2)).getUint16(0, little);
    const directory = await viewOf(blob, offset + 2, count * 12 + 4);
    const tags = await readTags(blob, directory, count, little);
    pages.push({
      offset,
      width: tags.get(WIDTH) ?? 0,
      height: tags.get(HEIGHT) ?? 0,
      bits: tags.get(BITS) ?? 1,
      colour: tags.get(COLOUR) ?? 0,
    });
    offset = directory.getUint32(count * 12, little);
  }
  return pages;
}

/** First value of each tag of interest. */
async function readTags(
  blob: Blob,
  directory: DataView,
  count: number,
  little: boolean,
): Promise<Map<number, number>> {
  const tags = new Map<number, number>();
  for (let i = 0; i < count; i++) {
    const entry = i * 12;
    const tag = directory.getUint16(entry, little);
    if (![WIDTH, HEIGHT, BITS, COLOUR].includes(tag)) continue;
    const short = directory.getUint16(entry + 2, little) === SHORT;
    const bytes = directory.getUint32(entry + 4, little) * (short ? 2 : 4);
    // Up to four bytes of values stand in the entry itself, more of them elsewhere.
    const values =
      bytes > 4 ? await viewOf(blob, directory.getUint32(entry + 8, little), 4) : directory;
    const at = bytes > 4 ? 0 : entry + 8;
    tags.set(tag, short ? values.getUint16(at, little) : values.getUint32(at, little));
  }
  return tags;
}
