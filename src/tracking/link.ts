import { failure, type Outcome, type Reason, success } from '../core/reason';
import type { Candidate } from '../image/types';
import { gather } from './gather';
import { againstPrior, faultOf } from './judge';
import { along, lineDirection, type Run, type Sighting } from './path';
import { MOST_RIVALS, NEAR, searchRuns } from './search';
import { meritOf, twinOf } from './twins';
import type { FrameCandidates, Track, TrackPrior } from './types';

/**
 * Finds the one object of the ball's size that moves steadily on a nearly straight path, and its sightings in the
 * frames. Of the motions found the ball is the one with most merit that nothing known of it contradicts; where another
 * speaks for itself as well, none is taken. Frames may be missing.
 * Failures: `noBall`, `twoBalls`, `againstDirection`, `besideMuzzle`, `besideSeeds`.
 */
export function linkTrack(frames: readonly FrameCandidates[], prior: TrackPrior): Outcome<Track> {
  const runs = searchRuns(gather(frames, prior), prior);
  const judged = runs.map((run) => ({ run, fault: faultOf(run, prior) }));
  const passed = judged
    .flatMap(({ run, fault }) => (fault === null ? [run] : []))
    .sort((a, b) => meritOf(b) - meritOf(a));
  const [ball] = passed;
  if (ball === undefined) {
    return contradicted(frames, prior) ?? { ok: false, reason: whatWasSeen(frames, judged) };
  }
  const twin = twinOf(ball, passed, prior);
  if (twin !== null) {
    return failure(
      'twoBalls',
      `Two things move as the ball would and look like it: one is seen in ${framesOf(ball)}, the other in ${framesOf(twin)}.`,
      'Say in one frame which of them is the ball, or draw the region of flight around it.',
      {
        ...spanOf(ball),
        otherFirst: spanOf(twin).first,
        otherLast: spanOf(twin).last,
      },
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
      reason: fault ?? lesser(run, ball),
    }));
  const byFrame = new Map(frames.map((frame) => [frame.frame, frame]));
  return success({
    points: ball.sightings.map((s) => ({
      frame: s.frame,
      candidate: byFrame.get(s.frame)?.candidates[s.candidate] ?? givenCandidate(s),
      at: along(ball.path, s.time),
    })),
    path: ball.path,
    axis,
    speed,
    rivals,
  });
}

const spanOf = ({ sightings }: Run): { readonly first: number; readonly last: number } => ({
  first: (sightings[0] as Sighting).frame,
  last: (sightings[sightings.length - 1] as Sighting).frame,
});

function framesOf(run: Run): string {
  const { first, last } = spanOf(run);
  return `frames ${first} to ${last}`;
}

/** Why a run that may be a ball's is not taken for it. */
const lesser = (run: Run, ball: Run): Reason =>
  run.sightings.length < ball.sightings.length
    ? {
        code: 'fewerFrames',
        message: `Another object follows its own path over ${run.sightings.length} frames, fewer than the ball's ${ball.sightings.length}.`,
        values: { frames: run.sightings.length, ball: ball.sightings.length },
      }
    : {
        code: 'lessAlike',
        message: `Another object in ${framesOf(run)} follows its own path but looks less like the ball: by size, roundness or sharpness.`,
        values: spanOf(run),
      };

/** The ball that would be found were it not for what is stated of its way; null where there is none even so. */
function contradicted(
  frames: readonly FrameCandidates[],
  prior: TrackPrior,
): Outcome<never> | null {
  const foundWith = (less: Partial<TrackPrior>): boolean => {
    const track = linkTrack(frames, { ...prior, ...less });
    return track.ok && againstPrior(track.value.path, prior) !== null;
  };
  if (prior.axis !== null && foundWith({ axis: null })) {
    return failure(
      'againstDirection',
      'A ball is seen, but it flies in another direction than stated.',
      'Turn the direction of travel along its flight, or let it be found from the path.',
    );
  }
  if (prior.muzzle !== null && foundWith({ muzzle: null })) {
    return failure(
      'besideMuzzle',
      'A ball is seen, but its path does not pass the marked muzzle.',
      'Mark the muzzle where the flight leaves it.',
    );
  }
  const free = { ...prior, placed: [], seeds: [] };
  if (prior.placed.length + prior.seeds.length > 0 && linkTrack(frames, free).ok) {
    return failure(
      'besideSeeds',
      'A ball is seen, but its path does not pass where it is said to be.',
      'Move the places said to be the ball onto it, or remove them.',
      { form: 'ball' },
    );
  }
  return null;
}

const NO_BALL_REMEDY =
  'Check the known length and the ball diameter (they give the size looked for), the region of flight and that the clip shows the ball; or place its centre by hand in three frames or more.';

const givenCandidate = (s: Sighting): Candidate => ({ x: s.x, y: s.y, score: 1, visible: 1 });

function whatWasSeen(
  frames: readonly FrameCandidates[],
  judged: readonly { run: Run; fault: Reason | null }[],
): Reason {
  const code = 'noBall';
  const remedy = NO_BALL_REMEDY;
  const seen = frames.filter((frame) => frame.candidates.length > 0).length;
  if (seen === 0) {
    return {
      code,
      message: `No ball found: nothing of the ball's size stands out from the background in any of ${frames.length} frames.`,
      remedy,
      values: { search: 'nothing', form: 'film', frames: frames.length },
    };
  }
  const best = judged[0]?.fault ?? null;
  const closest = best === null ? '' : ` What comes nearest: ${lowerFirst(best.message)}`;
  return {
    code,
    message: `No ball found: no object of the ball's size moves steadily through the film, though ${seen} of ${frames.length} frames show something of about that size.${closest}`,
    remedy,
    values: {
      ...{ search: best === null ? 'unlike' : 'nearest', seen, frames: frames.length },
      ...{ form: 'film', ...best?.values, ...(best === null ? {} : { because: best.code }) },
    },
  };
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
