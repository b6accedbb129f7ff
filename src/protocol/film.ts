import type { LampProfile } from '../clock/lampProfile';
import type { AudioTrack, FootageInfo, FrameRange } from '../core/film';
import type { GreyFrame } from '../core/frame';
import type { FootageFile } from '../footage/source';

/** A clip of a flickering lamp, boiled down to what its readout is measured from. */
export interface LampFilm {
  readonly info: FootageInfo;
  /** Presentation times, s, first frame 0; null where the container holds none. */
  readonly timestamps: Float64Array | null;
  /** One a frame, in display order. */
  readonly profiles: readonly LampProfile[];
}

/** The film worker: opens footage and hands out grey frames. One film open at a time. */
export interface FilmApi {
  /** Opens one file, or several as an image sequence in the order given. Closes what was open. */
  open(files: readonly FootageFile[]): Promise<FootageInfo>;
  /** Presentation times, s, first frame 0; null where the container holds none. */
  timestamps(): Promise<Float64Array | null>;
  /** One frame for the screen (transferred). */
  frame(index: number): Promise<GreyFrame>;
  /** Starts a run through a range; frames are then pulled with `next`. */
  startRun(range: FrameRange): Promise<number>;
  /** Next batch of a run in display order, transferred; empty: the run is over. */
  next(run: number): Promise<GreyFrame[]>;
  endRun(run: number): Promise<void>;
  audio(): Promise<AudioTrack | null>;
  /** SHA-256 of the file, or of the sequence's files in order; hexadecimal. `onProgress` gets 0..1. */
  sha256(onProgress?: (share: number) => void): Promise<string>;
  /** Reads a clip of a lamp from end to end, beside the film that is open, which stays so. `onShare` gets 0..1. */
  readLamp(files: readonly FootageFile[], onShare?: (share: number) => void): Promise<LampFilm>;
  close(): Promise<void>;
  /** Serves another thread over this port. */
  attach(port: MessagePort): Promise<void>;
}
