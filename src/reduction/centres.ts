import type { GreyFrame } from '../core/frame';
import { failure, type Outcome, success } from '../core/reason';
import type { ImagePoint, ImageVector } from '../core/units';
import { learnBrightness } from '../image/hiddenPixels';
import { learnBall } from '../image/learnBall';
import { judgeScatter } from '../image/scatter';
import type { BallModel, CentreMeasurement } from '../image/types';
import type { Track } from '../tracking/types';
import { atPace, ballInFlight } from './ball';
import { inBatches } from './batches';
import {
  type Centres,
  type JudgedCentres,
  keepOnPath,
  keepRound,
  keepSure,
  keepWhole,
  noneAlike,
} from './judgeCentres';
import { placesOf } from './onPlane';
import { paceOf } from './pace';
import type { Scene } from './scene';
import type { Shake } from './shake';
import type { Survey } from './survey';
import type { CentreHint } from './types';
import type { Work } from './work';

/** Frames whose centres are measured at once: each takes a tenth of a second, and no thread should wait for another's last. */
const CENTRES_AT_ONCE = 2;
/** Frames looked at before and after those in which the ball was found roughly. */
const MARGIN_FRAMES = 3;
/** Share of the frames measured alone that must still be measured with the ball's brightness learnt. */
const LEAST_KEPT = 0.6;
/** Fewer than this share measured with the look learnt: the two passes followed different things. */
const LEAST_AGREED = 0.25;

const measuredIn = (centres: Centres): number =>
  [...centres.values()].filter(({ ok }) => ok).length;

/**
 * The ball's centre in every frame of its track, twice: first as each frame alone has it, with the track's mean
 * speed; then blurred by the speed that the centres have there, and with the look that the frames which show it
 * well agree on, so that half-hidden frames need not find it from half an outline.
 */
export async function measureCentres(
  work: Work,
  track: Track,
  { shake, candidates }: Pick<Survey, 'shake' | 'candidates'>,
): Promise<MeasuredCentres> {
  const ball = ballInFlight(work.inputs, work.scene, track);
  const alone = keepOnPath(
    await measureWith(() => ball, work, track, shake, { done: 0, of: 2 }),
    track,
    work.scene,
    shake,
  );
  const pace = paceOf(alone, track, work.scene, shake);
  const paced = new Map(
    [...alone].map(([frame, centre]) => [
      frame,
      centre.ok ? success(toldAtPace(centre.value, pace(frame))) : centre,
    ]),
  );
  const shown = [...paced.values()].flatMap((centre) => (centre.ok ? [centre.value] : []));
  const known = learnBall(ball, shown);
  let learnt = known === ball ? ball : learnBrightness(known, shown);
  const ballIn = (frame: number) => atPace(learnt, pace(frame));
  let again =
    learnt === ball && [...alone.keys()].every((frame) => pace(frame) === 1)
      ? alone
      : withJudgedScatter(
          keepOnPath(
            await measureWith(ballIn, work, track, shake, { done: 1, of: 2 }),
            track,
            work.scene,
            shake,
          ),
          work.scene,
        );
  // A brightness that most frames do not show was not the ball's.
  if (learnt !== known && measuredIn(again) < LEAST_KEPT * measuredIn(alone)) {
    learnt = known;
    again = keepOnPath(
      await measureWith(ballIn, work, track, shake, { done: 1, of: 2 }),
      track,
      work.scene,
      shake,
    );
  }
  if (measuredIn(again) < LEAST_AGREED * measuredIn(alone)) again = noneAlike(again);
  // Pieces of a broken ball are told by their uncertainty too, so those go last.
  const whole = keepWhole(withOwnBlur(again, paced), candidates, track, work.scene);
  const sure = keepSure(whole.centres, work.scene);
  const centres = keepRound(sure, work.inputs.shot.edits);
  const { placeIn } = search(work, track);
  return {
    centres,
    breakUp: whole.breakUp,
    hintFor: (frame) => {
      const at = centres.has(frame) ? placeIn(frame) : null;
      return at === null
        ? null
        : { at, ball: atPace(learnt, pace(frame)), shift: offIn(shake, frame) };
    },
  };
}

/** A measurement's blur as a multiple of that expected at another pace than 1, which it was measured with. */
function toldAtPace(centre: CentreMeasurement, pace: number): CentreMeasurement {
  const { look, blur, evidence } = centre;
  return {
    ...centre,
    ...(look && { look: { ...look, stretch: look.stretch / pace } }),
    ...(blur && { blur: { stretch: blur.stretch / pace, u: blur.u / pace } }),
    ...(evidence && { evidence: { ...evidence, stretchU: evidence.stretchU / pace } }),
  };
}

/** With covariances that hold for the flight as a whole. */
function withJudgedScatter(centres: Centres, { clock }: Scene): Centres {
  const flight = [...centres].flatMap(([frame, centre]) =>
    centre.ok
      ? [{ frame, time: clock.timeAt(frame, centre.value.x, centre.value.y), centre: centre.value }]
      : [],
  );
  flight.sort((a, b) => a.time - b.time);
  const right = new Map(
    judgeScatter(flight).map((centre, i) => [flight[i]?.frame, success(centre)]),
  );
  return new Map([...centres].map(([frame, centre]) => [frame, right.get(frame) ?? centre]));
}

/** The blur's length as each frame alone has it: what the frames agree on errs alike in all of them. */
function withOwnBlur(centres: Centres, alone: Centres): Centres {
  return new Map(
    [...centres].map(([frame, centre]) => {
      if (!centre.ok) return [frame, centre];
      const { blur: _, ...rest } = centre.value;
      const first = alone.get(frame);
      const own = first?.ok ? first.value.blur : undefined;
      return [frame, success(own === undefined ? rest : { ...rest, blur: own })];
    }),
  );
}

export interface MeasuredCentres extends JudgedCentres {
  /** Where the ball is looked for in a frame and how; null: it is not looked for there. */
  hintFor(
    frame: number,
  ): { readonly at: ImagePoint; readonly ball: BallModel; readonly shift: ImageVector } | null;
}

const offIn = (shake: Shake, frame: number): ImageVector => {
  const { x, y } = shake.shiftIn(frame);
  return [x, y];
};

/** Where the track has the ball, and the frames worth looking at. */
function search({ inputs: { info }, scene }: Work, track: Track) {
  const first = (track.points[0]?.frame ?? 0) - MARGIN_FRAMES;
  const last = (track.points.at(-1)?.frame ?? 0) + MARGIN_FRAMES;
  return {
    placeIn: placesOf(track, scene),
    range: { start: Math.max(0, first), end: Math.min(info.frameCount, last + 1) },
  };
}

async function measureWith(
  ballIn: (frame: number) => BallModel,
  work: Work,
  track: Track,
  shake: Shake,
  pass: { readonly done: number; readonly of: number },
): Promise<Centres> {
  const { scene, film, measurer, onEvent, cancellation } = work;
  const { placeIn, range } = search(work, track);
  const centres = new Map<number, Outcome<CentreMeasurement>>();
  const frameCount = range.end - range.start;
  let done = pass.done * frameCount;
  const hintFor = (frame: GreyFrame): CentreHint | null => {
    const at = placeIn(frame.index);
    return at !== null && within(at, scene)
      ? { frame, at, shift: offIn(shake, frame.index), ball: ballIn(frame.index) }
      : null;
  };
  await inBatches(
    film.frames(range),
    { size: CENTRES_AT_ONCE, lanes: measurer.lanes, cancellation },
    async (frames) => {
      const hints = frames.map(hintFor).filter((hint) => hint !== null);
      // Hints lose their pixels to the measuring thread: keep the frame numbers.
      const numbers = hints.map((hint) => hint.frame.index);
      const measured = await measurer.centres(hints);
      for (const [i, frame] of numbers.entries()) {
        const centre =
          measured[i] ??
          failure('noBall', 'The ball was not measured in this frame.', undefined, {
            form: 'unmeasured',
          });
        centres.set(frame, centre);
        if (centre.ok) onEvent({ kind: 'centre', frame, x: centre.value.x, y: centre.value.y });
      }
      done += frames.length;
      onEvent({ kind: 'progress', stage: 'centres', done, total: pass.of * frameCount });
    },
  );
  // Workers answer in any order, and sums over the frames must not hang on it.
  return new Map([...centres].sort(([a], [b]) => a - b));
}

/** Just outside too: where the centre is is not known to better than that yet. */
function within([x, y]: ImagePoint, { region, ballRadius }: Scene): boolean {
  const margin = 0.25 * ballRadius;
  return (
    x >= region[0] - margin &&
    y >= region[1] - margin &&
    x <= region[0] + region[2] - 1 + margin &&
    y <= region[1] + region[3] - 1 + margin
  );
}
