import type { Outcome, Reason } from '../core/reason';
import { median } from '../core/statistics';
import type { CentreMeasurement } from '../image/types';

/** One frame of the ball's path, with what was found there. */
export interface FrameOnPath {
  readonly frame: number;
  readonly centre: Outcome<CentreMeasurement>;
  /** Share of the disc that the picture would show, 0..1. */
  readonly inView: number;
  /** Likeness to a ball of what changed near the place, the best of it; null: nothing changed there. */
  readonly likeness: number | null;
}

export interface BreakUp {
  readonly frame: number;
  readonly reason: Reason;
}

/** Share of the later frames that a shard may pass for the ball in. */
const MISTAKEN = 0.2;
/** Fewer frames without the ball may be a fragment passing before it. */
const FEWEST_AFTER = 3;
/** Frames before and after in which the break is looked at. */
const FRAMES_BEFORE = 5;
const FRAMES_AFTER = 5;
/** Frames after it in which pieces must be seen: what vanishes is hidden. */
const PIECES_IN = 2;
/** Share of what the picture showed of the disc up to then: the frame's edge hides no more. */
const AS_MUCH_IN_VIEW = 0.85;
/** Shares that a whole ball keeps: of the outline visible in the frames before, and in all; of its contrast; of its likeness. */
const WHOLE = 0.85;
const UNCOVERED = 0.6;
const AS_BRIGHT = 0.75;
const AS_LIKE = 0.6;
/** A centre this many times as uncertain as those before it is not a whole ball's. */
const AS_SURE = 5;

/**
 * The first frame in which the ball is no longer whole: from there on no disc is found although the place is in view,
 * up to then it was seen as ever, so that nothing had begun to cover it, and what is there afterwards are pieces.
 * Null where it stays whole, or where something else explains it. `frames` in order of time.
 */
export function findBreakUp(frames: readonly FrameOnPath[]): BreakUp | null {
  const shown = frames.flatMap(({ centre, inView }) => (centre.ok ? [inView] : []));
  if (shown.length < FEWEST_AFTER) return null;
  const enough = AS_MUCH_IN_VIEW * median(shown.slice(-FRAMES_BEFORE));
  const inView = frames.filter((one) => one.inView >= enough);
  const first = firstWithout(inView);
  const later = inView.slice(first);
  if (later.length < FEWEST_AFTER) return null;
  const before = inView
    .slice(0, first)
    .flatMap(({ frame, centre, likeness }) =>
      centre.ok ? [{ frame, ...centre.value, likeness: likeness ?? 0 }] : [],
    );
  // The first broken frames may still pass for a disc, a mottled one.
  let whole = before.length;
  while (whole > 2 && whole > before.length - 2 && !asBefore(before, whole - 1)) whole--;
  const last = before[whole - 1];
  if (last === undefined || whole < FEWEST_AFTER || !asBefore(before, whole - 1)) return null;
  const usual = median(before.slice(0, whole).map(({ likeness }) => likeness));
  if (!inPieces(later, usual)) return null;
  const broken = before[whole]?.frame ?? (later[0] as FrameOnPath).frame;
  return {
    frame: broken,
    reason: {
      code: 'ballBroke',
      message: `The ball is whole up to frame ${last.frame}; from frame ${broken} on there are pieces.`,
      values: { whole: last.frame, broken },
    },
  };
}

/** Index of the first frame from which on hardly any has a centre as sure as those before. */
function firstWithout(frames: readonly FrameOnPath[]): number {
  const spreads: number[] = [];
  const sound = frames.map(({ centre }) => {
    if (!centre.ok) return false;
    const one = spread(centre.value);
    const usual = spreads.length === 0 ? one : median(spreads.slice(-FRAMES_BEFORE));
    spreads.push(one);
    return one <= AS_SURE * usual;
  });
  let first = frames.length;
  let after = 0;
  for (let i = frames.length - 1; i > 0; i--) {
    after += Number(sound[i]);
    if (after > MISTAKEN * (frames.length - i)) break;
    if (!sound[i] && sound[i - 1]) first = i;
  }
  return first;
}

/** Whether what follows is something, though no ball. */
function inPieces(later: readonly FrameOnPath[], usual: number): boolean {
  const soon = later.slice(0, FRAMES_AFTER).map(({ likeness }) => likeness);
  const seen = soon.filter((likeness) => likeness !== null);
  // In the very first frame the pieces may still lie close together.
  return seen.length >= PIECES_IN && !soon.slice(1).some((one) => (one ?? 0) > AS_LIKE * usual);
}

const spread = ({ varX, varY }: CentreMeasurement): number => Math.sqrt(varX + varY);

type Seen = CentreMeasurement & { readonly frame: number; readonly likeness: number };

/** Whether a frame shows as much of the ball, as bright and as much like a ball, as those before it. */
function asBefore(seen: readonly Seen[], at: number): boolean {
  const earlier = seen.slice(Math.max(0, at - FRAMES_BEFORE), at);
  // What covers it little by little shows over some frames.
  const further = earlier.slice(0, Math.max(1, earlier.length - 1));
  const one = seen[at];
  if (one === undefined || earlier.length === 0) return false;
  const usual = (of: (frame: Seen) => number) => median(earlier.map(of));
  return (
    one.visible >= UNCOVERED * median(seen.slice(0, at).map(({ visible }) => visible)) &&
    one.visible >= WHOLE * Math.min(...further.map(({ visible }) => visible)) &&
    Math.abs(one.contrast) >= AS_BRIGHT * usual((frame) => Math.abs(frame.contrast)) &&
    one.likeness >= AS_LIKE * usual((frame) => frame.likeness)
  );
}
