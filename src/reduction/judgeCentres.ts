import { failure, type Outcome, type Reason } from '../core/reason';
import type { ImagePoint } from '../core/units';
import type { CentreMeasurement } from '../image/types';
import type { Shot } from '../shot/schema';
import { type BreakUp, findBreakUp } from '../tracking/breakUp';
import { type MeasuredPlace, offPath } from '../tracking/consistency';
import { likenessOf } from '../tracking/gather';
import { along } from '../tracking/path';
import { glimpses, tumbles } from '../tracking/tumbles';
import type { FrameCandidates, Track } from '../tracking/types';
import { unsure } from '../tracking/unsure';
import { placesOf } from './onPlane';
import type { Scene } from './scene';
import { type Shake, steadied } from './shake';

export type Centres = ReadonlyMap<number, Outcome<CentreMeasurement>>;

export interface JudgedCentres {
  readonly centres: Centres;
  readonly breakUp: BreakUp | null;
}

const OFF_REMEDY =
  'Step to the frame: place the centre by hand if the ball can be seen there, or leave it out.';
const BROKE_REMEDY = 'The frames before it are used; film more of the flight before the break.';
/** Pieces are looked for within this many radii of where the ball would be. */
const PIECES_WITHIN = 2;

/** Centres without those that lie off the path of the others. */
export function keepOnPath(centres: Centres, track: Track, scene: Scene, shake: Shake): Centres {
  const { view } = scene.scale;
  const places = [...centres].flatMap(([frame, centre]): MeasuredPlace[] => {
    if (!centre.ok) return [];
    const flat = view.flattenMeasured(steadied(centre.value, shake.shiftIn(frame)));
    const { x, y } = centre.value;
    const time = scene.clock.timeAt(frame, x, y);
    return flat.ok ? [{ frame, time, ...flat.value, expected: along(track.path, time) }] : [];
  });
  places.sort((a, b) => a.frame - b.frame);
  return without(centres, offPath(places, track.axis, muzzleTime(track, scene), scene.ballRadius));
}

/** Centres without those known much less well than the others. */
export function keepSure(centres: Centres, { ballRadius }: Scene): Centres {
  const known = [...centres].flatMap(([frame, centre]) =>
    centre.ok ? [{ frame, varX: centre.value.varX, varY: centre.value.varY }] : [],
  );
  return without(centres, unsure(known, ballRadius));
}

/** No centre stands: with its look learnt from the film, the ball was found elsewhere in most frames. */
export const noneAlike = (centres: Centres): Centres =>
  noneOf(
    centres,
    failure(
      'lookDisagrees',
      'With the look that the film itself tells of the ball, it is found elsewhere in nearly all frames: something that looks like it goes along with it, its shadow say.',
      OFF_REMEDY,
    ),
  );

const GLIMPSED: Reason = {
  code: 'glimpsed',
  message:
    'Long before or after the other frames something round shows for a moment: a piece, not the ball.',
};

/** Centres, unless what was followed shows a ball only now and then; a person who said where the ball is knows better. */
export function keepRound(centres: Centres, { manualPoints, seeds }: Shot['edits']): Centres {
  const frames = [...centres].map(([frame, { ok }]) => ({ frame, found: ok }));
  frames.sort((a, b) => a.frame - b.frame);
  if (manualPoints.length + seeds.length > 0) return centres;
  return !tumbles(frames)
    ? without(centres, new Map([...glimpses(frames)].map((frame) => [frame, GLIMPSED])))
    : noneOf(
        centres,
        failure(
          'tumbles',
          'What was followed is round only now and then, as a flat piece that tumbles: it is not the ball.',
          'Say in one frame which thing is the ball, or draw the region of flight around it.',
        ),
      );
}

const noneOf = (centres: Centres, why: Outcome<never>): Centres =>
  new Map([...centres].map(([frame, centre]) => [frame, centre.ok ? why : centre]));

function without(centres: Centres, refused: ReadonlyMap<number, Reason>): Centres {
  return new Map(
    [...centres].map(([frame, centre]) => {
      const reason = refused.get(frame);
      return [
        frame,
        reason === undefined ? centre : { ok: false, reason: { ...reason, remedy: OFF_REMEDY } },
      ];
    }),
  );
}

/** Centres up to the frame in which the ball is no longer whole. */
export function keepWhole(
  centres: Centres,
  candidates: readonly FrameCandidates[],
  track: Track,
  scene: Scene,
): JudgedCentres {
  const placeIn = placesOf(track, scene);
  const found = new Map(candidates.map((one) => [one.frame, one.candidates]));
  const frames = [...centres.keys()].sort((a, b) => a - b);
  const breakUp = findBreakUp(
    frames.map((frame) => {
      const at = placeIn(frame);
      const near = (found.get(frame) ?? []).filter(
        ({ x, y }) =>
          at !== null && Math.hypot(x - at[0], y - at[1]) < PIECES_WITHIN * scene.ballRadius,
      );
      return {
        frame,
        centre: centres.get(frame) ?? NOT_MEASURED,
        inView: at === null ? 0 : shareInRegion(at, scene),
        likeness: near.length === 0 ? null : Math.max(...near.map(likenessOf)),
      };
    }),
  );
  if (breakUp === null) return { centres, breakUp };
  const broke: Outcome<CentreMeasurement> = {
    ok: false,
    reason: { ...breakUp.reason, remedy: BROKE_REMEDY },
  };
  return {
    centres: new Map(
      [...centres].map(([frame, centre]) => [frame, frame < breakUp.frame ? centre : broke]),
    ),
    breakUp,
  };
}

const NOT_MEASURED = failure('noBall', 'The ball was not measured in this frame.', undefined, {
  form: 'unmeasured',
});

/** Share of the disc at a place that lies in the region of flight; the picture's edges cut it straight. */
function shareInRegion([x, y]: ImagePoint, { region, ballRadius }: Scene): number {
  const [left, top, width, height] = region;
  const within = (at: number, low: number, high: number) =>
    segment((at - low) / ballRadius) * segment((high - at) / ballRadius);
  return within(x, left - 0.5, left + width - 0.5) * within(y, top - 0.5, top + height - 0.5);
}

/** Share of a unit disc on one side of a straight cut at a distance from its middle, negative: less than half. */
function segment(distance: number): number {
  const d = Math.max(-1, Math.min(1, distance));
  return 1 - (Math.acos(d) - d * Math.sqrt(1 - d * d)) / Math.PI;
}

/** When the track passes the muzzle; null where it has no speed along its axis. */
function muzzleTime({ path, axis }: Track, { muzzle }: Scene): number | null {
  const speed = path.velocity[0] * axis[0] + path.velocity[1] * axis[1];
  const way =
    (muzzle.point[0] - path.origin[0]) * axis[0] + (muzzle.point[1] - path.origin[1]) * axis[1];
  return speed > 0 ? path.time + way / speed : null;
}
