/** Reads a slice of a blob; shorter where the blob ends. */
export async function viewOf(blob: Blob, start: number, length: number): Promise<DataView> {
  return new DataView(await blob.slice(start, start + length).arrayBuffer());
}

/** Bytes read at once where headers follow one another closely. */
const WINDOW = 2 ** 16;

/** Reads headers that lie close together, many to one slice of the blob. */
export function headersOf(blob: Blob): (start: number, length: number) => Promise<DataView> {
  let from = 0;
  let window: DataView = new DataView(new ArrayBuffer(0));
  return async (start, length) => {
    const end = Math.max(start, Math.min(start + length, blob.size)); // nothing is there beyond the blob's end
    if (start < from || end > from + window.byteLength) {
      window = await viewOf(blob, start, Math.max(length, WINDOW));
      from = start;
    }
    return new DataView(window.buffer, start - from, Math.max(end - start, 0));
  };
}

/** Letters of a container's four-letter names. */
export function lettersAt(view: DataView, offset: number, length = 4): string {
  let letters = '';
  for (let i = offset; i < Math.min(offset + length, view.byteLength); i++) {
    letters += String.fromCharCode(view.getUint8(i));
  }
  return letters;
}
