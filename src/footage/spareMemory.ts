/** Memory of frames that nobody needs any more, for the next ones: fresh memory costs more than what is put into it. */
export interface SpareMemory {
  /** As many bytes as asked for, whatever is in them. */
  take(size: number): ArrayBuffer;
  give(buffers: readonly ArrayBuffer[]): void;
}

/** Enough for what is under way between threads, at either end. */
export const MOST_SPARE = 4 << 20;

export function spareMemory(): SpareMemory {
  let kept: ArrayBuffer[] = [];
  let bytes = 0;
  return {
    take(size) {
      const last = kept.pop();
      if (last?.byteLength === size) {
        bytes -= size;
        return last;
      }
      kept = []; // of frames of another size
      bytes = 0;
      return new ArrayBuffer(size);
    },
    give(buffers) {
      for (const buffer of buffers) {
        if (bytes + buffer.byteLength > MOST_SPARE) return;
        kept.push(buffer);
        bytes += buffer.byteLength;
      }
    },
  };
}
