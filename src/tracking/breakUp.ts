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
/** Share of what the picture usually shows of the disc: the frame's edge hides no more. */
const AS_MUCH_IN_VIEW = 0.95;
/** Share of its usual visible outline, contrast and likeness that a whole ball keeps. */
const WHOLE = 0.8;
const AS_BRIGHT = 0.75;
const AS_LIKE = 0.6;

/**
 * The first frame in which the ball is no longer whole: from there on no disc is found although the place is in view,
 * up to then it was seen as ever, so that nothing had begun to cover it, and what is there afterwards are pieces.
 * Null where it stays whole, or where something else explains it. `frames` in order of time.
 */
export function findBreakUp(frames: readonly FrameOnPath[]): BreakUp | null {
  const shown = frames.flatMap(({ centre, inView }) => (centre.ok ? [inView] : []));
  if (shown.length < FEWEST_AFTER) return null;
  const enough = AS_MUCH_IN_VIEW * median(shown);
  const inView = frames.filter((one) => one.inView >= enough);
  const accepted = inView.map(({ centre }) => centre.ok);
  let first = inView.length;
  for (let i = inView.length - 1, after = 0; i > 0; i--) {
    after += Number(accepted[i]);
    if (after > MISTAKEN * (inView.length - i)) break;
    if (!accepted[i] && accepted[i - 1]) first = i;
  }
  const later = inView.slice(first);
  if (later.length < FEWEST_AFTER) return null;
  const before = inView
    .slice(0, first)
    .flatMap(({ frame, centre, likeness }) =>
      centre.ok ? [{ frame, ...centre.value, likeness: likeness ?? 0 }] : [],
    );
  // The first broken frame may still pass for a disc, a mottled one.
  let whole = before.length;
  while (whole > 2 && whole > before.length - 2 && !asBefore(before, whole - 1)) whole--;
  const last = before[whole - 1];
  if (last === undefined || whole < FEWEST_AFTER || !asBefore(before, whole - 1)) return null;
  const usual = median(before.slice(0, whole).map(({ likeness }) => likeness));
  const soon = later.slice(0, FRAMES_AFTER);
  const pieces = soon.filter(({ likeness }) => likeness !== null);
  if (pieces.length < PIECES_IN) return null;
  // In the very first frame the pieces may still lie close together.
  const like = later.slice(1, FRAMES_AFTER).map(({ likeness }) => likeness ?? 0);
  if (like.some((likeness) => likeness > AS_LIKE * usual)) return null;
  const broken = before[whole]?.frame ?? (later[0] as FrameOnPath).frame;
  return {
    frame: broken,
    reason: {
      code: 'ballBroke',
      message: `The ball is whole up to frame ${last.frame}; from frame ${broken} on there are pieces.`,
    },
  };
}

type Seen = CentreMeasurement & { readonly frame: number; readonly likeness: number };

/** Whether a frame shows as much of the ball, as bright and as much like a ball, as those before it. */
function asBefore(seen: readonly Seen[], at: number): boolean {
  const earlier = seen.slice(Math.max(0, at - FRAMES_BEFORE), at);
  const one = seen[at];
  if (one === undefined || earlier.length === 0) return false;
  const usual = (of: (frame: Seen) => number) => median(earlier.map(of));
  return (
    one.visible >= WHOLE * usual((frame) => frame.visible) &&
    Math.abs(one.contrast) >= AS_BRIGHT * usual((frame) => Math.abs(frame.contrast)) &&
    one.likeness >= AS_LIKE * usual((frame) => frame.likeness)
  );
}
