import type { Clock } from '../clock/clock';
import type { Estimate, Quantity } from '../core/estimate';
import type { Seconds } from '../core/units';
import type { BudgetEntry, Posterior } from '../shot/result';
import { combine, entry } from '../uncertainty/budget';
import { uniformU } from '../uncertainty/quantity';
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

/** Middle of the exposure of a frame at the line the seal is on; between frames, in proportion. */
export function sealTime(clock: SealClock, view: SealView, frame: number): Seconds {
  const [x, y] = view.plane;
  const whole = Math.floor(frame);
  const time = clock.timeAt(whole, x, y);
  return frame === whole ? time : time + (frame - whole) * (clock.timeAt(whole + 1, x, y) - time);
}

/**
 * The moment inside a window as a quantity and as a density: rectangular window and delay convolved with the clock's sources
 * (all Type B by JCGM 100:2008, 4.3.7; degrees of freedom unlimited).
 */
export function momentIn(
  window: Window,
  delay: Delay,
  extra: readonly BudgetEntry[],
  clock: SealClock,
  view: SealView,
  coverage: number,
): { moment: Quantity; budget: BudgetEntry[]; posterior: Posterior } {
  const value = (window.from + window.to + delay.early - delay.late) / 2;
  const a = (window.to - window.from) / 2;
  const b = (delay.early + delay.late) / 2;
  const line = clock.lineAt(view.plane[0], view.plane[1]);
  const others = [
    ...extra,
    typeB('Recording rate', clock.rateRelativeU, '1', value),
    typeB('Time stamp of a frame', clock.frameTimeU, 's', 1),
    typeB('Line time of the shutter', clock.lineTime.u, 's', line),
  ];
  const sigma = combine(others).u;
  const half = coverageHalfWidth(a, b, sigma, coverage);
  const budget = [
    rectangular(window.source, a),
    rectangular('Exposure, and time until a tear shows', b),
    ...others,
  ].filter((e) => e.contribution > 0);
  return {
    moment: {
      value,
      u: combine(budget).u,
      interval: [value - half, value + half],
      coverage,
      dof: null,
    },
    budget,
    posterior: trapezoid(value, a, b),
  };
}

/** How probable each moment is after two rectangular spreads of half-widths `a` and `b`; the clock's sources move all alike. */
function trapezoid(value: Seconds, a: Seconds, b: Seconds): Posterior {
  const outer = a + b;
  const inner = Math.abs(a - b);
  const height = 1 / (2 * Math.max(a, b));
  return {
    times: [value - outer, value - inner, value + inner, value + outer],
    density: b === 0 || a === 0 ? [height, height, height, height] : [0, height, height, 0],
  };
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
