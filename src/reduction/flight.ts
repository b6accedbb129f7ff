import { orUnavailable, type Quantity, type Reported } from '../core/estimate';
import { quantity } from '../core/quantity';
import { failure, type Outcome, success } from '../core/reason';
import type { ImageVector } from '../core/units';
import { boreAcceleration } from '../exit/bore';
import { budgetExit } from '../exit/determineExit';
import { dragOf, WIDE_DRAG } from '../exit/drag';
import { bendU, slopeAtMuzzle } from '../exit/elevation';
import type { ExitReport } from '../exit/exitReport';
import { flightReadings } from '../exit/flightReport';
import { noTarget, targetReport } from '../exit/target';
import type { FlightPoint } from '../exit/types';
import { type FlightLine, flightLine } from '../geometry/flightLine';
import { imageDirection } from '../geometry/view';
import { viewCauses } from '../geometry/viewCauses';
import type { FlightReport } from '../shot/result';
import type { Shot } from '../shot/schema';
import { effectiveDof } from '../uncertainty/quantity';
import { type Layout, layAt, sceneAt } from './layOut';
import type { MeasuredFilm } from './measureFilm';
import { axisOfPath, flightPoints, type Sighting } from './positions';
import type { Scene } from './scene';
import type { throughWall } from './throughWall';
import type { ReductionInputs } from './types';

/** The exit with the centres past the target told to be left out. */
export const withTarget = (
  exit: Outcome<ExitReport>,
  { pastTarget }: Pick<Layout, 'pastTarget'>,
): Outcome<ExitReport> =>
  exit.ok && pastTarget.length > 0
    ? success({
        ...exit.value,
        leftOut: [
          ...exit.value.leftOut,
          ...pastTarget.map(({ frame }) => ({
            frame,
            reason: {
              code: 'pastTarget',
              message: 'The ball has met the target, which changes its motion.',
            },
          })),
        ],
      })
    : exit;

/** What else is read off the flight. */
export function concludeFlight(
  inputs: ReductionInputs,
  scene: Scene,
  measured: MeasuredFilm,
  exit: Outcome<ExitReport>,
  layout: Layout,
  behindWall: ReturnType<typeof throughWall>,
): FlightReport {
  const { shot } = inputs;
  const { target, coverage } = shot;
  if (!exit.ok) {
    const none = { unavailable: exit.reason };
    return {
      elevation: none,
      kineticEnergy: none,
      momentum: none,
      boreAcceleration: none,
      deceleration: none,
      dragCoefficient: none,
      target: target === null ? null : noTarget(exit.reason),
    };
  }
  const { fitted } = exit.value;
  return {
    elevation: orUnavailable(
      elevationOf(inputs, scene, measured, exit.value),
      (angle): Reported => angle,
    ),
    ...flightReadings(fitted, coverage),
    boreAcceleration: boreOf(shot, exit.value, behindWall),
    target:
      target === null
        ? null
        : targetReport(
            fitted,
            afterTarget(layout, scene, target.distance.value, shot.ball.diameter.value / 2),
            target.distance,
            coverage,
          ),
  };
}

/** Fitted together with the flight whatever model the exit comes from: the exit then does not depend on the bore. */
function boreOf(
  { fit: { model, robust }, coverage, seed }: Shot,
  { fitted }: ExitReport,
  { points, shared }: ReturnType<typeof throughWall>,
): Reported {
  if (!points.ok) return { unavailable: points.reason };
  if (model === 'boreAndFlight') return boreAcceleration(fitted, coverage);
  const together = budgetExit(points.value, shared, {
    model: 'boreAndFlight',
    robust,
    coverage,
    seed,
  });
  return together.ok
    ? boreAcceleration(together.value.report.fitted, coverage)
    : { unavailable: together.reason };
}

/** Angle of the direction of travel at the muzzle above the image's rows, rad; what lens and plane are not known to is counted. */
function elevationOf(
  { shot, info }: ReductionInputs,
  scene: Scene,
  measured: MeasuredFilm,
  { leftOut, exitVelocity, fitted: { nominal } }: ExitReport,
): Outcome<Quantity> {
  const unused = new Set(leftOut.map(({ frame }) => frame));
  const bend = bendU(exitVelocity.value, dragOf(nominal, WIDE_DRAG.value));
  const under = (view: Scene) => {
    const { kept, line, metresPerPixel } = layAt(shot, view, measured);
    const used = kept.filter(({ frame }) => !unused.has(frame));
    return directionAtMuzzle(used, line, view, bend * metresPerPixel);
  };
  const nominalAngle = under(scene);
  if (nominalAngle === null) return undetermined;
  const { value, u: own, dof } = nominalAngle;
  const moved: number[] = [];
  for (const { up, down } of viewCauses(shot.scale)) {
    const [above, below] = [sceneAt(up, scene, info), sceneAt(down, scene, info)];
    if (!above.ok) return above;
    if (!below.ok) return below;
    const [a, b] = [under(above.value), under(below.value)];
    if (a === null || b === null) return undetermined;
    moved.push((a.value - b.value) / 2);
  }
  const u = Math.hypot(own, ...moved);
  return success(quantity(value, u, effectiveDof(u, [{ contribution: own, dof }]), shot.coverage));
}

const undetermined = failure(
  'axisUndetermined',
  'The path is too short to give a direction.',
  'Film a longer stretch of the flight.',
);

function directionAtMuzzle(
  used: readonly Sighting[],
  { axis, muzzle }: FlightLine,
  { atMuzzle }: Scene,
  bend: number,
): { value: number; u: number; dof: number | null } | null {
  const [ax, ay] = axis;
  const along = flightLine(muzzle, axis);
  const across = flightLine(muzzle, [-ay, ax]);
  const places = used.flatMap(({ centre }) => {
    if (!centre.ok) return [];
    const { x, y, varX, varY, covXY } = centre.value.flat;
    return [
      {
        along: along.along(x, y),
        across: across.along(x, y),
        acrossU: across.alongU(varX, varY, covXY),
      },
    ];
  });
  const slope = slopeAtMuzzle(places, bend);
  if (slope === null) return null;
  const angleAt = (by: number) => above(imageDirection(atMuzzle, [ax - by * ay, ay + by * ax]));
  const value = angleAt(slope.value);
  const u = Math.abs(angleAt(slope.value + slope.u) - angleAt(slope.value - slope.u)) / 2;
  return { value, u, dof: slope.dof };
}

/** Rows run downwards; whether the flight is to the right or to the left, upwards counts positive. */
const above = ([dx, dy]: ImageVector): number => Math.atan2(-dy, Math.abs(dx));

/** The centres past the target along their own direction, counted on from the target's distance, in the flight's pixels. */
function afterTarget(
  { pastTarget, line, metresPerPixel }: Layout,
  { scale, clock }: Scene,
  distance: number,
  ballRadius: number,
): Outcome<readonly FlightPoint[]> {
  const clear = pastTarget.filter(
    ({ centre }) =>
      centre.ok &&
      Math.abs(line.along(centre.value.flat.x, centre.value.flat.y) * metresPerPixel - distance) >
        ballRadius,
  );
  const path = axisOfPath(clear);
  const own = flightLine(
    line.pointAt(distance / metresPerPixel),
    path.ok ? path.value.axis : line.axis,
  );
  const stretch = scale.value / metresPerPixel;
  return success(
    flightPoints(clear, own, clock).map((point) => ({
      ...point,
      along: point.along * stretch + distance / metresPerPixel,
      alongU: point.alongU * stretch,
    })),
  );
}
