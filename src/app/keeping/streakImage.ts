import type { LiveStreak } from '../measuring';

type Streak = Pick<LiveStreak, 'line' | 'rows'>;

/** A streak image as a record. */
export interface KeptStreak {
  readonly line: LiveStreak['line'];
  readonly frames: readonly number[];
  /** The rows of those frames as Float32Array, one after the other. */
  readonly rows: Blob;
}

/** What is copied in one go: the whole of 10 MiB held the page up for 0.1 s. */
const PIECE_BYTES = 2 ** 20;

/** Makes a record of a streak image, piece by piece. */
export function streakPacker() {
  let rows: Streak['rows'] | null = null;
  let left: Iterator<Float32Array> = [][Symbol.iterator]();
  let pieces: Blob[] = [];
  /** Packs one piece more; whether it was the last. */
  const advance = (streak: Streak | null): boolean => {
    if (streak === null) return true;
    if (streak.rows !== rows) {
      rows = streak.rows;
      left = rows.values();
      pieces = [];
    }
    const piece: BlobPart[] = [];
    for (let bytes = 0; bytes < PIECE_BYTES; ) {
      const { done, value } = left.next();
      if (done === true) break;
      piece.push(value as Float32Array<ArrayBuffer>);
      bytes += value.byteLength;
    }
    if (piece.length > 0) pieces.push(new Blob(piece));
    return piece.length === 0;
  };
  return {
    advance,
    /** The record, what is missing of it packed at once. */
    record(streak: Streak): KeptStreak {
      while (!advance(streak)) {}
      const all = new Blob(pieces); // refers to the pieces, copies nothing
      const record = { line: streak.line, frames: [...streak.rows.keys()], rows: all };
      rows = null; // so that the pieces are not held here
      pieces = [];
      return record;
    },
  };
}

/** Rejects where the browser no longer has the rows. */
export async function unpacked({ line, frames, rows }: KeptStreak): Promise<Streak> {
  const all = new Float32Array(await rows.arrayBuffer());
  const width = all.length / Math.max(1, frames.length);
  return {
    line,
    rows: new Map(frames.map((frame, i) => [frame, all.slice(i * width, (i + 1) * width)])),
  };
}
