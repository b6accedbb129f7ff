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
 * Cuts the indices into spans of at most `longest` frames, where the decoder can start if there is such a place in the
 * span, and over a long gap where it can start again within it.
 */
export function spansOf(indices: readonly number[], key: Uint8Array, longest: number): Span[] {
  const spans: Span[] = [];
  let wanted: number[] = [];
  /** Place in `wanted` of the last frame that the decoder can start at, or just before. */
  let start = 0;
  const close = (count: number) => {
    const [first, last] = [wanted[0], wanted[count - 1]];
    if (first !== undefined && last !== undefined) {
      spans.push({ first, last, wanted: wanted.slice(0, count) });
    }
    wanted = wanted.slice(count);
    start = 0;
  };
  for (const index of indices) {
    const previous = wanted.at(-1) ?? index;
    const starts = startsBetween(previous, index, key);
    if (starts && index - previous > WORTH_A_SEEK) close(wanted.length);
    if (starts) start = wanted.length;
    wanted.push(index);
    while (index - (wanted[0] as number) >= longest) close(start > 0 ? start : wanted.length - 1);
  }
  close(wanted.length);
  return spans;
}

/** Whether a decoder can start after frame `previous` and not later than at `index`. */
const startsBetween = (previous: number, index: number, key: Uint8Array): boolean =>
  key.subarray(previous + 1, index + 1).includes(1);

/** Whether no span needs a frame of the one before to be decoded. */
export const standApart = (spans: readonly Span[], key: Uint8Array): boolean =>
  spans.every(({ first }, i) => i === 0 || startsBetween((spans[i - 1] as Span).last, first, key));
