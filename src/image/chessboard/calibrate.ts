import type { LensCalibration } from '../../core/lens';
import { failure, type Outcome, success } from '../../core/reason';
import type { TargetView, Vision } from '../opencv';
import type { BoardView } from './findBoard';
import { lensScatter } from './lensScatter';

/** Three views from different sides are the least that tell focal length, centre and both terms. */
const FEWEST_VIEWS = 3;
/** More views cost time and bring little. */
const MOST_VIEWS = 40;
/** A lens that puts corners farther off on average is not described by two radial terms, or the board is not flat. */
const MOST_RMS = 2;
/** Views all alike leave the focal length open. */
const MOST_FOCAL_U = 0.05;

/**
 * The lens from several views of one chessboard. Its fields' size plays no part: only their being equal squares does.
 * Failures: `tooFewBoards`, `boardsAlike`, `boardsDoNotFit`.
 */
export function calibrateFromBoards(
  boards: readonly BoardView[],
  width: number,
  height: number,
  vision: Pick<Vision, 'fitCamera'>,
): Outcome<LensCalibration> {
  if (boards.length < FEWEST_VIEWS) {
    return failure(
      'tooFewBoards',
      `The chessboard was found in ${boards.length} picture${boards.length === 1 ? '' : 's'}; a lens needs at least ${FEWEST_VIEWS}.`,
      'Film the board from several sides, tilted by 20 to 40 degrees, and into the corners of the picture.',
    );
  }
  const used = evenly(boards, MOST_VIEWS);
  const views: TargetView[] = used.map(({ corners }) => ({
    target: corners.map(({ column, row }) => [column, row] as const),
    image: corners.map(({ at }) => at),
  }));
  const camera = vision.fitCamera(views, width, height);
  if (!(camera.rms < MOST_RMS) || !(camera.focal > 0)) {
    return failure(
      'boardsDoNotFit',
      `The corners miss a lens with two radial terms by ${camera.rms.toPrecision(2)} px on average.`,
      'Use a flat board, keep focus and zoom as they are, and remove blurred pictures.',
    );
  }
  const scatter = lensScatter(camera, views);
  if (scatter === null || !(scatter.focal / camera.focal < MOST_FOCAL_U)) {
    return failure(
      'boardsAlike',
      'The views of the board are too much alike to tell the focal length of the lens.',
      'Tilt the board in different directions, by 20 to 40 degrees.',
    );
  }
  return success({
    k1: { value: camera.k1, u: scatter.k1 },
    k2: { value: camera.k2, u: scatter.k2 },
    correlation: scatter.correlation,
    centre: camera.centre,
    centreU: Math.hypot(...scatter.centre) / Math.SQRT2,
    focal: { value: camera.focal, u: scatter.focal },
    rms: camera.rms,
    parts: used.map(({ frame, corners }, i) => ({
      name: `frame ${frame}`,
      points: corners.length,
      rms: camera.viewRms[i] as number,
    })),
  });
}

function evenly<T>(items: readonly T[], most: number): readonly T[] {
  if (items.length <= most) return items;
  return Array.from(
    { length: most },
    (_, i) => items[Math.round((i * (items.length - 1)) / (most - 1))] as T,
  );
}
