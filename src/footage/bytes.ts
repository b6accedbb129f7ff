/** Reads a slice of a blob; shorter where the blob ends. */
export async function viewOf(blob: Blob, start: number, length: number): Promise<DataView> {
  return new DataView(await blob.slice(start, start + length).arrayBuffer());
}

/** Letters of a container's four-letter names. */
export function lettersAt(view: DataView, offset: number, length = 4): string {
  let letters = '';
  for (let i = offset; i < Math.min(offset + length, view.byteLength); i++) {
    letters += String.fromCharCode(view.getUint8(i));
  }
  return letters;
}
