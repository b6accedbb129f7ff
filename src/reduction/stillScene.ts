import type { GreyFrame } from '../core/frame';
import type { ImagePoint, ImageVector } from '../core/units';
import { backgroundMover } from '../image/moved';
import { createRegistrars, type Shift } from '../image/registration';
import type { Background, BallModel } from '../image/types';
import type { SurveySetup } from './types';

/** Candidates are found whole changes by: a smaller shift of the scene leaves none at its edges, px. */
const LEAST_FOR_CANDIDATES = 0.2;
/** How far around the ball its surroundings are looked at: radii, and px more. */
const AROUND_RADII = 3;
const AROUND = 40;

/** The scene that frames are compared with, put where each frame has it. */
export function stillScene({ background, launcher }: SurveySetup) {
  const whole = [0, 0, background.width, background.height] as const;
  // What is moved as a whole and what around the ball is kept apart: each undoes only its own.
  const moveWhole = backgroundMover(background);
  const moveAround = backgroundMover(background);
  const [scene, end] = createRegistrars(background, [{ outside: launcher }, { inside: launcher }]);
  return {
    shiftOf: (frame: GreyFrame): Shift | null => scene?.(frame) ?? null,
    launcherOf: (frame: GreyFrame): Shift | null => end?.(frame) ?? null,
    /** Good for finding rough places. */
    rough: (shift: ImageVector): Background =>
      Math.hypot(...shift) > LEAST_FOR_CANDIDATES ? moveWhole(shift, whole) : background,
    /** True around the ball near `at`. */
    around(at: ImagePoint, { radius, blur }: BallModel, shift: ImageVector): Background {
      const reach = AROUND_RADII * radius + Math.hypot(...blur) + AROUND;
      return moveAround(shift, [at[0] - reach, at[1] - reach, 2 * reach, 2 * reach]);
    },
  };
}
