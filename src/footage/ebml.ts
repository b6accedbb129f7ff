import { headersOf } from './bytes';
import { brokenParts, tooManyParts, tooShort } from './damaged';
import type { FootageFile } from './source';

export const EBML_HEADER = 0x1a45dfa3;
const SEGMENT = 0x18538067;
const CLUSTER = 0x1f43b675;
const ANYWHERE = [0xec, 0xbf]; // void, checksum
/** What a segment is made of: index of indices, facts, tracks, clusters, cues, attachments, chapters, tags. */
const IN_SEGMENT = new Set([
  ...[0x114d9b74, 0x1549a966, 0x1654ae6b, CLUSTER, 0x1c53bb6b, 0x1941a469, 0x1043a770, 0x1254c367],
  ...ANYWHERE,
]);
/** Time, silent tracks, position, size of the one before, block groups and blocks. */
const IN_CLUSTER = new Set([0xe7, 0x5854, 0xa7, 0xab, 0xa0, 0xa3, 0xaf, ...ANYWHERE]);

/** More blocks than any film has that fits on a disk: 40 s at 12 000 frames/s. */
const MOST_PARTS = 500_000;
/** An identifier and a size. */
const HEAD = 12;

interface Element {
  readonly id: number;
  readonly start: number;
  /** Null: it lasts until something begins that cannot be in it. */
  readonly end: number | null;
}

/**
 * Checks that the parts of a Matroska or WebM film follow one another without a gap to its end, by
 * their heads alone. A reader finds its way past one that is damaged by leaving out frames, or not at all.
 * Throws `truncated`, `brokenParts`, `tooManyParts`.
 *
 * Layouts: RFC 8794 (EBML), RFC 9559 (Matroska). From memory.
 */
export async function requireWholeEbml({ name, blob }: FootageFile): Promise<void> {
  const read = headersOf(blob);
  const elementAt = async (at: number) => elementIn(await read(at, HEAD), at);
  const header = await elementAt(0);
  const segment = header?.end == null ? null : await elementAt(header.end);
  if (segment?.id !== SEGMENT) return;
  if (segment.end !== null && segment.end > blob.size) throw tooShort(name, segment.end, blob.size);

  const end = segment.end ?? blob.size;
  let clusterEnd: number | null = segment.start; // none yet
  for (let at = segment.start, parts = 0; at < end; parts++) {
    if (parts === MOST_PARTS) throw tooManyParts(name, MOST_PARTS);
    const element = await elementAt(at);
    const inCluster = clusterEnd === null ? !IN_SEGMENT.has(element?.id ?? 0) : at < clusterEnd;
    const isPlaced = element !== null && (inCluster ? IN_CLUSTER : IN_SEGMENT).has(element.id);
    if (!isPlaced) throw brokenParts(name, at);
    if (!inCluster && element.id === CLUSTER) {
      clusterEnd = element.end;
      at = element.start;
    } else {
      at = element.end ?? Number.POSITIVE_INFINITY;
    }
    const within = inCluster ? (clusterEnd ?? end) : end;
    if (Math.max(at, clusterEnd ?? 0) > within) throw brokenParts(name, element.start);
  }
}

/** Null where no identifier of up to four bytes and a size stand there. */
function elementIn(view: DataView, at: number): Element | null {
  const first = view.byteLength > 0 ? view.getUint8(0) : 0;
  const idLength = Math.clz32(first) - 23;
  if (idLength > 4 || view.byteLength <= idLength) return null;
  let id = 0;
  for (let i = 0; i < idLength; i++) id = id * 256 + view.getUint8(i);
  const sizeLength = Math.clz32(view.getUint8(idLength)) - 23;
  const start = at + idLength + sizeLength;
  if (sizeLength > 8 || view.byteLength < idLength + sizeLength) return null;
  // The leading zero bits and a one tell the length; all ones beyond: unknown.
  let size = BigInt(view.getUint8(idLength) & (0xff >> sizeLength));
  for (let i = 1; i < sizeLength; i++) size = size * 256n + BigInt(view.getUint8(idLength + i));
  const isUnknown = size === 2n ** BigInt(7 * sizeLength) - 1n;
  return { id, start, end: isUnknown ? null : start + Number(size) };
}
