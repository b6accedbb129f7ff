import type { Clock } from '../clock/clock';
import type { Estimate, Quantity } from '../core/estimate';
import type { Seconds } from '../core/units';
import type { BudgetEntry, Posterior } from '../shot/result';
import { combine, entry } from '../uncertainty/budget';
import { uniformU } from '../uncertainty/quantity';
import { type Density, intervalOf, momentsOf, posteriorOf, withNormal } from './density';
import { coverageHalfWidth } from './spread';
import type { SealView } from './types';

/** The part of the film's clock the seal needs. */
export type SealClock = Pick<
  Clock,
  'timeAt' | 'lineAt' | 'frameTimeU' | 'rateRelativeU' | 'lineTime'
>;

/** A moment known to lie between two bounds, each point as likely as any other, besides smaller sources. */
export interface Window {
  readonly from: Seconds;
  readonly to: Seconds;
  /** What the width stands for, in the words of the budget. */
  readonly source: string;
}

/** How late a change shows: between `-early` and `late` after it happened, each delay as likely. */
export interface Delay {
  readonly early: Seconds;
  readonly late: Seconds;
}

/** Points of the curve of a window. */
const WINDOW_POINTS = 101;

/** Middle of the exposure of a frame at the line the seal is on; between frames, in proportion. */
export function sealTime(clock: SealClock, view: SealView, frame: number): Seconds {
  const [x, y] = view.plane;
  const whole = Math.floor(frame);
  const time = clock.timeAt(whole, x, y);
  return frame === whole ? time : time + (frame - whole) * (clock.timeAt(whole + 1, x, y) - time);
}

/** A moment, where its uncertainty comes from, and how probable others are. */
export interface Moment {
  readonly moment: Quantity;
  readonly budget: readonly BudgetEntry[];
  readonly posterior: Posterior;
  /** What the frames around it leave open, the clock apart. */
  readonly film: Density;
}

/**
 * A moment of which the film tells how probable each is, as a quantity: its mean; the clock's and `extra` sources
 * convolved with it (JCGM 101:2008, 5.2), not added as if both were normal.
 */
export function momentFrom(
  film: Density,
  extra: readonly BudgetEntry[],
  clock: SealClock,
  view: SealView,
  coverage: number,
): Moment {
  const { mean, sd } = momentsOf(film);
  const own = [entry('What the frames around it show', 'A', sd, 's', 1, null)];
  const others = [...extra, ...clockSources(mean, clock, view)];
  return momentOf(mean, own, others, film, coverage, (all) => intervalOf(all, coverage));
}

/**
 * The budget is what the frames leave open (`own`) and, unless it is nothing, what other sources do; `intervalIn` reads
 * the interval off how probable each moment is by both, or off the standard uncertainty of the others.
 */
function momentOf(
  value: Seconds,
  own: readonly BudgetEntry[],
  others: readonly BudgetEntry[],
  film: Density,
  coverage: number,
  intervalIn: (all: Density, othersU: Seconds) => Quantity['interval'],
): Moment {
  const othersU = combine(others).u;
  const all = withNormal(film, othersU);
  const interval = intervalIn(all, othersU);
  const budget = [...own, ...others.filter((e) => e.contribution > 0)];
  return {
    moment: { value, u: combine(budget).u, interval, coverage, dof: null },
    budget,
    posterior: posteriorOf(all),
    film,
  };
}

/** What the clock leaves open of a moment. */
function clockSources(value: Seconds, clock: SealClock, view: SealView): BudgetEntry[] {
  return [
    typeB('Recording rate', clock.rateRelativeU, '1', value),
    typeB('Time stamp of a frame', clock.frameTimeU, 's', 1),
    typeB(
      'Line time of the shutter',
      clock.lineTime.u,
      's',
      clock.lineAt(view.plane[0], view.plane[1]),
    ),
  ];
}

/**
 * The moment inside a window as a quantity and as a density: rectangular window and delay convolved with the clock's sources
 * (all Type B by JCGM 100:2008, 4.3.7; degrees of freedom unlimited).
 */
export function momentIn(
  window: Window,
  delay: Delay,
  clock: SealClock,
  view: SealView,
  coverage: number,
): Moment {
  const value = (window.from + window.to + delay.early - delay.late) / 2;
  const a = (window.to - window.from) / 2;
  const b = (delay.early + delay.late) / 2;
  const own = [
    rectangular(window.source, a),
    rectangular('Exposure, and time until a tear shows', b),
  ].filter((e) => e.contribution > 0);
  const others = clockSources(value, clock, view);
  return momentOf(value, own, others, trapezoid(value, a, b), coverage, (_, othersU) => {
    const half = coverageHalfWidth(a, b, othersU, coverage);
    return [value - half, value + half];
  });
}

/** Density of the sum of two rectangular quantities about a value. */
function trapezoid(value: Seconds, a: Seconds, b: Seconds): Density {
  const wide = Math.max(a, b);
  const narrow = Math.min(a, b);
  const times = Array.from(
    { length: WINDOW_POINTS },
    (_, i) => value + (wide + narrow) * ((2 * i) / (WINDOW_POINTS - 1) - 1),
  );
  const weights = times.map((time) => {
    const out = wide + narrow - Math.abs(time - value);
    return narrow === 0 ? 1 : Math.min(1, Math.max(0, out) / (2 * narrow));
  });
  return { times, weights };
}

/** An entry known from other than repeated observation, without limit to its degrees of freedom. */
export const typeB = (source: string, u: number, unit: string, sensitivity: number): BudgetEntry =>
  entry(source, 'B', u, unit, sensitivity, null);

/** A time known only to lie within `half` of its value, s. */
const rectangular = (source: string, half: Seconds): BudgetEntry =>
  entry(source, 'B', uniformU(half), 's', 1, null, 'rectangular');

/** Half the exposure; 0 where it is not known. */
export const halfExposure = (exposure: Estimate | null): Seconds =>
  exposure === null ? 0 : exposure.value / 2;
