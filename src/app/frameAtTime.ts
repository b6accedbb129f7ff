import type { Clock } from '../clock/clock';
import type { Seconds } from '../core/units';

/**
 * The frame, fractions counting, whose exposure at the given image place has its middle at `time`.
 * Between frames it runs evenly; beyond the film it goes on at the usual interval.
 */
export function frameAtTime(
  clock: Clock,
  frameCount: number,
  time: Seconds,
  x: number,
  y: number,
): number {
  const atFirstLine = time - clock.lineAt(x, y) * clock.lineTime.value;
  const last = Math.max(0, frameCount - 1);
  if (atFirstLine <= clock.frameTime(0)) {
    return (atFirstLine - clock.frameTime(0)) / clock.frameInterval;
  }
  if (atFirstLine >= clock.frameTime(last)) {
    return last + (atFirstLine - clock.frameTime(last)) / clock.frameInterval;
  }
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (clock.frameTime(middle) <= atFirstLine) low = middle;
    else high = middle;
  }
  const from = clock.frameTime(low);
  return low + (atFirstLine - from) / (clock.frameTime(high) - from);
}
