import { failure, type Outcome, type Reason, success } from '../core/reason';
import type { ImageVector } from '../core/units';
import type { Candidate } from '../image/types';
import { along, fitPath, lineDirection, type Sighting, throughTwo } from './path';
import type { FrameCandidates, Path, Track, TrackPrior } from './types';

/** Frame gaps over which two sightings are tried as one motion: short for two frames, long for accuracy. */
const GAPS = [1, 2, 3, 5, 8, 13, 21, 34] as const;
/** Starting motions refined in full. */
const REFINED = 12;
/** How far a sighting may lie from the path, in radii: a half-hidden ball is sighted off its centre. */
const NEAR = 0.6;
/** Share of its speed a ball may lose or gain over its path, beyond which it is not one flight. */
const SPEED_CHANGE = 0.35;
/** Cosine of the largest angle between the path and a stated axis (20 degrees). */
const ALONG_AXIS = 0.94;
/** How far the path may pass beside the muzzle, in radii: the two are marked and fitted by eye at first. */
const BESIDE_MUZZLE = 1.5;
const MOST_RIVALS = 4;

interface Run {
  readonly path: Path;
  readonly sightings: readonly Sighting[];
  readonly support: number;
}

/**
 * Finds the one object of the ball's size that moves steadily on a nearly straight path, and its
 * sightings in the frames. Deterministic: motions through pairs of sightings are compared by how many
 * frames they explain, the best are refined by least squares with a slow change of speed, and the
 * ball is the best supported that passes as a ball. Frames may be missing.
 */
export function linkTrack(frames: readonly FrameCandidates[], prior: TrackPrior): Outcome<Track> {
  const sightings = gather(frames, prior);
  const runs = searchRuns(sightings, prior);
  const judged = runs.map((run) => ({ run, fault: faultOf(run, prior) }));
  const ball = judged.find(({ fault }) => fault === null)?.run;
  if (ball === undefined) return failure('noBall', whatWasSeen(frames, judged), NO_BALL_REMEDY);

  const travel = ball.path.velocity;
  const axis = lineDirection(ball.sightings, travel, NEAR * prior.radius);
  const speed = travel[0] * axis[0] + travel[1] * axis[1];
  const rivals = judged
    .filter(({ run }) => run !== ball)
    .slice(0, MOST_RIVALS)
    .map(({ run, fault }) => ({
      frames: run.sightings.length,
      reason: fault ?? {
        code: 'fewerFrames',
        message: `Another object follows its own path over ${run.sightings.length} frames, fewer than the ball's ${ball.sightings.length}.`,
      },
    }));
  const byFrame = new Map(frames.map((frame) => [frame.frame, frame]));
  return success({
    points: ball.sightings.map((s) => ({
      frame: s.frame,
      candidate: byFrame.get(s.frame)?.candidates[s.candidate] ?? manualCandidate(s),
      at: along(ball.path, s.time),
    })),
    path: ball.path,
    axis,
    speed,
    rivals,
  });
}

const NO_BALL_REMEDY =
  'Check the known length and the ball diameter (they give the size looked for), the region of flight and that the clip shows the ball; or place its centre by hand in two frames or more.';

const manualCandidate = (s: Sighting): Candidate => ({ x: s.x, y: s.y, score: 1, visible: 1 });

function gather(frames: readonly FrameCandidates[], prior: TrackPrior): Sighting[][] {
  const byHand = new Map(prior.seeds.map((point) => [point.frame, point]));
  return [...frames]
    .sort((a, b) => a.frame - b.frame)
    .map(({ frame, candidates }) => {
      const point = byHand.get(frame);
      if (point !== undefined) {
        const { x, y } = point;
        return [
          { frame, time: prior.timeOf(frame, x, y), x, y, score: 1, visible: 1, candidate: -1 },
        ];
      }
      return candidates.map(({ x, y, score, visible }, candidate) => ({
        frame,
        time: prior.timeOf(frame, x, y),
        x,
        y,
        score,
        visible,
        candidate,
      }));
    })
    .filter((inFrame) => inFrame.length > 0);
}

/** Distinct runs, best supported first, no sighting in two of them. */
function searchRuns(sightings: readonly (readonly Sighting[])[], prior: TrackPrior): Run[] {
  const runs: Run[] = [];
  let left = sightings;
  for (let round = 0; round <= MOST_RIVALS; round++) {
    const run = bestRun(left, prior);
    if (run === null || run.sightings.length < 2) break;
    runs.push(run);
    const taken = new Set(run.sightings);
    left = left
      .map((inFrame) => inFrame.filter((s) => !taken.has(s)))
      .filter((inFrame) => inFrame.length > 0);
  }
  return runs;
}

function bestRun(sightings: readonly (readonly Sighting[])[], prior: TrackPrior): Run | null {
  const starts: Run[] = [];
  for (let i = 0; i < sightings.length; i++) {
    for (const gap of GAPS) {
      const later = sightings[i + gap];
      if (later === undefined) break;
      for (const a of sightings[i] as readonly Sighting[]) {
        for (const b of later) {
          const path = throughTwo(a, b);
          if (path === null || !plausible(path, a, b, prior)) continue;
          const run = supported(path, sightings, prior.radius, NEAR);
          starts.push(run);
        }
      }
    }
  }
  starts.sort((a, b) => b.support - a.support);
  let best: Run | null = null;
  for (const start of starts.slice(0, REFINED)) {
    const run = refine(start, sightings, prior.radius);
    if (best === null || run.support > best.support) best = run;
  }
  return best;
}

/** Whether two sightings may be one ball's, judged by the motion through them. */
function plausible(path: Path, a: Sighting, b: Sighting, prior: TrackPrior): boolean {
  // A step smaller than this share of the radius a frame is a thing that stands still and flickers.
  const moved = Math.hypot(b.x - a.x, b.y - a.y);
  return moved >= 0.02 * prior.radius * (b.frame - a.frame) && againstPrior(path, prior) === null;
}

/** In what a motion contradicts what is known of the flight; null where it does not. */
function againstPrior(path: Path, { axis, muzzle, maxSpeed, radius }: TrackPrior): string | null {
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

/** Best sighting of each frame near the path, and the sum of their scores, less the farther off. */
function supported(
  path: Path,
  sightings: readonly (readonly Sighting[])[],
  radius: number,
  near: number,
): Run {
  const chosen: Sighting[] = [];
  const reach = near * radius;
  let support = 0;
  for (const inFrame of sightings) {
    let best: Sighting | null = null;
    let most = 0;
    for (const s of inFrame) {
      const [x, y] = along(path, s.time);
      const d = Math.hypot(s.x - x, s.y - y) / reach;
      const worth = d < 1 ? s.score * (1 - d * d) : 0;
      if (worth > most) {
        most = worth;
        best = s;
      }
    }
    if (best !== null) {
      chosen.push(best);
      support += most;
    }
  }
  return { path, sightings: chosen, support };
}

/** Alternates least squares and choice of sightings, uniform motion first, then with a change of speed. */
function refine(start: Run, sightings: readonly (readonly Sighting[])[], radius: number): Run {
  let best = start;
  for (const curved of [false, false, true, true, true, true]) {
    const { path, sightings: chosen } = best;
    const weights = chosen.map((s) => {
      const [x, y] = along(path, s.time);
      const d = Math.hypot(s.x - x, s.y - y) / (2 * NEAR * radius);
      return s.score * s.visible * Math.max(0.01, 1 - d * d) ** 2;
    });
    const fitted = fitPath(chosen, weights, curved);
    if (fitted === null || (curved && speedChange(fitted, chosen) > SPEED_CHANGE)) continue;
    const next = supported(fitted, sightings, radius, NEAR);
    if (next.support >= best.support) best = next;
  }
  return best;
}

/** Change of velocity over the run as a share of its speed. */
function speedChange(path: Path, sightings: readonly Sighting[]): number {
  const first = sightings[0];
  const last = sightings[sightings.length - 1];
  const speed = Math.hypot(path.velocity[0], path.velocity[1]);
  if (first === undefined || last === undefined || speed === 0) return 0;
  const change = Math.hypot(path.acceleration[0], path.acceleration[1]);
  return (change * Math.abs(last.time - first.time)) / speed;
}

/** Why a run is not the ball's; null where it may be. */
function faultOf({ path, sightings }: Run, prior: TrackPrior): Reason | null {
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

function whatWasSeen(
  frames: readonly FrameCandidates[],
  judged: readonly { run: Run; fault: Reason | null }[],
): string {
  const seen = frames.filter((frame) => frame.candidates.length > 0).length;
  if (seen === 0) {
    return `No ball found: nothing of the ball's size stands out from the background in any of ${frames.length} frames.`;
  }
  const best = judged[0]?.fault;
  const closest = best === undefined || best === null ? '' : ` The nearest to it: ${best.message}`;
  return `No ball found: no object of the ball's size moves steadily through the film, though ${seen} of ${frames.length} frames show something of about that size.${closest}`;
}
