import { failure, type Outcome, success } from '../core/reason';
import type { ExitReport } from '../exit/exitReport';
import { determineSpin } from '../exit/spin';
import { MOST_SMEAR } from '../image/surface';
import type { Face } from '../tracking/faces';
import { followMark } from '../tracking/mark';
import type { MeasuredFilm } from './measureFilm';
import type { Scene } from './scene';
import type { ReductionInputs } from './types';

/** Share of the outline a frame must show for its face to count. */
const WELL_SEEN = 0.8;

/** Rotation in the image plane from the mark on the ball, over all frames that show its whole face. */
export function spinOf(
  { shot }: ReductionInputs,
  scene: Scene,
  measured: MeasuredFilm,
  exit: Outcome<ExitReport>,
): Outcome<ReturnType<typeof determineSpin>> {
  if (!exit.ok) return exit;
  const notFlying = new Set([
    ...shot.edits.rejectedFrames,
    ...exit.value.leftOut.map(({ frame }) => frame),
  ]);
  let smeared = false;
  const faces = [...measured.centres].flatMap(([frame, centre]): Face[] => {
    if (!centre.ok || notFlying.has(frame)) return [];
    const { x, y, visible, surface, contrast, radius } = centre.value;
    const blur = measured.hintFor(frame)?.ball.blur ?? [0, 0];
    if (Math.hypot(...blur) > MOST_SMEAR * radius.value) smeared = true;
    if (surface === undefined || visible < WELL_SEEN) return [];
    return [{ frame, time: scene.clock.timeAt(frame, x, y), surface, contrast }];
  });
  if (smeared) {
    return failure(
      'markSmeared',
      `During one exposure the ball moves more than ${MOST_SMEAR} of its radius, which smears a mark on it.`,
      'Shorten the exposure and add light.',
      { most: `${MOST_SMEAR}` },
    );
  }
  faces.sort((a, b) => a.time - b.time);
  const turning = followMark(faces, scene.clock.frameInterval);
  if (!turning.ok) return turning;
  return success(
    determineSpin({
      ...turning.value,
      alias: (2 * Math.PI) / scene.clock.frameInterval,
      clockU: scene.clock.rateRelativeU,
      speed: exit.value.exitVelocity.value,
      ballRadius: shot.ball.diameter.value / 2,
      coverage: shot.coverage,
    }),
  );
}
