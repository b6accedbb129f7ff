import type { Reason } from '../core/reason';
import { median } from '../core/statistics';
import type { ImageVector } from '../core/units';
import { along, fitPath, type Run, type Sighting } from './path';
import type { Path, TrackPrior } from './types';

/** Share of its speed a ball may lose or gain over its path, beyond which it is not one flight. */
export const SPEED_CHANGE = 0.35;
/** Sizes, as multiples of the ball's, that no wrong scale accounts for. */
const SIZES = [0.7, 1.4] as const;
/** Share of the edge that must lie on a circle for its size to count. */
const ROUND = 0.6;
/** How far past the muzzle the gas still pushes, in radii (three diameters). */
const MUZZLE_ZONE = 6;
/** Fewer sightings in free flight tell nothing of a change of speed. */
const FEWEST_IN_FLIGHT = 8;
/** Change of speed that a picture seen at a slant feigns, as a share. */
const FEIGNED = 0.12;
/** Cosine of the largest angle between the path and a stated axis (20 degrees). */
const ALONG_AXIS = 0.94;
/** How far the path may pass beside the muzzle, in radii: the two are marked and fitted by eye at first. */
const BESIDE_MUZZLE = 0.8;

/** Why a run is not the ball's; null where it may be. */
export function faultOf({ path, sightings, seedsPassed }: Run, prior: TrackPrior): Reason | null {
  const first = sightings[0] as Sighting;
  const last = sightings[sightings.length - 1] as Sighting;
  const count = sightings.length;
  const seen = { first: first.frame, last: last.frame };
  const where = `frames ${first.frame} to ${last.frame}`;
  if (seedsPassed < prior.placed.length + prior.seeds.length) {
    return {
      code: 'besideSeeds',
      message: `Something in ${where} does not pass where the ball is said to be.`,
      values: { form: 'thing', ...seen },
    };
  }
  // Whoever names two places has told which thing it is.
  if (seedsPassed >= 2) return null;
  const travelled = Math.hypot(last.x - first.x, last.y - first.y);
  if (travelled < (count === 2 ? 0.3 : 1) * prior.radius) {
    return {
      code: 'standsStill',
      message: `Something of about the right size in ${where} hardly moves.`,
      values: seen,
    };
  }
  const against = againstPrior(path, prior);
  if (against !== null) {
    return {
      code: 'otherPath',
      message: `Something of about the right size in ${where} ${AGAINST[against]}.`,
      values: { form: against, ...seen },
    };
  }
  // The better half of its sightings must look like the whole disc; the rest may be partly hidden.
  const better = [...sightings].sort((a, b) => b.score - a.score).slice(0, Math.ceil(count / 2));
  const score = better.reduce((sum, s) => sum + s.score, 0) / better.length;
  const visible = better.reduce((sum, s) => sum + s.visible, 0) / better.length;
  if (score < (count < 4 ? 0.7 : 0.62) || visible < 0.6) {
    const likeness = score.toFixed(2);
    return {
      code: 'notRound',
      message: `Something that moves in ${where} does not have the ball's size and round shape (likeness ${likeness}).`,
      values: { likeness, ...seen },
    };
  }
  const sizes = better.flatMap(({ rim }) => (rim !== null && rim.round >= ROUND ? [rim.size] : []));
  if (2 * sizes.length > better.length) {
    const size = median(sizes);
    if (size < SIZES[0] || size > SIZES[1]) {
      const times = size.toFixed(2);
      return {
        code: 'otherSize',
        message: `Something round in ${where} has ${times} times the ball's diameter.`,
        values: { times, ...seen },
      };
    }
  }
  const span = last.frame - first.frame + 1;
  if (count < 0.4 * span || (count === 2 && span > 3)) {
    return {
      code: 'tooFewSightings',
      message: `Something of the right size is seen in only ${count} of the ${span} frames from ${first.frame} to ${last.frame}.`,
      values: { count, span, ...seen },
    };
  }
  if (speedChange(path, sightings) > SPEED_CHANGE) {
    return {
      code: 'unsteady',
      message: `Something of the right size in ${where} changes its speed too much for a ball in free flight.`,
      values: seen,
    };
  }
  return againstAir(sightings, path, prior, seen);
}

/** What a change of speed in free flight contradicts; null where nothing. */
function againstAir(
  sightings: readonly Sighting[],
  path: Path,
  { muzzle, radius, slowing }: TrackPrior,
  seen: { readonly first: number; readonly last: number },
): Reason | null {
  if (muzzle === null) return null;
  const speed = Math.hypot(...path.velocity);
  const ahead = ({ x, y }: Sighting) =>
    ((x - muzzle[0]) * path.velocity[0] + (y - muzzle[1]) * path.velocity[1]) / speed;
  const free = sightings.filter((s) => ahead(s) > MUZZLE_ZONE * radius && s.visible > 0.7);
  if (free.length < FEWEST_IN_FLIGHT) return null;
  const fitted = fitPath(
    free,
    free.map((s) => s.likeness),
    true,
  );
  if (fitted === null) return null;
  const [first, last] = [free[0] as Sighting, free[free.length - 1] as Sighting];
  const duration = Math.abs(last.time - first.time);
  const v = Math.hypot(...fitted.velocity);
  const gained =
    ((fitted.acceleration[0] * fitted.velocity[0] + fitted.acceleration[1] * fitted.velocity[1]) /
      v ** 2) *
    duration;
  const scatter = Math.sqrt(
    free.reduce((sum, s) => {
      const [x, y] = along(fitted, s.time);
      return sum + (s.x - x) ** 2 + (s.y - y) ** 2;
    }, 0) /
      (2 * free.length - 6),
  );
  // Standard deviation of the curvature of a parabola through n points evenly over a length: sqrt(720 / n) over its square.
  const gainedU = (scatter * Math.sqrt(720 / free.length)) / (v * duration);
  const where = `frames ${seen.first} to ${seen.last}`;
  const change = `${Math.abs(100 * gained).toFixed(0)} %`;
  const beyondDoubt = FEIGNED + 4 * gainedU;
  if (gained > beyondDoubt) {
    return {
      code: 'speedsUp',
      message: `Something of the right size in ${where} becomes faster in free flight, by ${change}.`,
      values: { form: 'thing', change, ...seen },
    };
  }
  if (slowing !== undefined && -gained > slowing * v * duration + beyondDoubt) {
    return {
      code: 'slowsTooMuch',
      message: `Something of the right size in ${where} loses ${change} of its speed, more than the air can take from the ball.`,
      values: { change, ...seen },
    };
  }
  return null;
}

/** How something does not move as the ball, as the end of a sentence. */
const AGAINST = {
  tooFast: 'moves faster than the ball can',
  otherWay: 'moves in another direction than stated',
  besideMuzzle: 'does not come from the muzzle',
} as const;

/** In what a motion contradicts what is known of the flight; null where it does not. */
export function againstPrior(
  path: Path,
  { axis, muzzle, maxSpeed, radius }: TrackPrior,
): keyof typeof AGAINST | null {
  const [vx, vy] = path.velocity;
  const speed = Math.hypot(vx, vy);
  if (maxSpeed !== undefined && speed > maxSpeed) return 'tooFast';
  if (axis !== null) {
    const ahead = vx * axis[0] + vy * axis[1];
    if (ahead < ALONG_AXIS * Math.hypot(axis[0], axis[1]) * speed) {
      return 'otherWay';
    }
  }
  if (muzzle !== null && offLine(path, muzzle) > BESIDE_MUZZLE * radius) {
    return 'besideMuzzle';
  }
  return null;
}

function offLine(path: Path, point: ImageVector): number {
  const [vx, vy] = path.velocity;
  const dx = point[0] - path.origin[0];
  const dy = point[1] - path.origin[1];
  return Math.abs(dx * vy - dy * vx) / Math.hypot(vx, vy);
}

/** Change of velocity over the run as a share of its speed. */
export function speedChange(path: Path, sightings: readonly Sighting[]): number {
  const first = sightings[0];
  const last = sightings[sightings.length - 1];
  const speed = Math.hypot(path.velocity[0], path.velocity[1]);
  if (first === undefined || last === undefined || speed === 0) return 0;
  const change = Math.hypot(path.acceleration[0], path.acceleration[1]);
  return (change * Math.abs(last.time - first.time)) / speed;
}
