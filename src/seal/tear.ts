import { median } from '../core/statistics';
import type { Pixels } from '../core/units';
import type { SealObservation } from './types';

/** A film may be this rough, px, and this share of its bulge, and still count as whole (creased paper). */
const ROUGH: Pixels = 0.9;
const ROUGH_SHARE = 0.08;
/** Share of the area under the outline that may show no film. */
const OPENING = 0.12;
/** Below this height, px, gaps and pieces are not judged. */
const FLAT: Pixels = 4;
/** A front that grows this many times faster than the frame before, and by more than this, px, has jumped. */
const JUMP_FACTOR = 4;
const JUMP: Pixels = 8;
/** A bulge that falls to less than this share of itself from one frame to the next has collapsed. */
const COLLAPSE = 0.5;
/** A film under pressure does not fall back by this, px, or by this share of its bulge; by itself a weak sign. */
const RETREAT: Pixels = 1;
const RETREAT_SHARE = 0.08;
const RETREAT_MOST = 1.2;
/** A front this far, px, and this many standard uncertainties out of rest has moved. */
const MOVED: Pixels = 0.6;
const MOVED_FACTOR = 4;

/** How the film lies before anything happens. */
export interface RestState {
  readonly front: Pixels;
  /** Frame-to-frame standard deviation of the front at rest. */
  readonly frontU: Pixels;
  readonly roughness: Pixels;
  readonly opening: number;
  readonly pieces: number;
  readonly area: number;
}

/** How strongly a frame says that the film is torn: each as a multiple of what a whole film may show. */
export interface TearEvidence {
  readonly roughness: number;
  readonly opening: number;
  readonly pieces: number;
  readonly jump: number;
}

/** Rest as the median of the first observations, at most eight and at most a third of them. */
export function restOf(observations: readonly SealObservation[]): RestState {
  const first = observations.slice(
    0,
    Math.max(1, Math.min(8, Math.floor(observations.length / 3))),
  );
  const typical = (of: (o: SealObservation) => number) => median(first.map(of));
  const front = typical((o) => o.front);
  const spread = 1.4826 * median(first.map((o) => Math.abs(o.front - front)));
  return {
    front,
    frontU: Math.max(
      spread,
      typical((o) => o.frontU),
    ),
    roughness: typical((o) => o.roughness),
    opening: typical((o) => o.opening),
    pieces: typical((o) => o.pieces),
    area: typical((o) => o.changedArea),
  };
}

/** Whether the film stands out of its rest position. */
export const hasMoved = (o: SealObservation, rest: RestState): boolean =>
  o.front - rest.front > Math.max(MOVED, MOVED_FACTOR * Math.hypot(o.frontU, rest.frontU));

/** The evidence of frame `i`; `before` are the observations up to the frame before it. */
export function tearEvidence(
  now: SealObservation,
  before: readonly SealObservation[],
  rest: RestState,
): TearEvidence {
  const last = before.at(-1);
  const bulge = Math.max(0, now.front - rest.front);
  const allowedRoughness = 2 * rest.roughness + Math.max(ROUGH, ROUGH_SHARE * bulge);
  // The gaps and pieces of a film a pixel or two high are pixels.
  const flat = now.reach < FLAT;
  return {
    roughness: now.roughness / allowedRoughness,
    opening: flat ? 0 : now.opening / (OPENING + 1.5 * rest.opening),
    pieces: flat ? 0 : Math.max(0, now.pieces - Math.max(1, rest.pieces)),
    jump: last === undefined ? 0 : jumpOf(now, last, before.at(-2) ?? null, rest),
  };
}

/** A jump of the front outwards, against the growth seen so far, or a fall back. */
function jumpOf(
  now: SealObservation,
  last: SealObservation,
  lastButOne: SealObservation | null,
  rest: RestState,
): number {
  const step = (now.reach - last.reach) / (now.frame - last.frame);
  const stepBefore =
    lastButOne === null ? 0 : (last.reach - lastButOne.reach) / (last.frame - lastButOne.frame);
  const outward = hasMoved(last, rest) ? step / Math.max(JUMP, JUMP_FACTOR * stepBefore) : 0;
  const stood = last.front - rest.front;
  const fall = last.front - now.front;
  const collapse = stood > JUMP / 2 ? fall / stood / COLLAPSE : 0;
  const retreat = Math.min(RETREAT_MOST, fall / Math.max(RETREAT, RETREAT_SHARE * stood));
  return Math.max(0, outward, collapse, retreat);
}

export const strongest = (e: TearEvidence): number =>
  Math.max(e.roughness, e.opening, e.pieces, e.jump);
/** Number of kinds of evidence that speak for a tear. */
export const agreeing = (e: TearEvidence): number =>
  [e.roughness, e.opening, e.pieces, e.jump].filter((share) => share >= 1).length;
