import type { PlaySpan } from './player';

/** Frames before and after the ball's that belong to its passage: what leads up to it is to be seen too. */
const MARGIN = 4;

/** The frames the ball passes in, those of used centres. Null: none is known. */
export function ballSpan(
  positions: readonly { readonly frame: number; readonly used: boolean }[],
): PlaySpan | null {
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { frame, used } of positions) {
    if (!used) continue;
    first = Math.min(first, frame);
    last = Math.max(last, frame);
  }
  return first > last ? null : { first, last };
}

/** The first frame in which the ball stands wholly outside the muzzle, `diameter` in metres. Null: in none used. */
export function firstClear(
  positions: readonly {
    readonly frame: number;
    readonly used: boolean;
    readonly s: number | null;
  }[],
  diameter: number,
): number | null {
  return positions.find(({ used, s }) => used && s !== null && s >= diameter)?.frame ?? null;
}

/** The ball's passage with a little before and after it, within the film. */
export function passageOf(
  positions: Parameters<typeof ballSpan>[0],
  frameCount: number,
): PlaySpan | null {
  const span = ballSpan(positions);
  if (span === null) return null;
  return {
    first: Math.max(0, span.first - MARGIN),
    last: Math.min(frameCount - 1, span.last + MARGIN),
  };
}
