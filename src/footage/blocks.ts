import type { SyncReader } from './reader';

const BLOCK = 1 << 20;
/** Enough for the places a demuxer reads from in turn: index, picture, sound. */
const KEPT_BLOCKS = 6;

/**
 * Reads through a few blocks kept in memory: demuxers ask for 32 KiB at a time, back and forth. What is read is lent: it
 * is gone some reads later.
 */
export function inBlocks(reader: SyncReader): SyncReader {
  const kept = new Map<number, Uint8Array>();

  const block = (number: number): Uint8Array => {
    const start = number * BLOCK;
    const bytes = kept.get(number) ?? reader.read(start, Math.min(start + BLOCK, reader.size));
    kept.delete(number); // to the end of the map's order: the one used last
    kept.set(number, bytes);
    if (kept.size > KEPT_BLOCKS) {
      const [oldest, unused] = kept.entries().next().value as [number, Uint8Array];
      kept.delete(oldest);
      reader.done?.(unused);
    }
    return bytes;
  };

  return {
    size: reader.size,
    read(start, end) {
      const first = Math.floor(start / BLOCK);
      if (end <= (first + 1) * BLOCK) {
        return block(first).subarray(start - first * BLOCK, end - first * BLOCK);
      }
      const whole = new Uint8Array(end - start);
      for (let at = start; at < end; ) {
        const number = Math.floor(at / BLOCK);
        const part = block(number).subarray(at - number * BLOCK, end - number * BLOCK);
        whole.set(part, at - start);
        at += part.length;
      }
      return whole;
    },
  };
}
