import type { FrameRange } from '../core/film';
import type { Reason } from '../core/reason';
import type { FilmFacts } from './ffmpeg/decodeSpan';
import type { SecondReading } from './givenFrames';
import type { Span } from './range';
import type { SyncReader } from './reader';
import type { FootageFile } from './source';

/** Threads that decode spans of one film under ffmpeg, several at once. */
export interface SpanDecoders {
  /** How many spans at once. */
  readonly count: number;
  /** Grey values of the frames wanted, upright. Throws what decoding throws, and where a thread ends before it is done. */
  decode(span: Span): Promise<readonly (Uint8Array | Uint16Array)[]>;
  end(): void;
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
  /** Left out, or null: spans are decoded in this thread, one after the other. */
  startDecoders?(file: FootageFile, film: FilmFacts): SpanDecoders | null;
  /** Opens a file for reading in slices. */
  reader(file: FootageFile): Promise<SyncReader>;
}
