import type { FrameRange } from '../core/film';
import type { SecondReading } from '../footage/givenFrames';
import type { FootageFile } from '../footage/source';

/** The thread that reads frames a second time; started for one reading, ended to cancel it. */
export interface SecondReadingApi {
  /** `core`: the ffmpeg core as compiled by the thread that asks. */
  read(
    file: FootageFile,
    ranges: readonly FrameRange[],
    core: WebAssembly.Module,
  ): Promise<SecondReading>;
}
