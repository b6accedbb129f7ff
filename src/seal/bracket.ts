import type { Estimate } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import type { Seconds } from '../core/units';
import type { Warning } from '../shot/result';
import { type Density, quantileOf } from './density';
import { burstDensity, type Surroundings } from './instant';
import { firstOpening, templateOf } from './opening';
import { hasMoved, isHidden, type RestState } from './tear';
import { findTear, type Tear, tornFromStart } from './tearFrame';
import { type SealClock, sealTime } from './timing';
import type { SealObservation, SealView } from './types';

/** Where the ball hides how fast the film parts, a tear may have gone unseen for this share of a frame interval. */
const UNSEEN = 0.3;

/** Contrast to a pixel's noise from which on the film's outline is trusted. */
const PLAIN_CONTRAST = 12;

/** A shutter whose exposure is not stated is open for this share of the frame interval, give or take a half of it. */
export const USUAL_EXPOSURE = 0.5;

export interface BurstOptions {
  readonly coverage: number;
  readonly exposure: Estimate | null;
  /** Last frame with the seal whole and first with it open, set by a person; null: found. */
  readonly burstBetween: readonly [number, number] | null;
  /** First frame in which the ball's leading point is past the seal plane; null: not known. */
  readonly ballFrameLimit: number | null;
  /** When the ball's leading point reaches the seal plane: the film is open by then; null: not known. */
  readonly contact: Seconds | null;
}

/**
 * The frames around the tear, and either how probable each moment between them is or, where the frames tell no more,
 * the moments it lies between and how late a tear shows.
 */
export interface Bracket {
  readonly between: readonly [number, number];
  readonly when: Density | { readonly from: Seconds; readonly to: Seconds; readonly late: Seconds };
  readonly warnings: readonly Warning[];
}

/** The frames as a person stated them. */
export function givenBracket(
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
      { whole, open, first, last },
    );
  }
  return success({ between, when: { ...windowOf(between, clock, view), late: 0 }, warnings: [] });
}

/** The frames as the film shows them. */
export function findBracket(
  before: readonly SealObservation[],
  after: readonly SealObservation[],
  rest: RestState,
  clock: SealClock,
  view: SealView,
  options: BurstOptions,
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
  const next = after[0];
  const last = before.at(-1) as SealObservation;
  const bulged = hasMoved(last, rest);
  const tear = findTear(before, rest, next?.frame ?? null);
  const lost = firstOpening(before);
  if (tear !== null || lost !== null || (next !== undefined && bulged)) {
    // Growth tells early and now and then too early; film that is gone is gone.
    const hint = lost === null ? last : (before[lost.open - 1] as SealObservation);
    const ends = lost !== null || (next !== undefined && bulged);
    const early = ends && isFaint(hint) ? null : tear;
    const open = Math.min(early?.open ?? before.length, lost?.open ?? before.length);
    const surely = lost?.surely ?? early?.surely ?? before.length;
    const told = densityOf(before, { open, surely }, rest, clock, view, options);
    if (told !== null) {
      const { when, firstOpen } = told;
      const frames = [...before, ...after].map(({ frame }) => frame);
      const between = [frames[firstOpen - 1] as number, frames[firstOpen] as number] as const;
      return success({
        between,
        when,
        warnings: open === before.length ? [withBall(between)] : [],
      });
    }
  }
  if (tear !== null) {
    const from = sealTime(clock, view, tear.window[0]);
    return success({
      between: tear.between,
      when: {
        from,
        to: sealTime(clock, view, tear.window[1]),
        late: from - sealTime(clock, view, tear.window[0] - tear.delay),
      },
      warnings: tear.doubt === null ? [] : [ambiguous(tear.doubt, tear.between)],
    });
  }
  if (next !== undefined && (bulged || leavesTrace(rest, after))) {
    const between = [last.frame, next.frame] as const;
    const { from, to } = windowOf(between, clock, view);
    return success({
      between,
      when: { from, to, late: UNSEEN * (to - from) },
      warnings: [withBall(between)],
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
    { form: 'nothing' },
  );
}

/** Whether the film is there, but stands out too little for its outline, cut at five standard deviations of noise, to be trusted. */
function isFaint({ picture }: SealObservation): boolean {
  const template = templateOf(picture);
  return (
    template !== null &&
    Math.abs(template.strength) <= PLAIN_CONTRAST * picture.noise * picture.cell
  );
}

const windowOf = (between: readonly [number, number], clock: SealClock, view: SealView) => ({
  from: sealTime(clock, view, between[0]),
  to: sealTime(clock, view, between[1]),
});

/** How probable each moment is, s, and the first frame more likely open than whole; null: too little of the film stands out. */
function densityOf(
  before: readonly SealObservation[],
  { open, surely }: Pick<Surroundings, 'open' | 'surely'>,
  rest: RestState,
  clock: SealClock,
  view: SealView,
  options: BurstOptions,
): { when: Density; firstOpen: number } | null {
  const seconds = before.map(({ frame }) => sealTime(clock, view, frame));
  const last = before[open - 1] as SealObservation;
  const zero = seconds[open - 1] as Seconds;
  const interval = sealTime(clock, view, last.frame + 1) - zero;
  const times = seconds.map((time) => (time - zero) / interval);
  const exposure = options.exposure === null ? USUAL_EXPOSURE : options.exposure.value / interval;
  const density = burstDensity({
    ...{ observations: before, times, open, surely, exposure },
    still: !hasMoved(last, rest),
    latest: options.contact === null ? null : (options.contact - zero) / interval,
    halfAperture: view.halfAperture,
  });
  if (density === null) return null;
  const middle = quantileOf(density, 0.5);
  const firstOpen = times.findIndex((time) => time + exposure / 2 > middle);
  return {
    when: { times: density.times.map((t) => zero + t * interval), weights: density.weights },
    firstOpen: Math.max(1, firstOpen < 0 ? before.length : firstOpen),
  };
}

const withBall = ([whole, through]: readonly [number, number]): Warning => ({
  code: 'burstWithBall',
  message: `The film is still whole in frame ${whole} and the ball is through its plane in frame ${through}.`,
  remedy: 'A higher recording rate would separate the two events.',
  values: { whole, through },
});

const ambiguous = (
  { faint, plain }: NonNullable<Tear['doubt']>,
  between: readonly [number, number],
): Warning => ({
  code: 'burstAmbiguous',
  values: { faint, plain, whole: between[0], open: between[1] },
  message: `Frame ${faint} shows a faint sign of a tear, frame ${plain} plain ones. The burst is taken to lie between frames ${between[0]} and ${between[1]}.`,
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
