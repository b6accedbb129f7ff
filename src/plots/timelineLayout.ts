import { type ScaleContinuousNumeric, scaleLinear, scaleSymlog } from 'd3';
import type { TimelineEvent } from '../core/timeline';
import { domainOf, padded } from './domain';
import type { LabelledEvent } from './props';
import type { ShownUnit } from './units';

/** Room at both ends of the strip, CSS px. */
const SIDE = 16;
const TICK_SPACING = 70;
/** A width no character of the labels exceeds on average, CSS px. */
const CHARACTER = 6.9;
const GAP = 6;
/** Where far events would squeeze the near ones into less than one part in this of the strip, far times are compressed. */
const MOST_SQUEEZED = 6;
const NEAR: readonly TimelineEvent['kind'][] = ['burst', 'contact', 'exit'];

/** Shown time to CSS px, with its ticks. */
export function timeScale(events: readonly TimelineEvent[], unit: ShownUnit, width: number) {
  const spanOf = (some: readonly TimelineEvent[]) =>
    domainOf(some.flatMap(({ low, high }) => [low * unit.perSi, high * unit.perSi]));
  const domain = padded(spanOf(events), 0.03);
  const near = spanOf(events.filter(({ kind }) => NEAR.includes(kind)));
  const nearSpan = near[1] - near[0];
  const range = [SIDE, width - SIDE];
  const count = Math.max(2, Math.floor(width / TICK_SPACING));
  const compressed = nearSpan > 0 && domain[1] - domain[0] > MOST_SQUEEZED * nearSpan;
  if (!compressed) {
    const scale = scaleLinear().domain(domain).range(range);
    return { scale: place(scale), ticks: scale.ticks(count), compressed };
  }
  const scale = scaleSymlog().constant(nearSpan).domain(domain).range(range);
  return { scale: place(scale), ticks: spread(scale, domain), compressed };
}

const place = (scale: ScaleContinuousNumeric<number, number>) => (time: number) => scale(time);

/** Zero and round times to both sides, powers of ten first, as far apart as their numbers need. */
function spread(
  scale: ScaleContinuousNumeric<number, number>,
  [low, high]: readonly [number, number],
): readonly number[] {
  const kept: number[] = [0];
  const steps = [1, 5, 2].flatMap((step) =>
    [3, 2, 1, 0, -1, -2].map((power) => step * 10 ** power),
  );
  for (const step of steps) {
    for (const side of [-1, 1]) {
      const tick = side * step;
      if (tick < low || tick > high) continue;
      if (kept.every((other) => Math.abs(scale(other) - scale(tick)) >= TICK_SPACING / 2)) {
        kept.push(tick);
      }
    }
  }
  return kept.filter((tick) => tick >= low && tick <= high).sort((a, b) => a - b);
}

interface Given {
  readonly event: LabelledEvent;
  readonly at: number;
  readonly text: string;
}

/**
 * Each label gets a row of its own, so that none meets another; those in the left half lean right with the last
 * nearest the strip, those in the right half lean left with the first nearest, so that few lines run through a label.
 */
export function layOutLabels(given: readonly Given[], width: number) {
  const rightOf = given.filter(({ at }) => at < width / 2).reverse();
  const leftOf = given.filter(({ at }) => at >= width / 2);
  return [
    ...rightOf.map((one) => ({ ...one, anchor: 'start' as const })),
    ...leftOf.map((one) => ({ ...one, anchor: 'end' as const })),
  ].map((one, row) => {
    const length = one.text.length * CHARACTER;
    const textAt =
      one.anchor === 'start'
        ? Math.max(0, Math.min(one.at + GAP, width - length))
        : Math.min(width, Math.max(one.at - GAP, length));
    return { ...one, row, textAt };
  });
}
