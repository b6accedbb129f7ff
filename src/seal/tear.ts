import { median, robustDeviation } from '../core/statistics';
import type { Pixels } from '../core/units';
import { surprise } from './surprise';
import type { SealObservation } from './types';

/** A film may be this rough, px, and this share of its bulge, and still count as whole (creased paper). */
const ROUGH: Pixels = 1.1;
const ROUGH_SHARE = 0.08;
/** Share of the area under the outline that may show no film. */
const OPENING = 0.12;
/** Below this height, px, gaps and pieces are not judged. */
const FLAT: Pixels = 4;
/** Growth may miss its forecast by this at least: front and outermost change, px; area, px of the watched width. */
const FRONT_MISS: Pixels = 0.35;
const REACH_MISS: Pixels = 3;
const AREA_MISS: Pixels = 0.4;
/** Where too little growth was seen to forecast: a step this long, px, and so many times the height, is a leap. */
const LEAP: Pixels = 8;
const LEAP_FACTOR = 3;
/** A bulge that falls to less than this share of itself from one frame to the next has collapsed. */
const COLLAPSE = 0.5;
/** A film under pressure does not fall back by this, px, or by this share of its bulge; by itself a weak sign. */
const RETREAT: Pixels = 1;
const RETREAT_SHARE = 0.08;
const RETREAT_MOST = 1.2;
/** A front this far, px, and this many standard uncertainties out of rest has moved. */
const MOVED: Pixels = 0.6;
const MOVED_FACTOR = 4;

/** A change that stands out this far at rest, px, hides a bulge. */
const HIDING: Pixels = 3;

/** How the film lies before anything happens. */
export interface RestState {
  readonly front: Pixels;
  /** Frame-to-frame standard deviation of the front at rest. */
  readonly frontU: Pixels;
  readonly roughness: Pixels;
  readonly opening: number;
  readonly pieces: number;
  readonly area: number;
  /** Width watched, px. */
  readonly width: Pixels;
}

/** How strongly a frame says that the film is torn: each kind as a multiple of what a whole film may show. */
export interface TearEvidence {
  readonly roughness: number;
  readonly opening: number;
  readonly pieces: number;
  /** Departure from the growth seen so far: of the film's edge, of the outermost change, of the area. */
  readonly front: number;
  readonly reach: number;
  readonly area: number;
}

/** Rest as the median of the first observations, at most eight and at most a third of them. */
export function restOf(observations: readonly SealObservation[], width: Pixels): RestState {
  const first = observations.slice(
    0,
    Math.max(1, Math.min(8, Math.floor(observations.length / 3))),
  );
  const typical = (of: (o: SealObservation) => number) => median(first.map(of));
  const front = typical((o) => o.front);
  const spread = robustDeviation(
    first.map((o) => o.front),
    front,
  );
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
    width,
  };
}

/** Whether something stands out at rest already and hides the film's first movement. */
export const isHidden = (rest: RestState): boolean => rest.front > HIDING;

/** Whether the film stands out of its rest position. */
export const hasMoved = (o: SealObservation, rest: RestState): boolean =>
  o.front - rest.front > Math.max(MOVED, MOVED_FACTOR * Math.hypot(o.frontU, rest.frontU));

/** The evidence of one frame, given the observations before it. */
export function tearEvidence(
  now: SealObservation,
  before: readonly SealObservation[],
  rest: RestState,
): TearEvidence {
  const bulge = Math.max(0, now.front - rest.front);
  const allowedRoughness = 2 * rest.roughness + Math.max(ROUGH, ROUGH_SHARE * bulge);
  // The gaps and pieces of a film a pixel or two high are pixels.
  const flat = now.reach < FLAT;
  const moving = movingUpTo(now, before, rest);
  const series = (of: (o: SealObservation) => number) =>
    moving.map((o) => [o.frame, of(o)] as const);
  const front = series((o) => o.front);
  return {
    roughness: now.roughness / allowedRoughness,
    opening: flat ? 0 : now.opening / (OPENING + 1.5 * rest.opening),
    pieces: flat ? 0 : Math.max(0, now.pieces - Math.max(1, rest.pieces)),
    front: Math.max(Math.abs(surprise(front, FRONT_MISS)), fallOf(now, before.at(-1), rest)),
    reach: Math.max(
      surprise(
        series((o) => o.reach),
        REACH_MISS,
      ),
      leap(now, moving, rest),
    ),
    area: Math.abs(
      surprise(
        series((o) => o.changedArea),
        AREA_MISS * rest.width,
      ),
    ),
  };
}

/** The unbroken run of observations, up to this one, in which the film stood out. */
function movingUpTo(
  now: SealObservation,
  before: readonly SealObservation[],
  rest: RestState,
): readonly SealObservation[] {
  const still = before.findLastIndex((o) => !hasMoved(o, rest));
  return [...before.slice(still + 1), now];
}

/** A long step before enough growth was seen to forecast the next one. */
function leap(now: SealObservation, moving: readonly SealObservation[], rest: RestState): number {
  const last = moving.at(-2);
  if (last === undefined || moving.length > 3) return 0;
  const step = (now.reach - last.reach) / (now.frame - last.frame);
  return step / Math.max(LEAP, LEAP_FACTOR * (last.reach - rest.front));
}

/** A film under pressure does not fall back. */
function fallOf(now: SealObservation, last: SealObservation | undefined, rest: RestState): number {
  if (last === undefined || !hasMoved(last, rest)) return 0;
  const stood = last.front - rest.front;
  const fall = last.front - now.front;
  const collapse = stood > FLAT ? fall / stood / COLLAPSE : 0;
  const retreat = Math.min(RETREAT_MOST, fall / Math.max(RETREAT, RETREAT_SHARE * stood));
  return Math.max(0, collapse, retreat);
}

export const strongest = (e: TearEvidence): number => Math.max(...Object.values(e));
/** The strongest sign in the film's own looks; growth alone may only be a change of pressure. */
export const structural = (e: TearEvidence): number => Math.max(e.roughness, e.opening, e.pieces);
/** Number of kinds of evidence that speak for a tear. */
export const agreeing = (e: TearEvidence): number =>
  Object.values(e).filter((share) => share >= 1).length;
