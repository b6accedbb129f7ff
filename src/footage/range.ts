import type { FrameRange } from '../core/film';
import { ExitframeError } from '../core/reason';

/** The indices a range asks for. Throws `badRange` where it is not within the film. */
export function indicesOf({ start, end, step = 1 }: FrameRange, count: number): number[] {
  const whole = [start, end, step].every(Number.isInteger);
  if (!whole || step < 1 || start < 0 || end > count || end < start) {
    throw new ExitframeError(
      'badRange',
      `Frames ${start} to ${end} in steps of ${step} are not in a film of ${count} frames.`,
    );
  }
  return Array.from({ length: Math.ceil((end - start) / step) }, (_, i) => start + i * step);
}

/** Frames decoded in one go. */
export interface Span {
  readonly first: number;
  /** Inclusive. */
  readonly last: number;
  /** Indices asked for, from `first` to `last`. */
  readonly wanted: readonly number[];
}

/** Decoding on through so many frames nobody asked for is cheaper than starting anew. */
const WORTH_A_SEEK = 12;

/**
 * Cuts the indices into spans of at most `longest` frames, and over a long gap where the decoder
 * can start again within it.
 */
export function spansOf(indices: readonly number[], key: Uint8Array, longest: number): Span[] {
  const spans: Span[] = [];
  let wanted: number[] = [];
  const close = () => {
    const first = wanted[0];
    const last = wanted.at(-1);
    if (first !== undefined && last !== undefined) spans.push({ first, last, wanted });
    wanted = [];
  };
  for (const index of indices) {
    const first = wanted[0] ?? index;
    const previous = wanted.at(-1) ?? index;
    const restart =
      index - previous > WORTH_A_SEEK && key.subarray(previous + 1, index + 1).includes(1);
    if (index - first >= longest || restart) close();
    wanted.push(index);
  }
  close();
  return spans;
}
