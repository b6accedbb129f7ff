import type { Reason } from '../core/reason';
import type { ImageVector } from '../core/units';
import type { Run, Sighting } from './path';
import type { Path, TrackPrior } from './types';

/** Share of its speed a ball may lose or gain over its path, beyond which it is not one flight. */
export const SPEED_CHANGE = 0.35;
/** Cosine of the largest angle between the path and a stated axis (20 degrees). */
const ALONG_AXIS = 0.94;
/** How far the path may pass beside the muzzle, in radii: the two are marked and fitted by eye at first. */
const BESIDE_MUZZLE = 1.5;

/** Why a run is not the ball's; null where it may be. */
export function faultOf({ path, sightings }: Run, prior: TrackPrior): Reason | null {
  const first = sightings[0] as Sighting;
  const last = sightings[sightings.length - 1] as Sighting;
  const count = sightings.length;
  const where = `frames ${first.frame} to ${last.frame}`;
  if (sightings.filter((s) => s.candidate < 0).length >= 2) return null;
  const travelled = Math.hypot(last.x - first.x, last.y - first.y);
  if (travelled < (count === 2 ? 0.3 : 1) * prior.radius) {
    return {
      code: 'standsStill',
      message: `Something of about the right size in ${where} hardly moves.`,
    };
  }
  const against = againstPrior(path, prior);
  if (against !== null) {
    return {
      code: 'otherPath',
      message: `Something of about the right size in ${where} ${against}.`,
    };
  }
  // The better half of its sightings must look like the whole disc; the rest may be partly hidden.
  const better = [...sightings].sort((a, b) => b.score - a.score).slice(0, Math.ceil(count / 2));
  const score = better.reduce((sum, s) => sum + s.score, 0) / better.length;
  const visible = better.reduce((sum, s) => sum + s.visible, 0) / better.length;
  if (score < (count < 4 ? 0.7 : 0.62) || visible < 0.6) {
    return {
      code: 'notRound',
      message: `Something that moves in ${where} does not have the ball's size and round shape (likeness ${score.toFixed(2)}).`,
    };
  }
  const span = last.frame - first.frame + 1;
  if (count < 0.4 * span || (count === 2 && span > 3)) {
    return {
      code: 'tooFewSightings',
      message: `Something of the right size is seen in only ${count} of the ${span} frames from ${first.frame} to ${last.frame}.`,
    };
  }
  if (speedChange(path, sightings) > SPEED_CHANGE) {
    return {
      code: 'unsteady',
      message: `Something of the right size in ${where} changes its speed too much for a ball in free flight.`,
    };
  }
  return null;
}

/** In what a motion contradicts what is known of the flight; null where it does not. */
export function againstPrior(
  path: Path,
  { axis, muzzle, maxSpeed, radius }: TrackPrior,
): string | null {
  const [vx, vy] = path.velocity;
  const speed = Math.hypot(vx, vy);
  if (maxSpeed !== undefined && speed > maxSpeed) return 'moves faster than the ball can';
  if (axis !== null) {
    const ahead = vx * axis[0] + vy * axis[1];
    if (ahead < ALONG_AXIS * Math.hypot(axis[0], axis[1]) * speed) {
      return 'moves in another direction than stated';
    }
  }
  if (muzzle !== null && offLine(path, muzzle) > BESIDE_MUZZLE * radius) {
    return 'does not come from the muzzle';
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
