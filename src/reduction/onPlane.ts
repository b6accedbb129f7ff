import type { Outcome } from '../core/reason';
import type { ImagePoint, ImageVector } from '../core/units';
import { flatDirection, imageDirection } from '../geometry/view';
import { linkTrack } from '../tracking/link';
import { predictPath } from '../tracking/predict';
import type { FrameCandidates, TimeOf, Track } from '../tracking/types';
import type { FlightPrior } from './flightPrior';
import type { Scene } from './scene';

/** A track on the flight plane, where a steady flight is steady however lens and tilt bend its picture. */
export function linkOnPlane(
  found: readonly FrameCandidates[],
  { scale, muzzle, atMuzzle, ballRadius, clock }: Scene,
  prior: FlightPrior,
): Outcome<Track> {
  const { view } = scale;
  const laid = <T extends { readonly x: number; readonly y: number }>(place: T): T[] => {
    const flat = view.flatten([place.x, place.y]);
    return flat.ok ? [{ ...place, x: flat.value[0], y: flat.value[1] }] : [];
  };
  return linkTrack(
    found.map(({ frame, candidates }) => ({ frame, candidates: candidates.flatMap(laid) })),
    {
      ...prior,
      axis: muzzle.axis === null ? null : flatDirection(atMuzzle, muzzle.axis),
      muzzle: muzzle.point,
      radius: ballRadius,
      timeOf: timeOnPlane({ scale, clock }),
      placed: prior.placed.flatMap(laid),
      seeds: prior.seeds.flatMap(laid),
    },
  );
}

/** Time of the line that shows a place on the flight plane. */
const timeOnPlane =
  ({ scale, clock }: Pick<Scene, 'scale' | 'clock'>): TimeOf =>
  (frame, x, y) => {
    const shown = scale.view.show([x, y]);
    return clock.timeAt(frame, ...(shown.ok ? shown.value : ([x, y] as const)));
  };

/** Where a track has the ball in a frame's picture; null where the picture does not show that place. */
export function placesOf(track: Track, scene: Scene): (frame: number) => ImagePoint | null {
  const predict = predictPath(track, timeOnPlane(scene));
  const found = new Map(track.points.map(({ frame, at }) => [frame, at]));
  return (frame) => {
    const shown = scene.scale.view.show(found.get(frame) ?? predict(frame));
    return shown.ok ? shown.value : null;
  };
}

/** A track's direction in the picture at the muzzle. */
export const trackInImage = ({ axis }: Track, { atMuzzle }: Scene): ImageVector =>
  imageDirection(atMuzzle, axis);
