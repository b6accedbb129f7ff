import type { AudioTrack, FootageInfo, FrameRange, RawLayout, Reading } from '../core/film';
import type { GreyFrame } from '../core/frame';
import type { FootageFile } from '../footage/source';

/** The film worker: opens footage and hands out grey frames. One film open at a time. */
export interface FilmApi {
  /**
   * Opens one file, or several as an image sequence in the order given; `reading` is what is stated
   * about it. Closes what was open.
   */
  open(files: readonly FootageFile[], reading?: Reading): Promise<FootageInfo>;
  /** A frame of headerless grey as it would be read (transferred); what is open stays open. */
  preview(file: FootageFile, layout: RawLayout, index: number): Promise<GreyFrame>;
  /** Presentation times, s, first frame 0; null where the container holds none. */
  timestamps(): Promise<Float64Array | null>;
  /** One frame for the screen (transferred). */
  frame(index: number): Promise<GreyFrame>;
  /** Starts a run through a range; frames are then pulled with `next`. */
  startRun(range: FrameRange): Promise<number>;
  /**
   * Next batch of a run in display order, transferred; empty: the run is over. `back`: memory of earlier frames that are
   * done with, transferred.
   */
  next(run: number, back?: readonly ArrayBuffer[]): Promise<GreyFrame[]>;
  endRun(run: number): Promise<void>;
  /**
   * Holds the frames of these ranges, given out before, against a second decoder's; see `FrameSource`. One check at a
   * time: another one ends it.
   */
  check(ranges: readonly FrameRange[]): Promise<void>;
  endCheck(): Promise<void>;
  audio(): Promise<AudioTrack | null>;
  /** SHA-256 of the file, or of the sequence's files in order; hexadecimal. `onProgress` gets 0..1. */
  sha256(onProgress?: (share: number) => void): Promise<string>;
  close(): Promise<void>;
  /** Serves another thread over this port. */
  attach(port: MessagePort): Promise<void>;
}
