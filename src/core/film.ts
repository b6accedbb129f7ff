import type { FramesPerSecond, Seconds } from './units';

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
