import type { Reason } from './reason';
import type { FramesPerSecond, Seconds } from './units';

/** How the pixels of headerless footage lie in the file: row by row, one grey value a pixel. */
export interface RawLayout {
  readonly width: number;
  readonly height: number;
  /** Bits a grey value has; more than 8 lie at the lower end of two bytes. */
  readonly bits: 8 | 10 | 12 | 16;
  /** Which of the two bytes comes first. */
  readonly byteOrder: 'little' | 'big';
  /** Bytes before the first frame. */
  readonly skip: number;
  /** Bytes between one frame and the next. */
  readonly gap: number;
}

/** Which field of an interlaced frame was exposed first: that of lines 0, 2, ... or of 1, 3, ... */
export type FieldOrder = 'topFirst' | 'bottomFirst';

/** How footage is to be read where it does not say so itself, or says it wrongly. */
export interface Reading {
  /** Null: the file has a header. */
  readonly raw: RawLayout | null;
  /** 'auto': fields are separated where the file says it is interlaced; 'whole': never. */
  readonly fields: 'auto' | 'whole' | FieldOrder;
}

/** Everything as the file itself says. */
export const AS_FOUND: Reading = { raw: null, fields: 'auto' };

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
  /** Left and right were exchanged before the turn; left out where they were not. */
  readonly mirrored?: true;
  /** Pixel width over pixel height. */
  readonly pixelAspect: number;
  readonly hasAudio: boolean;
  /**
   * `stated`: interlaced by the file's own word. `separated`: each frame here is one field, the
   * lines of the other one filled in; counts and rates are those of fields.
   */
  readonly interlaced: {
    readonly stated: FieldOrder | null;
    readonly separated: FieldOrder | null;
  };
  /** Grey values that stand for black and white: 16 and 235 for 8 bits of limited range. */
  readonly levels: { readonly black: number; readonly white: number };
  /** Which decoder reads it and why that one: shown to the user. */
  readonly decoder: { readonly name: string; readonly why: Reason };
}

/** What has to be known of interlaced film; null: it is not, as far as the file tells. */
export function fieldsReason({
  interlaced,
}: FootageInfo): (Reason & { readonly remedy: string }) | null {
  if (interlaced.separated !== null) {
    return {
      code: 'fieldsSeparated',
      message:
        'Each frame is one field of interlaced film: every other line was filmed, and only those tell the ball’s centre; the lines between are filled in. Half as many lines tell it less well, which its uncertainty says.',
      remedy:
        'Nothing, if the recording rate is stated in fields a second. For the next shot have the camera take whole frames.',
    };
  }
  if (interlaced.stated === null) return null;
  return {
    code: 'fieldsWoven',
    message:
      'The file says that it is interlaced, and its frames are left whole: each shows two moments.',
    remedy: 'Have the fields separated, unless the camera took whole frames.',
  };
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
