import type { GreyFrame } from '../core/frame';
import type { LensCalibration } from '../core/lens';
import { failure, type Outcome, type Reason } from '../core/reason';
import type { ImagePoint } from '../core/units';
import { lensFromEdgePoints } from '../geometry/lensFromEdges';
import { calibrateFromBoards } from '../image/chessboard/calibrate';
import { type BoardSize, type BoardView, findBoard } from '../image/chessboard/findBoard';
import type { Vision } from '../image/opencv/vision';
import { traceEdge } from '../image/straightEdge';

/** The lens from chessboards, with what every frame gave. */
export interface BoardCalibration {
  readonly lens: Outcome<LensCalibration>;
  readonly boards: readonly BoardView[];
  readonly refused: readonly { readonly frame: number; readonly reason: Reason }[];
}

/**
 * The lens from stills or chosen frames of a clip that show one chessboard from several sides (about a third of a
 * second a frame of 640 x 480). `size`: inner corners, where known. Tens of frames do: take them evenly from a clip.
 */
export async function calibrateLensFromBoards(
  frames: AsyncIterable<GreyFrame> | Iterable<GreyFrame>,
  size: BoardSize | null,
  vision: Pick<Vision, 'fitCamera'>,
): Promise<BoardCalibration> {
  const boards: BoardView[] = [];
  const refused: { frame: number; reason: Reason }[] = [];
  let shape: readonly [number, number] | null = null;
  for await (const frame of frames) {
    shape = [frame.width, frame.height];
    const board = findBoard(frame, size);
    if (board.ok) boards.push(board.value);
    else refused.push({ frame: frame.index, reason: board.reason });
  }
  const lens =
    shape === null
      ? failure('noFrames', 'No pictures of the chessboard were given.')
      : calibrateFromBoards(boards, ...shape, vision);
  return { lens, boards, refused };
}

/** An edge straight in the scene, by its ends. */
export type MarkedEdge = readonly [from: ImagePoint, to: ImagePoint];

/** k1 of the lens from edges in one frame that are straight in the scene: the barrel, a ruler, a table's edge. */
export function lensFromEdges(
  frame: GreyFrame,
  edges: readonly MarkedEdge[],
): Outcome<LensCalibration> {
  const traced: (readonly ImagePoint[])[] = [];
  for (const [from, to] of edges) {
    const points = traceEdge(frame, from, to);
    if (!points.ok) return points;
    traced.push(points.value);
  }
  return lensFromEdgePoints(traced, frame.width, frame.height);
}
