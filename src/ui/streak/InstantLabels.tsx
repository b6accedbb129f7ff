import { frameToTop, spreadLabels, type TimeScale } from './mapping';
import type { StreakInstant } from './props';

interface InstantLabelsProps {
  readonly instants: readonly StreakInstant[];
  readonly time: TimeScale;
  readonly height: number;
  /** The side the ball flies away from, where labels hide least. */
  readonly side: 'left' | 'right';
}

/** Distance of labels from one another, and their own height, CSS px. */
const SPACING = 19;
const LABEL_HEIGHT = 18;
/** Width of the strip in which a label is joined to its line, CSS px. */
const LEADER = 22;

/** Labels near one edge, each level with its line where there is room, joined to it by a leader. */
export function InstantLabels({ instants, time, height, side }: InstantLabelsProps) {
  const seen = instants.filter(({ frame }) => {
    const top = frameToTop(time, frame);
    return top >= 0 && top <= height;
  });
  const lines = seen.map(({ frame }) => frameToTop(time, frame));
  const middles = spreadLabels(
    lines.map((top) => Math.max(top, LABEL_HEIGHT / 2)),
    SPACING,
    height - LABEL_HEIGHT / 2,
  );
  return (
    <>
      <svg
        class={`streak-leaders streak-leaders-${side}`}
        width={LEADER}
        height={height}
        aria-hidden="true"
      >
        {seen.map(({ kind }, index) => (
          <path
            key={kind}
            class={`streak-instant-${kind}`}
            d={
              side === 'left'
                ? `M0 ${lines[index]}H6L${LEADER} ${middles[index]}`
                : `M0 ${middles[index]}L${LEADER - 6} ${lines[index]}H${LEADER}`
            }
          />
        ))}
      </svg>
      {seen.map(({ kind, label }, index) => (
        <span
          key={kind}
          class={`streak-label streak-label-${side} streak-instant-${kind}`}
          style={{ top: `${(middles[index] ?? 0) - LABEL_HEIGHT / 2}px` }}
        >
          {label}
        </span>
      ))}
    </>
  );
}
