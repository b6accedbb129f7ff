import type { FootageInfo } from '../core/film';
import type { LensCalibration } from '../core/lens';
import { failure, type Outcome, success } from '../core/reason';
import type { Scale } from '../shot/schema';

/** How far a lens's correction reaches. */
export { cornerReach } from '../geometry/lensReach';

export type Lens = NonNullable<Scale['lens']>;

/** A lens, and what it was found by, in the page's language: 'a chessboard, 11 of 13 pictures'. */
export interface LensOrigin {
  readonly lens: Lens;
  words(): string;
}

/** What a calibration gives the shot. */
export const lensOfCalibration = ({
  k1,
  k2,
  correlation,
  centre,
  centreU,
  focal,
}: LensCalibration): Lens => ({ k1, k2, correlation, centre, centreU, focal });

/** The focal length of an unknown lens, an angle of view of 53 degrees, and how little that says. */
const NOMINAL_FOCAL_U = 0.5;
const CENTRE_SHARE = 0.02;

/** A lens that bends nothing, to type a known one over. */
export function straightLens({ width, height }: Pick<FootageInfo, 'width' | 'height'>): Lens {
  const longer = Math.max(width, height);
  return {
    k1: { value: 0, u: 0 },
    k2: { value: 0, u: 0 },
    correlation: 0,
    centre: [(width - 1) / 2, (height - 1) / 2],
    centreU: CENTRE_SHARE * longer,
    focal: { value: longer, u: NOMINAL_FOCAL_U * longer },
  };
}

type Pictured = Pick<FootageInfo, 'width' | 'height'>;

/** Whether a lens found on pictures holds for the film. Failures: `picturesOtherSize`, `pixelsOblong`. */
export function holdsForFilm(pictures: Pictured, film: FootageInfo): Outcome<true> {
  if (pictures.width !== film.width || pictures.height !== film.height) {
    return failure(
      'picturesOtherSize',
      `The pictures have ${pictures.width} by ${pictures.height} pixels, the film ${film.width} by ${film.height}: what they tell of the lens does not hold for it.`,
      'Take the pictures with the camera set as for the shot: same size, zoom and focus.',
      {
        ...{ width: pictures.width, height: pictures.height },
        ...{ filmWidth: film.width, filmHeight: film.height },
      },
    );
  }
  if (film.pixelAspect !== 1) {
    return failure(
      'pixelsOblong',
      "The film's pixels are not square, which finding a lens from pictures takes for granted.",
      'Type the lens, or mark a plane instead.',
    );
  }
  return success(true);
}
