import { failure, type Outcome, success } from '../core/reason';
import { firstAtTarget } from '../exit/target';
import type { FlightPoint } from '../exit/types';
import { type FlightLine, flightLine } from '../geometry/flightLine';
import { nominalScale } from '../geometry/scale';
import { viewCauses } from '../geometry/viewCauses';
import type { Scale, Shot } from '../shot/schema';
import type { MeasuredFilm } from './measureFilm';
import { flightPoints, type Sighting, sightings } from './positions';
import type { Scene } from './scene';
import { type Travel, travelAxis } from './travelAxis';
import type { ReductionInputs } from './types';

/** A shot's centres laid along its flight. */
export interface Layout {
  readonly seen: readonly Sighting[];
  /** Without those taken out by hand. */
  readonly kept: readonly Sighting[];
  /** Of these, the ones from which on the ball has met the target; empty without one. */
  readonly pastTarget: readonly Sighting[];
  readonly travel: Travel;
  /** On the flight plane, flat pixels. */
  readonly line: FlightLine;
  /** Metres along the path per flat pixel along the axis. */
  readonly metresPerPixel: number;
  /** Up to the target, with how far each moves for every cause of `viewCauses`, in its order. */
  readonly points: Outcome<readonly FlightPoint[]>;
}

/**
 * Lays the centres on the flight plane and along the flight. What lens and plane are not known to is carried by
 * doing so again with each of their causes moved by its standard uncertainty, up and down.
 */
export function layOut(
  { shot, info }: ReductionInputs,
  scene: Scene,
  film: Pick<MeasuredFilm, 'centres' | 'shake'>,
): Layout {
  const nominal = layAt(shot, scene, film);
  const shifts: number[][] = nominal.points.map(() => []);
  const movedBy = (scale: Scale): Outcome<Map<number, number>> => {
    const moved = sceneAt(scale, scene, info);
    if (!moved.ok) return moved;
    const { points, metresPerPixel } = layAt(shot, moved.value, film);
    return success(new Map(points.map(({ frame, along }) => [frame, along * metresPerPixel])));
  };
  for (const { source, up, down } of viewCauses(shot.scale)) {
    const above = movedBy(up);
    if (!above.ok) return { ...nominal, points: above };
    const below = movedBy(down);
    if (!below.ok) return { ...nominal, points: below };
    for (const [i, { frame }] of nominal.points.entries()) {
      const [a, b] = [above.value.get(frame), below.value.get(frame)];
      if (a === undefined || b === undefined) return { ...nominal, points: lost(source, frame) };
      shifts[i]?.push((a - b) / (2 * nominal.metresPerPixel));
    }
  }
  const points = nominal.points.map((point, i) =>
    shifts[i]?.length ? { ...point, shifts: shifts[i] } : point,
  );
  return { ...nominal, points: success(points) };
}

/** The centres under one scale, without what is not known of the view. */
export function layAt(shot: Shot, scene: Scene, film: Pick<MeasuredFilm, 'centres' | 'shake'>) {
  const rejected = new Set(shot.edits.rejectedFrames);
  const seen = sightings(film, shot.edits, scene.scale.view);
  const kept = seen.filter(({ frame }) => !rejected.has(frame));
  const whole = onLine(scene, kept);
  const met = frameAtTarget(shot, whole);
  const before = kept.filter(({ frame }) => frame < met);
  const { travel, line, metresPerPixel, points } =
    before.length === kept.length ? whole : onLine(scene, before);
  return {
    seen,
    kept,
    pastTarget: kept.filter(({ frame }) => frame >= met),
    travel,
    line,
    metresPerPixel,
    points,
  };
}

function onLine(scene: Scene, kept: readonly Sighting[]) {
  const travel = travelAxis(scene, kept);
  const line = flightLine(scene.muzzle.point, travel.axis);
  const points = flightPoints(kept, line, scene.clock);
  return { travel, line, metresPerPixel: scene.scale.value / travel.cosine, points };
}

/** The frame from which on the ball has met the target: past it the path may turn, so the axis is not fitted to it. */
function frameAtTarget(
  { target, ball }: Shot,
  { points, metresPerPixel }: ReturnType<typeof onLine>,
): number {
  if (target === null) return Number.POSITIVE_INFINITY;
  const distances = points.map(({ along }) => along * metresPerPixel);
  const first = firstAtTarget(distances, target.distance.value, ball.diameter.value / 2);
  return points[first]?.frame ?? Number.POSITIVE_INFINITY;
}

/** The same scene under another scale. */
export function sceneAt(scale: Scale, scene: Scene, info: ReductionInputs['info']): Outcome<Scene> {
  const moved = nominalScale(scale, info, scene.muzzle.point);
  if (!moved.ok) return moved;
  const atMuzzle = moved.value.view.jacobianAt(scene.muzzle.point);
  return atMuzzle.ok
    ? success({ ...scene, scale: moved.value, atMuzzle: atMuzzle.value })
    : atMuzzle;
}

const lost = (source: string, frame: number): Outcome<never> =>
  failure(
    'viewTooUncertain',
    `With the ${source} moved by its uncertainty, the centre of frame ${frame} has no place on the flight plane.`,
    'Calibrate the lens or mark the plane more closely, or reject frames near the edge of the picture.',
    { source, frame },
  );
