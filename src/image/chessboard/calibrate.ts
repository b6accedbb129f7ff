import type { LensCalibration } from '../../core/lens';
import { failure, type Outcome, success } from '../../core/reason';
import { median } from '../../core/statistics';
import type { FittedCamera, TargetView } from '../opencv/camera';
import type { Vision } from '../opencv/vision';
import type { BoardView } from './findBoard';
import { lensScatter } from './lensScatter';
import { cameraParameters, project } from './project';

/** Three views from different sides are the least that tell focal length, centre and both terms. */
const FEWEST_VIEWS = 3;
/** More views cost time and bring little. */
const MOST_VIEWS = 40;
/** A lens that puts corners farther off on average is not described by two radial terms, or the board is not flat. */
const MOST_RMS = 2;
/** Views all alike leave the focal length open. */
const MOST_FOCAL_U = 0.05;
/** Corners this many times farther off than half of all are strays: about six standard deviations of normal scatter. */
const STRAY = 5;
const FEWEST_LEFT = 8;

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
      { boards: boards.length, fewest: FEWEST_VIEWS },
    );
  }
  const used = evenly(boards, MOST_VIEWS);
  const all: TargetView[] = used.map(({ corners }) => ({
    target: corners.map(({ column, row }) => [column, row] as const),
    image: corners.map(({ at }) => at),
  }));
  const first = vision.fitCamera(all, width, height);
  const views = withoutStrays(first, all);
  const camera = views === all ? first : vision.fitCamera(views, width, height);
  if (!(camera.rms < MOST_RMS) || !(camera.focal > 0)) {
    return failure(
      'boardsDoNotFit',
      `The corners miss a lens with two radial terms by ${camera.rms.toPrecision(2)} px on average.`,
      'Use a flat board, keep focus and zoom as they are, and remove blurred pictures.',
      { off: camera.rms.toPrecision(2) },
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
    parts: used.map(({ frame }, i) => ({
      name: `frame ${frame}`,
      points: views[i]?.image.length ?? 0,
      rms: camera.viewRms[i] as number,
    })),
  });
}

/** Without corners that miss the fitted camera by far more than the others: half hidden, or not of the board. */
function withoutStrays(camera: FittedCamera, views: readonly TargetView[]): readonly TargetView[] {
  const misses = views.map((view, v) => {
    const places = project(view, cameraParameters(camera, v));
    return view.image.map(([x, y], i) =>
      Math.hypot(x - (places[2 * i] as number), y - (places[2 * i + 1] as number)),
    );
  });
  const limit = STRAY * median(misses.flat());
  const fits = (v: number, i: number) => (misses[v]?.[i] as number) <= limit;
  if (misses.flat().every((miss) => miss <= limit)) return views;
  const kept = views.map(({ target, image }, v) => ({
    target: target.filter((_, i) => fits(v, i)),
    image: image.filter((_, i) => fits(v, i)),
  }));
  // A view with few corners left says little and may have no pose.
  return kept.map((view, v) =>
    view.target.length < FEWEST_LEFT ? (views[v] as TargetView) : view,
  );
}

function evenly<T>(items: readonly T[], most: number): readonly T[] {
  if (items.length <= most) return items;
  return Array.from(
    { length: most },
    (_, i) => items[Math.round((i * (items.length - 1)) / (most - 1))] as T,
  );
}
