/** Bytes on demand, without waiting: a decoder in WebAssembly cannot wait for a promise. */
export interface SyncReader {
  /** Length in bytes. */
  readonly size: number;
  /** Bytes `start` to `end` (exclusive), both within the file. Throws where the file cannot be read. */
  read(start: number, end: number): Uint8Array;
  /** Told of what `read` gave and nobody will use again, so that its memory is freed. */
  done?(bytes: Uint8Array): void;
}
