import type { Estimate, Quantity, Reported } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import type { Seconds } from '../core/units';
import type { BudgetEntry, Posterior, Warning } from '../shot/result';
import { locateOnset } from './onset';
import { hasMoved, isHidden, type RestState, restOf } from './tear';
import { findTear, tornFromStart } from './tearFrame';
import { type Delay, halfExposure, momentIn, type SealClock, sealTime } from './timing';
import type { SealObservation, SealView } from './types';

/** Where the ball hides how fast the film parts, a tear may have gone unseen for this share of a frame interval. */
const UNSEEN = 0.3;

export interface BurstOptions {
  readonly coverage: number;
  readonly exposure: Estimate | null;
  /** Last frame with the seal whole and first with it open, set by a person; null: found. */
  readonly burstBetween: readonly [number, number] | null;
  /** First frame in which the ball's leading point is past the seal plane; null: not known. */
  readonly ballFrameLimit: number | null;
}

export interface BurstReport {
  /** Last frame with the seal whole and first with it open. */
  readonly between: readonly [number, number];
  /** s after the zero of the clock. */
  readonly burst: Quantity;
  readonly posterior: Posterior;
  readonly bulgeOnset: Reported;
  readonly budget: readonly BudgetEntry[];
  readonly warnings: readonly Warning[];
}

/** The frames around the tear, the moments it lies between, and how late a tear shows. */
interface Bracket {
  readonly between: readonly [number, number];
  readonly from: Seconds;
  readonly to: Seconds;
  readonly late: Seconds;
  readonly warnings: readonly Warning[];
}

/**
 * The first moment the film is torn: between the last frame that shows it whole and the first that shows it open,
 * each moment as likely as any other. Observations in order of frames; frames may be missing.
 * Failures: `sealNotSeen`, `sealOpenFromStart`, `sealRestHidden`, `burstNotSeen`, `burstFramesOutside`.
 */
export function locateBurst(
  observations: readonly SealObservation[],
  clock: SealClock,
  view: SealView,
  options: BurstOptions,
): Outcome<BurstReport> {
  const limit = options.ballFrameLimit;
  const before = observations.filter((o) => limit === null || o.frame < limit);
  const after = observations.slice(before.length);
  if (before.length === 0) {
    return failure(
      'sealNotSeen',
      'The ball is past the seal plane in every frame that shows the seal.',
      'Use a clip that starts before the ball leaves the tube.',
    );
  }
  const rest = restOf(before, 2 * view.halfAperture);
  const bracket =
    options.burstBetween === null
      ? findBracket(before, after, rest, clock, view)
      : givenBracket(observations, options.burstBetween, clock, view);
  if (!bracket.ok) return bracket;
  const { between, from, to, late, warnings } = bracket.value;
  const delay: Delay = { early: halfExposure(options.exposure), late };
  const { moment, budget, posterior } = momentIn(
    {
      from,
      to,
      source: `Burst between frames ${between[0]} and ${between[1]}`,
    },
    delay,
    [],
    clock,
    view,
    options.coverage,
  );
  const whole = before.filter((o) => o.frame <= between[0]);
  return success({
    between,
    burst: moment,
    posterior,
    bulgeOnset: locateOnset(whole, rest, clock, view, options.coverage),
    budget,
    warnings,
  });
}

function givenBracket(
  observations: readonly SealObservation[],
  between: readonly [number, number],
  clock: SealClock,
  view: SealView,
): Outcome<Bracket> {
  const first = observations[0]?.frame ?? 0;
  const last = observations.at(-1)?.frame ?? 0;
  const [whole, open] = between;
  if (whole < first || open > last || whole >= open) {
    return failure(
      'burstFramesOutside',
      `The seal is stated whole in frame ${whole} and open in frame ${open}; the clip shows frames ${first} to ${last}.`,
      'Give two frames of the clip, the whole one first.',
    );
  }
  return success({ ...framesOf(between, clock, view), late: 0, warnings: [] });
}

function findBracket(
  before: readonly SealObservation[],
  after: readonly SealObservation[],
  rest: RestState,
  clock: SealClock,
  view: SealView,
): Outcome<Bracket> {
  if (tornFromStart(before)) {
    return failure(
      'sealOpenFromStart',
      'Pieces of the film are already flying in the first frames.',
      'Use a clip that starts before the seal bursts.',
    );
  }
  if (isHidden(rest)) {
    return failure(
      'sealRestHidden',
      'The first frames differ from the scene the seal is compared with, which hides the bulge.',
      'Use a clip that starts with the seal at rest, or state the frames around the burst by hand.',
    );
  }
  const tear = findTear(before, rest, after[0]?.frame ?? null);
  if (tear !== null) {
    const [from, to] = tear.window;
    return success({
      between: tear.between,
      from: sealTime(clock, view, from),
      to: sealTime(clock, view, to),
      late: sealTime(clock, view, from) - sealTime(clock, view, from - tear.delay),
      warnings: tear.doubt === null ? [] : [ambiguous(tear.doubt, tear.between)],
    });
  }
  const last = before.at(-1) as SealObservation;
  const bulged = hasMoved(last, rest);
  const next = after[0];
  if (next !== undefined && (bulged || leavesTrace(rest, after))) {
    const between = [last.frame, next.frame] as const;
    const bounds = framesOf(between, clock, view);
    return success({
      ...bounds,
      late: UNSEEN * (bounds.to - bounds.from),
      warnings: [
        {
          code: 'burstWithBall',
          message: `The film is still whole in frame ${between[0]} and the ball is through its plane in frame ${between[1]}.`,
          remedy: 'A higher recording rate would separate the two events.',
        },
      ],
    });
  }
  if (before.some((o) => hasMoved(o, rest))) {
    return failure(
      'burstNotSeen',
      'The film moves, but no frame shows it torn.',
      'Check the seal region, or state the frames around the burst by hand.',
    );
  }
  return failure(
    'sealNotSeen',
    'Nothing moves at the seal plane before the ball: there is no seal in view, or it opened before the clip starts.',
    'Check the muzzle plane and the seal region, or state that no seal is in view.',
  );
}

const framesOf = (between: readonly [number, number], clock: SealClock, view: SealView) => ({
  between,
  from: sealTime(clock, view, between[0]),
  to: sealTime(clock, view, between[1]),
});

const ambiguous = (doubt: string, between: readonly [number, number]): Warning => ({
  code: 'burstAmbiguous',
  message: `${doubt} The burst is taken to lie between frames ${between[0]} and ${between[1]}.`,
  remedy: 'Step through these frames and state the two around the burst by hand.',
});

/**
 * Whether the film left something flying, or standing at the ring, once the ball was through: then there was one.
 * A ball that is still passing moves the front from frame to frame; what is left of a film stays.
 */
function leavesTrace(rest: RestState, after: readonly SealObservation[]): boolean {
  if (after.some((o) => o.pieces >= rest.pieces + 3)) return true;
  const last = after.slice(-3);
  if (last.length < 3) return false;
  const fronts = last.map((o) => o.front - rest.front);
  const low = Math.min(...fronts);
  const high = Math.max(...fronts);
  const left = Math.min(Math.abs(low), Math.abs(high));
  return left > 2 && low * high > 0 && high - low < 0.15 * left;
}
