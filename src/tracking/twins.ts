import { median } from '../core/statistics';
import type { Run, Sighting } from './path';
import type { TrackPrior } from './types';

/**
 * A rival with this share of the ball's merit, and this share of its likeness, may be the ball as well: pieces of the
 * seal before it take a third of its likeness.
 */
const MERIT = 0.8;
const LIKENESS = 0.65;
/** Share of the shorter one's frames in which both must be seen: else they may be one ball's path in two pieces. */
const TOGETHER = 0.3;
/** Speeds and directions within this share of each other are one motion: a shadow's, a reflection's. */
const ALIKE = 0.1;
/** A companion is told from the ball by passing the muzzle this much farther off, in radii. */
const FARTHER = 0.5;

/** Another run that could as well be the ball; null where there is none. */
export function twinOf(ball: Run, passed: readonly Run[], prior: TrackPrior): Run | null {
  const twin = passed.find(
    (run) =>
      run !== ball &&
      meritOf(run) >= MERIT * meritOf(ball) &&
      likenessOfRun(run) >= LIKENESS * likenessOfRun(ball) &&
      together(run, ball) &&
      !(companions(run, ball) && fartherFromMuzzle(run, ball, prior)),
  );
  return twin ?? null;
}

/** What speaks for a run: in how many frames it is seen, and how much it looks like the ball in them. */
export const meritOf = (run: Run): number => run.support * likenessOfRun(run);

/** Median over its sightings: a ball is round in every frame, a disc that tumbles only in some. */
const likenessOfRun = ({ sightings }: Run): number =>
  median(sightings.map(({ likeness }) => likeness));

function together(a: Run, b: Run): boolean {
  const frames = new Set(a.sightings.map((s) => s.frame));
  const shared = b.sightings.filter((s) => frames.has(s.frame)).length;
  return shared >= TOGETHER * Math.min(a.sightings.length, b.sightings.length);
}

function companions({ path: a }: Run, { path: b }: Run): boolean {
  const apart = Math.hypot(a.velocity[0] - b.velocity[0], a.velocity[1] - b.velocity[1]);
  return apart < ALIKE * Math.hypot(...b.velocity);
}

function fartherFromMuzzle(run: Run, ball: Run, { muzzle, radius }: TrackPrior): boolean {
  if (muzzle === null) return false;
  const off = ({ path, sightings }: Run): number => {
    const [vx, vy] = path.velocity;
    const { x, y } = sightings[sightings.length >> 1] as Sighting;
    return Math.abs((x - muzzle[0]) * vy - (y - muzzle[1]) * vx) / Math.hypot(vx, vy);
  };
  return off(run) > off(ball) + FARTHER * radius;
}
