import { failure, type Outcome } from '../core/reason';
import type { ImagePoint, ImageVector } from '../core/units';
import type { ExitReport } from '../exit/exitReport';
import { type BlurLength, determineStreakSpeed } from '../exit/streakSpeed';
import type { FlightPoint, SharedInputs } from '../exit/types';
import type { FlightLine } from '../geometry/flightLine';
import { flatDirection, imageDirection } from '../geometry/view';
import type { BallModel } from '../image/types';
import type { MeasuredFilm } from './measureFilm';
import type { Scene } from './scene';
import type { ReductionInputs } from './types';

/** Share of the outline a frame must show for its blur to count. */
const WELL_SEEN = 0.8;
/** Overexposed pixels cut the ramp of the blurred edge short. */
const SATURATED_SHARE = 0.2;

/** Speed from the motion blur of the frames that the fit used; `line` as in `Layout`. */
export function streakSpeedOf(
  { shot }: ReductionInputs,
  scene: Scene,
  measured: MeasuredFilm,
  exit: Outcome<ExitReport>,
  points: Outcome<readonly FlightPoint[]>,
  line: FlightLine,
  shared: SharedInputs,
): ReturnType<typeof determineStreakSpeed> {
  const { exposure } = shot.timing;
  if (exposure === null) {
    return failure(
      'exposureUnknown',
      'The exposure time is not given, and a length of blur is no speed without it.',
      'Type the exposure set on the camera, with its uncertainty.',
    );
  }
  if (!points.ok) return points;
  if (!exit.ok) return exit;
  const leftOut = new Set(exit.value.leftOut.map(({ frame }) => frame));
  const lengths = points.value.flatMap((point): BlurLength[] => {
    const { frame, along, shifts } = point;
    const centre = measured.centres.get(frame);
    const ball = measured.hintFor(frame)?.ball;
    if (leftOut.has(frame) || !centre?.ok || ball === undefined) return [];
    const { x, y, blur, visible, saturated } = centre.value;
    if (blur === undefined || visible < WELL_SEEN || saturated > SATURATED_SHARE) return [];
    const expected = expectedLength(ball, [x, y], scene, line);
    return [
      {
        frame,
        time: scene.clock.timeAt(frame, x, y),
        length: blur.stretch * expected,
        u: blur.u * expected,
        along,
        ...(shifts === undefined ? {} : { shifts }),
      },
    ];
  });
  const [x, y] = line.muzzle;
  const [ax, ay] = imageDirection(scene.atMuzzle, line.axis);
  return determineStreakSpeed({
    lengths,
    exposure,
    linesPerPixel: scene.clock.lineAt(x + ax, y + ay) - scene.clock.lineAt(x, y),
    shared,
    path: exit.value.path,
    coverage: shot.coverage,
  });
}

/** Length of blur a ball at this place was expected to have, along the flight axis, flat pixels. */
function expectedLength(
  { blur, camera }: BallModel,
  at: ImagePoint,
  { scale, atMuzzle }: Scene,
  { axis }: FlightLine,
): number {
  const along = ([dx, dy]: ImageVector) => Math.abs(dx * axis[0] + dy * axis[1]);
  if (camera?.plane !== undefined) return along(blur);
  const local = scale.view.jacobianAt(at);
  return along(flatDirection(local.ok ? local.value : atMuzzle, blur));
}
