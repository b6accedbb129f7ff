import { frameToTop, spreadLabels, type TimeScale } from './mapping';
import type { StreakInstant } from './props';

interface InstantLabelsProps {
  readonly instants: readonly StreakInstant[];
  readonly time: TimeScale;
  readonly height: number;
}

/** Distance of labels from one another, and their own height, CSS px. */
const SPACING = 19;
const LABEL_HEIGHT = 18;
/** Width of the strip in which a label is joined to its line, CSS px. */
const LEADER = 22;

/** Labels by the right edge, each level with its line where there is room, joined to it by a leader. */
export function InstantLabels({ instants, time, height }: InstantLabelsProps) {
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
      <svg class="streak-leaders" width={LEADER} height={height} aria-hidden="true">
        {seen.map(({ kind }, index) => (
          <path
            key={kind}
            class={`streak-instant-${kind}`}
            d={`M0 ${middles[index]}L${LEADER - 6} ${lines[index]}H${LEADER}`}
          />
        ))}
      </svg>
      {seen.map(({ kind, label }, index) => (
        <span
          key={kind}
          class={`streak-label streak-instant-${kind}`}
          style={{ top: `${(middles[index] ?? 0) - LABEL_HEIGHT / 2}px` }}
        >
          {label}
        </span>
      ))}
    </>
  );
}
