/** One frame of the track, in order of time. */
export interface FrameOfTrack {
  readonly frame: number;
  /** Whether a ball's centre was found there. */
  readonly found: boolean;
}

/** Less than this share of the frames shows a ball: a disc is round in a third of its turn. */
const ROUND_SHARE = 0.45;
/** At least so many frames in a row without, and so many such gaps, or something passed before the ball. */
const GAP = 3;
const FEWEST_GAPS = 2;

/**
 * Whether what was followed looks like a ball only now and then: a flat piece that tumbles and shows its round face
 * every half turn. Only the frames between the first and the last ball found count.
 */
export function tumbles(frames: readonly FrameOfTrack[]): boolean {
  const seen = frames.flatMap(({ found }, i) => (found ? [i] : []));
  const span = (seen.at(-1) ?? 0) - (seen[0] ?? 0) + 1;
  const gaps = seen.filter((at, k) => k > 0 && at - (seen[k - 1] as number) > GAP).length;
  return gaps >= FEWEST_GAPS && seen.length < ROUND_SHARE * span;
}
