import type { GreyFrame } from '../core/frame';
import type { FramesPerSecond, Seconds } from '../core/units';

/** What the footage itself says. Sizes are of the upright image (rotation applied). */
export interface FootageInfo {
  readonly name: string;
  /** 'mp4', 'avi', 'image sequence', ... */
  readonly container: string;
  /** 'avc', 'mjpeg', 'png', ... */
  readonly codec: string;
  readonly width: number;
  readonly height: number;
  readonly frameCount: number;
  /** As the container states it; not the recording rate of a high-speed camera. Null: states none. */
  readonly playbackRate: FramesPerSecond | null;
  /** Clockwise turn applied to make the image upright, degrees. */
  readonly rotation: 0 | 90 | 180 | 270;
  readonly bitDepth: number;
  /** Pixel width over pixel height. */
  readonly pixelAspect: number;
  readonly hasAudio: boolean;
  /** Which decoder reads it and why that one: shown to the user. */
  readonly decoder: { readonly name: string; readonly why: string };
}

/** Mono sound (channels averaged), -1..1. */
export interface AudioTrack {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  /** Time of the first sample on the film's clock (same zero as `timestamps`). */
  readonly firstSampleTime: Seconds;
}

/** Half-open range of frame indices; `step` 1 unless given. */
export interface FrameRange {
  readonly start: number;
  readonly end: number;
  readonly step?: number;
}

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
  /** The sound track, or null where there is none. */
  audio(signal?: AbortSignal): Promise<AudioTrack | null>;
  close(): Promise<void>;
}

/** A file to read in slices: a browser `File`, or Node's `fs.openAsBlob` with a name. */
export interface FootageFile {
  readonly name: string;
  readonly blob: Blob;
}
