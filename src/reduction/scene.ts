import { buildClock, type Clock } from '../clock/clock';
import type { FootageInfo } from '../core/film';
import { ExitframeError, orThrow } from '../core/reason';
import type { ImagePoint, ImageRect, ImageVector, Pixels } from '../core/units';
import { unitVector } from '../core/vector';
import { provisionalAxis } from '../geometry/flightLine';
import { determineScale, type ScaleReport } from '../geometry/scale';
import { flatDirection, type Jacobian } from '../geometry/view';
import type { Muzzle, Shot } from '../shot/schema';
import type { ReductionInputs } from './types';

/** What a shot states about its film, checked against the film: the ground every stage stands on. */
export interface Scene {
  readonly clock: Clock;
  readonly scale: ScaleReport;
  readonly muzzle: Muzzle;
  /** Direction of travel in the image as stated, else the one assumed until the path is known. */
  readonly axis: ImageVector;
  /** From directions and lengths in the image at the muzzle to those on the flight plane. */
  readonly atMuzzle: Jacobian;
  readonly ballRadius: Pixels;
  readonly region: ImageRect;
}

const FEWEST_FRAMES = 2;
export const SMALLEST_RADIUS: Pixels = 3;
/** Pixels may be this much longer one way than the other. */
const MOST_OBLONG = 1.5;

/**
 * Checks a shot against its film. Throws `ExitframeError`: `noMuzzle`, `muzzleOutside`, `regionOutside`,
 * `pointOutsideFilm`, `nonSquarePixels`, `ballTooSmall`, `ballTooLarge`, `singleFrame`, and what clock, view and
 * scale refuse.
 */
export function setScene({ shot, info, timestamps }: ReductionInputs): Scene {
  if (info.frameCount < FEWEST_FRAMES) {
    throw new ExitframeError(
      'singleFrame',
      'The film has a single frame; a speed needs at least three with the ball.',
      'Choose the clip itself, not a still from it.',
      { values: { form: 'film' } },
    );
  }
  const aspect = info.pixelAspect.toFixed(3);
  if (!(info.pixelAspect > 1 / MOST_OBLONG && info.pixelAspect < MOST_OBLONG)) {
    throw new ExitframeError(
      'nonSquarePixels',
      `The film's pixels are ${aspect} times as wide as high; the ball's disc is not looked for in a picture squeezed that much.`,
      'Export the clip with square pixels.',
      { values: { aspect } },
    );
  }
  const muzzle = shot.muzzle;
  if (muzzle === null) {
    throw new ExitframeError(
      'noMuzzle',
      'The muzzle plane is not marked.',
      'Mark the muzzle on a frame in the Scale step.',
    );
  }
  if (!inside(muzzle.point, info)) {
    throw new ExitframeError(
      'muzzleOutside',
      `The muzzle point (${muzzle.point.join(', ')}) lies outside the ${info.width} x ${info.height} frame.`,
      'Mark the muzzle inside the frame.',
      {
        values: {
          ...{ x: `${muzzle.point[0]}`, y: `${muzzle.point[1]}` },
          ...{ width: info.width, height: info.height },
        },
      },
    );
  }
  const { manualPoints, seeds } = shot.edits;
  const beyond = [...manualPoints, ...seeds].find(({ frame }) => frame >= info.frameCount);
  if (beyond !== undefined) {
    throw new ExitframeError(
      'pointOutsideFilm',
      `A place of the ball is given in frame ${beyond.frame}, but the film ends at frame ${info.frameCount - 1}.`,
      'Remove that point, or check that this is the footage it was placed on.',
      { values: { frame: beyond.frame, last: info.frameCount - 1 } },
    );
  }
  const clock = orThrow(buildClock(shot.timing, info, timestamps));
  const scale = orThrow(determineScale(shot.scale, info, muzzle.point));
  const ballRadius = shot.ball.diameter.value / 2 / scale.value;
  if (ballRadius < SMALLEST_RADIUS) {
    const across = (2 * ballRadius).toFixed(1);
    throw new ExitframeError(
      'ballTooSmall',
      `At this scale the ball is ${across} pixels across; at least ${2 * SMALLEST_RADIUS} are needed.`,
      'Check the known length and the ball diameter, or film closer.',
      { values: { across, least: 2 * SMALLEST_RADIUS } },
    );
  }
  if (ballRadius > Math.max(info.width, info.height) / 2) {
    const across = (2 * ballRadius).toFixed(0);
    throw new ExitframeError(
      'ballTooLarge',
      `At this scale the ball is ${across} pixels across, larger than the frame.`,
      'Check the known length and the ball diameter.',
      { values: { across } },
    );
  }
  return {
    clock,
    scale,
    muzzle,
    atMuzzle: orThrow(scale.view.jacobianAt(muzzle.point)),
    axis: muzzle.axis ?? provisionalAxis(muzzle.point, info.width, info.height),
    ballRadius,
    region: regionWithin(shot, info),
  };
}

/** Flat pixels per image pixel along the flight at the muzzle. */
export function alongImage({ atMuzzle, axis }: Pick<Scene, 'atMuzzle' | 'axis'>): number {
  const [x, y] = flatDirection(atMuzzle, unitVector(axis));
  return Math.hypot(x, y);
}

const inside = ([x, y]: ImagePoint, info: FootageInfo): boolean =>
  x >= -0.5 && y >= -0.5 && x <= info.width - 0.5 && y <= info.height - 0.5;

function regionWithin(shot: Shot, info: FootageInfo): ImageRect {
  const stated = shot.region.flight;
  if (stated === null) return [0, 0, info.width, info.height];
  const left = Math.max(0, Math.round(stated[0]));
  const top = Math.max(0, Math.round(stated[1]));
  const right = Math.min(info.width, Math.round(stated[0] + stated[2]));
  const bottom = Math.min(info.height, Math.round(stated[1] + stated[3]));
  if (right - left < 2 || bottom - top < 2) {
    throw new ExitframeError(
      'regionOutside',
      'The flight region lies outside the frame.',
      'Draw it again over the flight, or remove it.',
    );
  }
  return [left, top, right - left, bottom - top];
}
