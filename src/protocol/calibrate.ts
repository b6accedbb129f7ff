import type { LineTimeReport } from '../clock/lineTime';
import type { FootageInfo } from '../core/film';
import type { Outcome } from '../core/reason';
import type { FootageFile } from '../footage/source';
import type { LampQuestion } from '../reduction/calibrateClock';

/** What a clip of a lamp tells, and what clip it was. */
export interface LampAnswer {
  readonly info: FootageInfo;
  readonly report: Outcome<LineTimeReport>;
}

/**
 * A calibrating worker: started for one piece of work, which reads footage of its own beside the shot's film, and
 * ended with it. To cancel, end the worker.
 */
export interface CalibrateApi {
  /** `onShare` gets 0..1. Throws what opening and reading footage throws. */
  lineTime(
    files: readonly FootageFile[],
    question: LampQuestion,
    onShare: (share: number) => void,
  ): Promise<LampAnswer>;
}
