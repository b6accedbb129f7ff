import type { Clock } from '../clock/clock';
import { intervalFactor, isAvailable } from '../core/estimate';
import type { ImagePoint, ImageVector } from '../core/units';
import { flightLine } from '../geometry/flightLine';
import type { Reduction } from '../reduction/types';
import type { Result } from '../shot/result';
import { frameAtTime } from './frameAtTime';

/** Distance of an image point along a line from its origin, px. */
export const alongLine = (line: { origin: ImagePoint; axis: ImageVector }) =>
  flightLine(line.origin, line.axis).along;

/** A point of the fitted path: where in the image, when in frames, and how far its coverage band reaches. */
export interface PathPoint {
  readonly at: ImagePoint;
  readonly frame: number;
  /** px along the axis */
  readonly halfWidth: number;
}

/** The fitted path laid back into the image: along the axis, at the used centres' mean distance from it. */
export function fittedPath(
  { result, curve }: Reduction,
  muzzle: ImagePoint,
  clock: Clock,
  frameCount: number,
): readonly PathPoint[] | null {
  if (curve === null || !isAvailable(result.exitVelocity)) return null;
  const line = flightLine(muzzle, result.axis);
  const across = meanAcross(result, line.across);
  if (across === null) return null;
  const [ax, ay] = line.axis;
  const factor = intervalFactor(result.exitVelocity);
  return Array.from(curve.s, (s, i) => {
    const [x, y] = line.pointAt(s / result.scale.value);
    const at: ImagePoint = [x - across * ay, y + across * ax];
    const frame = frameAtTime(clock, frameCount, curve.times[i] as number, at[0], at[1]);
    return { at, frame, halfWidth: (factor * (curve.sU[i] as number)) / result.scale.value };
  });
}

function meanAcross(result: Result, across: (x: number, y: number) => number): number | null {
  let sum = 0;
  let count = 0;
  for (const { used, x, y } of result.positions) {
    if (!used || x === null || y === null) continue;
    sum += across(x, y);
    count += 1;
  }
  return count === 0 ? null : sum / count;
}

/** A moment of the shot, in seconds, with its coverage interval. */
export interface Instant {
  readonly kind: 'burst' | 'exit' | 'onset' | 'contact';
  readonly time: number;
  readonly low: number;
  readonly high: number;
}

/** The moments a result states, in the order of time. */
export function instantsOf(result: Result): readonly Instant[] {
  const onset = 'value' in result.sealBurst ? [result.sealBurst.bulgeOnset] : [];
  const stated = [
    ...onset.map((quantity) => ({ kind: 'onset' as const, quantity })),
    { kind: 'burst' as const, quantity: result.sealBurst },
    { kind: 'contact' as const, quantity: result.contact },
    { kind: 'exit' as const, quantity: result.exitTime },
  ];
  return stated
    .flatMap(({ kind, quantity }) => {
      if (!('value' in quantity)) return [];
      const [low, high] = quantity.interval;
      return [{ kind, time: quantity.value, low, high }];
    })
    .sort((a, b) => a.time - b.time);
}
