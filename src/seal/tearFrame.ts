import type { Pixels } from '../core/units';
import {
  agreeing,
  hasMoved,
  type RestState,
  strongest,
  structural,
  type TearEvidence,
  tearEvidence,
} from './tear';
import type { SealObservation } from './types';

/** Structural evidence this strong needs no second frame to confirm it; growth this odd is a tear, once confirmed. */
const PLAIN = 3;
/** A single kind of evidence below this may be a crease: the next frame may be the first open one. */
const WEAK = 1.5;
/** Around a frame with a faint sign, confirmed by the next, the tear lies from so many frame intervals before to after. */
const FAINT = [-0.75, 0.5] as const;
/**
 * A tear is seen at the latest when its pieces have gone this far, px, and the film needs a share of a frame
 * interval to come apart at all.
 */
const SEEN_BY: Pixels = 8;
const PARTING = 0.15;
const MOST_DELAY = 1;

export interface Tear {
  /** Index of the first observation that may show the film open, and of the first that surely does. */
  readonly open: number;
  readonly surely: number;
  /** Last frame whole and first open. */
  readonly between: readonly [number, number];
  /** The window the tear lies in, in frames and parts of one. */
  readonly window: readonly [number, number];
  /** How long a tear may go unnoticed, in frame intervals. */
  readonly delay: number;
  /** The frames with a faint sign of a tear and with plain ones, where that leaves doubt; null: none. */
  readonly doubt: { readonly faint: number; readonly plain: number } | null;
}

const UNTOUCHED: RestState = {
  front: 0,
  frontU: 0,
  roughness: 0,
  opening: 0,
  pieces: 0,
  area: 0,
  width: 0,
};

/** Whether the first frames already show loose, moving film. */
export function tornFromStart(observations: readonly SealObservation[]): boolean {
  const [first, second] = observations;
  if (first === undefined || second === undefined) return false;
  if (strongest(tearEvidence(first, [], UNTOUCHED)) < 1) return false;
  const area = Math.abs(second.changedArea - first.changedArea);
  return Math.abs(second.reach - first.reach) > 3 || area > 0.25 * first.changedArea;
}

/**
 * The first frame that shows the film torn, and stays so; null: none does. `frameAfter`: the frame after the
 * observations, in which the ball is through, so that the film is open there; null where there is none.
 */
export function findTear(
  observations: readonly SealObservation[],
  rest: RestState,
  frameAfter: number | null,
): Tear | null {
  const evidence = observations.map((o, i) => tearEvidence(o, observations.slice(0, i), rest));
  const open = evidence.findIndex((e, i) => i > 0 && isOpen(e, i, observations, evidence, rest));
  if (open < 1) return null;
  const now = evidence[open] as TearEvidence;
  const frame = (index: number): number => (observations[index] as SealObservation).frame;
  const openFor = observations[open + 1]?.frame ?? frameAfter;
  const limit = structural(now) < 1 ? PLAIN : agreeing(now) === 1 ? WEAK : 0;
  const weak = strongest(now) < limit;
  if (openFor === null || !weak) {
    const between = [frame(open - 1), frame(open)] as const;
    return {
      ...{ open, surely: open, between, window: between },
      ...{ delay: delayOf(observations, open), doubt: null },
    };
  }
  return {
    open,
    surely: open + 1,
    between: [frame(open - 1), openFor],
    window: [frame(open) + FAINT[0], frame(open) + FAINT[1]],
    delay: 0,
    doubt: { faint: frame(open), plain: openFor },
  };
}

/** How long a tear may go unseen, in frame intervals, from how fast its pieces fly, px a frame. */
function delayOf(observations: readonly SealObservation[], open: number): number {
  const now = observations[open] as SealObservation;
  const next = observations[open + 1];
  const from = next === undefined ? (observations[open - 1] as SealObservation) : now;
  const to = next ?? now;
  const speed = Math.max(1, (to.reach - from.reach) / (to.frame - from.frame));
  return Math.min(MOST_DELAY, PARTING + SEEN_BY / speed);
}

function isOpen(
  now: TearEvidence,
  index: number,
  observations: readonly SealObservation[],
  evidence: readonly TearEvidence[],
  rest: RestState,
): boolean {
  if (strongest(now) < 1) return false;
  const next = evidence[index + 1];
  if (next === undefined || structural(now) >= PLAIN) return true;
  if (structural(next) >= 1) return true;
  const after = observations[index + 1] as SealObservation;
  const last = observations[index - 1] as SealObservation;
  return hasMoved(last, rest) && after.front - rest.front < (last.front - rest.front) / 2;
}
