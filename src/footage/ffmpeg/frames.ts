/**
 * Cuts a stream of bytes, which comes in pieces of any length, into frames; keeps something of those wanted. Their bytes
 * are lent: what is kept of them is copied.
 */
export class FrameCutter<Kept> {
  /** One a frame seen: what is kept of it, or null where it is not wanted. */
  readonly frames: (Kept | null)[] = [];
  private readonly frameBytes: number;
  private readonly wanted: (place: number) => boolean;
  private readonly keep: (bytes: Uint8Array) => Kept;
  private readonly current: Uint8Array;
  private isWanted = false;
  private filled = 0;

  constructor(
    frameBytes: number,
    wanted: (place: number) => boolean,
    keep: (bytes: Uint8Array) => Kept,
  ) {
    this.frameBytes = frameBytes;
    this.current = new Uint8Array(frameBytes);
    this.wanted = wanted;
    this.keep = keep;
  }

  take(bytes: Uint8Array): void {
    for (let at = 0; at < bytes.length; ) {
      if (this.filled === 0) this.isWanted = this.wanted(this.frames.length);
      const part = bytes.subarray(at, at + this.frameBytes - this.filled);
      if (this.isWanted) this.current.set(part, this.filled);
      this.filled += part.length;
      at += part.length;
      if (this.filled === this.frameBytes) {
        this.frames.push(this.isWanted ? this.keep(this.current) : null);
        this.filled = 0;
      }
    }
  }

  /** Bytes of a frame that was begun and not finished. */
  get remainder(): number {
    return this.filled;
  }
}

/** Grey samples of a frame's bytes, little-endian. */
export function samplesOf(bytes: Uint8Array, bytesPerSample: 1 | 2): Uint8Array | Uint16Array {
  return bytesPerSample === 1
    ? bytes
    : new Uint16Array(bytes.buffer, bytes.byteOffset, bytes.length / 2);
}
