import type { AudioTrack, FootageInfo, FrameRange } from '../core/film';
import type { GreyFrame } from '../core/frame';

/**
 * An open piece of footage. One implementation a decoder, all giving the same grey values.
 * Errors are `ExitframeError` with the codes listed in DEVELOPERS.md.
 */
export interface FrameSource {
  readonly info: FootageInfo;
  /** Presentation time of each frame as the container holds it, first frame at 0. Null: it holds none. */
  timestamps(signal?: AbortSignal): Promise<Float64Array | null>;
  /** Frames in display order, decoded as they are pulled, memory bounded by a few frames. */
  frames(range: FrameRange, signal?: AbortSignal): AsyncIterable<GreyFrame>;
  /** Takes memory of frames given out before, to put the next ones into. Left out: it has no use for it. */
  takeBack?(memory: readonly ArrayBuffer[]): void;
  /**
   * Holds the frames given out so far, those within the ranges, against another decoder's. Throws what that one refuses
   * them for; `decoderFailed` where it reads them otherwise. Left out: this source's own decoder tells of damage.
   */
  check?(ranges: readonly FrameRange[], signal?: AbortSignal): Promise<void>;
  /** The sound track, or null where there is none. */
  audio(signal?: AbortSignal): Promise<AudioTrack | null>;
  close(): Promise<void>;
}

/** A file to read in slices: a browser `File`, or Node's `fs.openAsBlob` with a name. */
export interface FootageFile {
  readonly name: string;
  readonly blob: Blob;
}
