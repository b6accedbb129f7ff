import type { LineTimeReport } from '../clock/lineTime';
import type { FootageInfo } from '../core/film';
import type { GreyFrame } from '../core/frame';
import type { LensCalibration } from '../core/lens';
import type { Outcome } from '../core/reason';
import type { FootageFile } from '../footage/source';
import type { BoardSize } from '../image/chessboard/findBoard';
import type { LampQuestion } from '../reduction/calibrateClock';
import type { MarkedEdge } from '../reduction/calibrateLens';
import type { PicturedCalibration } from '../reduction/lensFromPictures';

/** What a clip of a lamp tells, and what clip it was. */
export interface LampAnswer {
  readonly info: FootageInfo;
  readonly report: Outcome<LineTimeReport>;
}

/** What pictures of a chessboard tell of the lens. */
export interface BoardAnswer extends PicturedCalibration {
  readonly info: FootageInfo;
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
  /** The lens from a clip or stills of a chessboard; `size` where its inner corners are known. */
  lensFromBoards(
    files: readonly FootageFile[],
    size: BoardSize | null,
    onShare: (share: number) => void,
  ): Promise<BoardAnswer>;
  /** The lens from edges in one frame that are straight in the scene. */
  lensFromEdges(frame: GreyFrame, edges: readonly MarkedEdge[]): Promise<Outcome<LensCalibration>>;
}
