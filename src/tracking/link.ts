import { failure, type Outcome, type Reason, success } from '../core/reason';
import type { Candidate } from '../image/types';
import { againstPrior, faultOf, SPEED_CHANGE, speedChange } from './judge';
import { along, fitPath, lineDirection, type Run, type Sighting, throughTwo } from './path';
import type { FrameCandidates, Path, Track, TrackPrior } from './types';

/** Frame gaps over which two sightings are tried as one motion: short for two frames, long for accuracy. */
const GAPS = [1, 2, 3, 5, 8, 13, 21, 34] as const;
/** Starting motions refined in full. */
const REFINED = 12;
/** How far a sighting may lie from the path, in radii: a half-hidden ball is sighted off its centre. */
const NEAR = 0.6;
const MOST_RIVALS = 4;

/**
 * Finds the one object of the ball's size that moves steadily on a nearly straight path, and its
 * sightings in the frames. Deterministic: motions through pairs of sightings are compared by how many
 * frames they explain, the best are refined by least squares with a slow change of speed, and the
 * ball is the best supported that passes as a ball. Frames may be missing.
 * Failures: `noBall`, `againstDirection`, `besideMuzzle`.
 */
export function linkTrack(frames: readonly FrameCandidates[], prior: TrackPrior): Outcome<Track> {
  const sightings = gather(frames, prior);
  const runs = searchRuns(sightings, prior);
  const judged = runs.map((run) => ({ run, fault: faultOf(run, prior) }));
  const ball = judged.find(({ fault }) => fault === null)?.run;
  if (ball === undefined) {
    return (
      contradicted(frames, prior) ?? failure('noBall', whatWasSeen(frames, judged), NO_BALL_REMEDY)
    );
  }

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

/** The ball that would be found were it not for what is stated of its way; null where there is none even so. */
function contradicted(
  frames: readonly FrameCandidates[],
  prior: TrackPrior,
): Outcome<never> | null {
  if (prior.axis !== null && linkTrack(frames, { ...prior, axis: null }).ok) {
    return failure(
      'againstDirection',
      'A ball is seen, but it flies in another direction than stated.',
      'Turn the direction of travel along its flight, or let it be found from the path.',
    );
  }
  if (prior.muzzle !== null && linkTrack(frames, { ...prior, muzzle: null }).ok) {
    return failure(
      'besideMuzzle',
      'A ball is seen, but its path does not pass the marked muzzle.',
      'Mark the muzzle where the flight leaves it.',
    );
  }
  return null;
}

const NO_BALL_REMEDY =
  'Check the known length and the ball diameter (they give the size looked for), the region of flight and that the clip shows the ball; or place its centre by hand in three frames or more.';

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

function whatWasSeen(
  frames: readonly FrameCandidates[],
  judged: readonly { run: Run; fault: Reason | null }[],
): string {
  const seen = frames.filter((frame) => frame.candidates.length > 0).length;
  if (seen === 0) {
    return `No ball found: nothing of the ball's size stands out from the background in any of ${frames.length} frames.`;
  }
  const best = judged[0]?.fault;
  const closest =
    best === undefined || best === null ? '' : ` What comes nearest: ${lowerFirst(best.message)}`;
  return `No ball found: no object of the ball's size moves steadily through the film, though ${seen} of ${frames.length} frames show something of about that size.${closest}`;
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
