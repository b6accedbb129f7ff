import type { Clip } from './canvas';
import { randomStream } from './random';
import type { ClipSpec, Direction, Truth } from './scenario';

/** Ticks a second of an uneven clip's timestamps, so that a container can hold them exactly. */
export const TICKS = 90_000;

/** Middle of each frame's exposure at the first line read, s; frame 0 at 0. */
export function frameTimes(spec: ClipSpec, truth: Truth): Float64Array {
  const times = new Float64Array(spec.frames);
  if (spec.unevenFrames === 0) return times.map((_, i) => i / truth.rate);
  const random = randomStream(spec.seed, 'clock');
  for (let i = 1; i < times.length; i++) {
    const interval = 1 / truth.rate + random.uniform(-spec.unevenFrames, spec.unevenFrames);
    times[i] = (times[i - 1] as number) + Math.round(interval * TICKS) / TICKS;
  }
  return times.map((t) => Math.round(t * TICKS) / TICKS);
}

/** Lines read before the one at a place of the upright image (not a whole number between lines). */
export function lineAt(
  direction: Direction,
  width: number,
  height: number,
  x: number,
  y: number,
): number {
  switch (direction) {
    case 'right':
      return x;
    case 'left':
      return width - 1 - x;
    case 'down':
      return y;
    case 'up':
      return height - 1 - y;
  }
}

/** The parts of the image exposed together, each with its number of lines read before it. */
export function strips(spec: ClipSpec, truth: Truth): { clip: Clip; line: number }[] {
  const { width, height } = spec.image;
  const whole = { x0: 0, x1: width, y0: 0, y1: height };
  if (truth.lineTime === 0) return [{ clip: whole, line: 0 }];
  const { direction } = spec.readout;
  const sideways = direction === 'right' || direction === 'left';
  return Array.from({ length: sideways ? width : height }, (_, k) => ({
    clip: sideways ? { ...whole, x0: k, x1: k + 1 } : { ...whole, y0: k, y1: k + 1 },
    line: lineAt(direction, width, height, k, k),
  }));
}
