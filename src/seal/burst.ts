import type { Quantity, Reported } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import type { Seconds } from '../core/units';
import type { BudgetEntry, Posterior, Warning } from '../shot/result';
import { uniformU } from '../uncertainty/quantity';
import { type BurstOptions, findBracket, givenBracket, USUAL_EXPOSURE } from './bracket';
import type { Density } from './density';
import { locateOnset } from './onset';
import { restOf } from './tear';
import {
  type Delay,
  halfExposure,
  momentFrom,
  momentIn,
  type SealClock,
  sealTime,
  typeB,
} from './timing';
import type { SealObservation, SealView } from './types';

export interface BurstReport {
  /** Last frame with the seal whole and first with it open. */
  readonly between: readonly [number, number];
  /** s after the zero of the clock. */
  readonly burst: Quantity;
  readonly posterior: Posterior;
  /** The part of it that the frames leave open, the clock apart. */
  readonly film: Density;
  readonly bulgeOnset: Reported;
  readonly budget: readonly BudgetEntry[];
  readonly warnings: readonly Warning[];
}

/**
 * The first moment the film is torn, from what the frames around it show (see `burstDensity`); where the film stands
 * out too little, or the frames are given, each moment between them is as likely as any other. Observations in order
 * of frames; frames may be missing.
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
      { form: 'late' },
    );
  }
  const rest = restOf(before, 2 * view.halfAperture);
  const bracket =
    options.burstBetween === null
      ? findBracket(before, after, rest, clock, view, options)
      : givenBracket(observations, options.burstBetween, clock, view);
  if (!bracket.ok) return bracket;
  const { between, when, warnings } = bracket.value;
  const found =
    'from' in when
      ? inWindow(when, between, clock, view, options)
      : momentFrom(
          when,
          exposureSource(options, between, clock, view),
          clock,
          view,
          options.coverage,
        );
  const whole = before.filter((o) => o.frame <= between[0]);
  return success({
    between,
    burst: found.moment,
    posterior: found.posterior,
    film: found.film,
    bulgeOnset: locateOnset(whole, rest, clock, view, options.coverage),
    budget: found.budget,
    warnings,
  });
}

function inWindow(
  { from, to, late }: { from: Seconds; to: Seconds; late: Seconds },
  between: readonly [number, number],
  clock: SealClock,
  view: SealView,
  options: BurstOptions,
) {
  const delay: Delay = { early: halfExposure(options.exposure), late };
  const source = `Burst between frames ${between[0]} and ${between[1]}`;
  return momentIn({ from, to, source }, delay, clock, view, options.coverage);
}

/** An exposure moves the moment by up to half its own error. */
function exposureSource(
  { exposure }: BurstOptions,
  between: readonly [number, number],
  clock: SealClock,
  view: SealView,
): BudgetEntry[] {
  const interval = sealTime(clock, view, between[1]) - sealTime(clock, view, between[0]);
  const u = exposure === null ? uniformU((USUAL_EXPOSURE * interval) / 2) : exposure.u;
  return [typeB('Exposure', u, 's', 0.5)];
}
