import { formatCount, numberAt } from '../core/format';
import { ExitframeError, reasonOf } from '../core/reason';
import { viewOf } from './bytes';
import type { FootageFile } from './source';

/** What is unpacked lies in memory until the film is closed: bytes of all files together. */
const MOST_BYTES = 2 ** 31;
const MOST_FILES = 200_000;
/** In the header before a file. */
const NAME_LENGTH_AT = 26;
const NAME_AT = 30;
/** What folders commonly hold besides the images. */
const IGNORED = /(^|\/)(\.|__MACOSX\/|thumbs\.db$|desktop\.ini$)|\.(json|txt|md|csv)$/i;

const inNumberOrder = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** Whether a file begins as a zip archive does. */
export async function isZip(blob: Blob): Promise<boolean> {
  const view = await viewOf(blob, 0, 4);
  return view.byteLength === 4 && view.getUint32(0) === 0x504b0304;
}

/**
 * The files of an archive in the order of their numbers, notes and the like left out. Sizes are
 * held against what the archive states, so that one that lies cannot fill the memory.
 * Throws `badArchive`, `archiveTooLarge`, `emptyArchive`, `AbortError`.
 */
export async function unpacked(
  { name, blob }: FootageFile,
  signal?: AbortSignal,
): Promise<FootageFile[]> {
  const { ZipReader } = await import('@zip.js/zip.js/lib/zip-core-reader.js');
  const reader = new ZipReader(readable(blob), {
    useWebWorkers: false,
    checkSignature: true,
    checkOverlappingEntry: true,
  });
  try {
    const entries = (await reader.getEntries()).flatMap((entry) =>
      entry.directory || IGNORED.test(entry.filename) ? [] : [entry],
    );
    const bytes = entries.reduce((sum, entry) => sum + entry.uncompressedSize, 0);
    if (entries.length === 0) {
      throw new ExitframeError(
        'emptyArchive',
        `"${name}" holds no footage.`,
        'Choose an archive with the pictures of one sequence in it, or with one clip.',
        { values: { name } },
      );
    }
    if (bytes > MOST_BYTES || entries.length > MOST_FILES) {
      throw new ExitframeError(
        'archiveTooLarge',
        `"${name}" states ${formatCount(entries.length)} files of ${numberAt(bytes / 2 ** 30, 3)} GiB unpacked, more than is unpacked here (${formatCount(MOST_FILES)} files, ${MOST_BYTES / 2 ** 30} GiB).`,
        'Unpack it, and open the folder.',
        {
          values: { name, files: formatCount(entries.length), size: numberAt(bytes / 2 ** 30, 3) },
        },
      );
    }
    entries.sort((a, b) => inNumberOrder.compare(a.filename, b.filename));
    const files: FootageFile[] = [];
    for (const entry of entries) {
      signal?.throwIfAborted();
      await requireOwnName(blob, entry.offset, entry.rawFilename);
      const parts: Uint8Array<ArrayBuffer>[] = [];
      const output = gathering(parts, entry.uncompressedSize);
      await entry.getData(output, signal ? { signal } : {});
      files.push({ name: entry.filename.replace(/^.*\//, ''), blob: new Blob(parts) });
    }
    return files;
  } catch (error) {
    if (error instanceof ExitframeError || signal?.aborted) throw error;
    throw new ExitframeError(
      'badArchive',
      `"${name}" cannot be unpacked: ${reasonOf(error).message}.`,
      'Pack it anew without a password, or unpack it and open the folder.',
      { cause: error, values: { name, why: reasonOf(error).message } },
    );
  } finally {
    await reader.close();
  }
}

/**
 * A name stands before the file's own bytes too. Names give the order of the pictures, and nothing
 * sums them up: where the two differ one is damaged (PKWARE's APPNOTE, 4.3.7; from memory).
 */
async function requireOwnName(blob: Blob, offset: number, listed: Uint8Array): Promise<void> {
  const head = await viewOf(blob, offset, NAME_AT + listed.length);
  const own = new Uint8Array(head.buffer).subarray(NAME_AT);
  const isListed =
    own.length === listed.length &&
    head.getUint16(NAME_LENGTH_AT, true) === listed.length &&
    own.every((byte, i) => byte === listed[i]);
  if (!isListed) throw new Error('a file has another name in the list of contents than before it');
}

/** A blob to be read in slices. */
const readable = (blob: Blob) => ({
  readable: blob.stream(),
  size: blob.size,
  init: async () => {},
  createReadable: ({ offset = 0, size = blob.size }: { offset?: number; size?: number } = {}) =>
    blob.slice(offset, offset + size).stream(),
  readUint8Array: async (start: number, length: number) =>
    new Uint8Array(await blob.slice(start, start + length).arrayBuffer()),
});

/** Takes in what is unpacked, and no more of it than was stated. */
function gathering(parts: Uint8Array<ArrayBuffer>[], stated: number) {
  let taken = 0;
  return new WritableStream<Uint8Array<ArrayBuffer>>({
    write(part) {
      taken += part.byteLength;
      if (taken > stated) throw new Error(`a file is larger than the ${stated} bytes it states`);
      parts.push(part);
    },
  });
}
