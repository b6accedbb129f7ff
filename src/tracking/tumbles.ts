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

/** Frames in a row without a ball, from which on what follows has to be more than a glimpse. */
const LONG_GAP = 8;
/** A glimpse: fewer frames with a ball than this share of the gap's. */
const GLIMPSE = 0.25;

/**
 * Frames with a ball that a long gap parts from most of them, and few beside it: a piece that turns its round face to
 * the camera once, long after the ball broke. A ball that a post hid is seen for longer.
 */
export function glimpses(frames: readonly FrameOfTrack[]): ReadonlySet<number> {
  const groups: { readonly from: number; to: number; readonly frames: number[] }[] = [];
  frames.forEach(({ frame, found }, i) => {
    if (!found) return;
    const last = groups.at(-1);
    if (last === undefined || i - last.to > LONG_GAP) {
      groups.push({ from: i, to: i, frames: [frame] });
    } else {
      last.to = i;
      last.frames.push(frame);
    }
  });
  const most = Math.max(0, ...groups.map((group) => group.frames.length));
  const main = groups.findIndex((group) => group.frames.length === most);
  return new Set(
    groups.flatMap((group, k) => {
      if (k === main) return [];
      const [before, after] = k < main ? [group, groups[k + 1]] : [groups[k - 1], group];
      const gap = (after?.from ?? 0) - (before?.to ?? 0) - 1;
      return group.frames.length < GLIMPSE * gap ? group.frames : [];
    }),
  );
}
