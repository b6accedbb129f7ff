import {
  agreeing,
  hasMoved,
  type RestState,
  strongest,
  type TearEvidence,
  tearEvidence,
} from './tear';
import type { SealObservation } from './types';

/** Evidence this strong, or of two kinds at once, needs no second frame to confirm it. */
const PLAIN = 3;
/** A single kind of evidence below this may be a crease: the next frame may be the first open one. */
const WEAK = 1.5;
/** Evidence from this share on, risen steeply, may be a tear just begun. */
const BUDDING = 0.7;
const STEEP = 2;
/** A tear shows at the latest this share of a frame interval after it began. */
const LATEST_SHARE = 0.5;

export interface Tear {
  /** Last frame whole and first open. */
  readonly between: readonly [number, number];
  /** How long a tear may go unnoticed, as a share of the time between the two frames. */
  readonly lateShare: number;
  /** Why the frames are not certain; null where they are. */
  readonly doubt: string | null;
}

const UNTOUCHED: RestState = {
  front: 0,
  frontU: 0,
  roughness: 0,
  opening: 0,
  pieces: 0,
  area: 0,
};

/** Whether the first frames already show loose, moving film. */
export function tornFromStart(observations: readonly SealObservation[]): boolean {
  const [first, second] = observations;
  if (first === undefined || second === undefined) return false;
  if (strongest(tearEvidence(first, [], UNTOUCHED)) < 1) return false;
  const area = Math.abs(second.changedArea - first.changedArea);
  return Math.abs(second.reach - first.reach) > 3 || area > 0.25 * first.changedArea;
}

/** The first frame that shows the film torn, and stays so; null: none does. */
export function findTear(observations: readonly SealObservation[], rest: RestState): Tear | null {
  const evidence = observations.map((o, i) => tearEvidence(o, observations.slice(0, i), rest));
  const open = evidence.findIndex((e, i) => i > 0 && isOpen(e, i, observations, evidence, rest));
  if (open < 1) return null;
  const now = evidence[open] as TearEvidence;
  const next = evidence[open + 1];
  const previous = strongest(evidence[open - 1] as TearEvidence);
  const lastButOne = evidence[open - 2];
  const budding =
    lastButOne !== undefined &&
    previous >= BUDDING &&
    previous > STEEP * Math.max(strongest(lastButOne), 0.2);
  const weak = next !== undefined && agreeing(now) === 1 && strongest(now) < WEAK;
  const frame = (index: number): number => (observations[index] as SealObservation).frame;
  const between = [frame(budding ? open - 2 : open - 1), frame(weak ? open + 1 : open)] as const;
  const growth =
    next === undefined ? 2 * strongest(now) : Math.max(strongest(next), strongest(now)) / 2;
  return {
    between,
    lateShare: budding ? 0 : Math.min(LATEST_SHARE, 1 / growth),
    doubt:
      budding || weak
        ? `The signs of a tear do not agree on one frame (first clear in frame ${frame(open)}).`
        : null,
  };
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
  if (next === undefined || strongest(now) >= PLAIN || agreeing(now) >= 2) return true;
  const after = observations[index + 1] as SealObservation;
  const last = observations[index - 1] as SealObservation;
  const bulgeGone =
    hasMoved(last, rest) && after.front - rest.front < (last.front - rest.front) / 2;
  return strongest(next) >= 1 || bulgeGone;
}
