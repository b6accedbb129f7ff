import type { FrameRange } from '../core/film';
import type { Reason } from '../core/reason';
import type { SecondReading } from './givenFrames';
import type { FootageFile } from './source';

/** Bytes on demand, without waiting: a decoder in WebAssembly cannot wait for a promise. */
export interface SyncReader {
  /** Length in bytes. */
  readonly size: number;
  /** Bytes `start` to `end` (exclusive), both within the file. Throws where the file cannot be read. */
  read(start: number, end: number): Uint8Array;
}

/** What differs between a worker in the browser and Node. */
export interface DecodePlatform {
  /** Whether WebCodecs' `VideoDecoder` is there. */
  readonly webCodecs: boolean;
  /** Why WebCodecs is not used where it is missing: shown to the user. */
  readonly withoutWebCodecs: Reason;
  /** The ffmpeg core, compiled once. Throws `ExitframeError` `decoderMissing`, `webAssemblyRefused`. */
  loadCore(): Promise<WebAssembly.Module>;
  /** Reads frames under ffmpeg a second time, in another thread. Left out: it is done in this one. */
  readAgain?(
    file: FootageFile,
    ranges: readonly FrameRange[],
    signal?: AbortSignal,
  ): Promise<SecondReading>;
  /** Opens a file for reading in slices. */
  reader(file: FootageFile): Promise<SyncReader>;
}
