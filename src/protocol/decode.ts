import type { FilmFacts } from '../footage/ffmpeg/decodeSpan';
import type { Span } from '../footage/range';
import type { FootageFile } from '../footage/source';

/** A thread that decodes spans of one film under ffmpeg; started for one pass through it, ended after. */
export interface DecodeApi {
  open(file: FootageFile, film: FilmFacts): Promise<void>;
  /** Grey values of the frames wanted, upright; handed over. */
  decode(span: Span): Promise<readonly (Uint8Array | Uint16Array)[]>;
}
