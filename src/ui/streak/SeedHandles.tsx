import { useRef, useState } from 'preact/hooks';
import { Cased } from '../film/Cased';
import { Handle, type NudgeSize } from '../film/Handle';
import { slopeOf } from './mapping';
import type { StreakPlace, StreakSeed } from './props';

interface SeedHandlesProps {
  readonly seed: StreakSeed;
  readonly movable: boolean;
  readonly width: number;
  readonly height: number;
  toPlace(place: StreakPlace): readonly [number, number] | null;
  fromPlace(left: number, top: number): StreakPlace | null;
  onSeed(seed: StreakSeed, settled: boolean): void;
}

type End = 'from' | 'to';

const END_NAMES: Readonly<Record<End, string>> = {
  from: 'Slanted line, earlier end',
  to: 'Slanted line, later end',
};
/** Keyboard steps along the axis, px, and in time, frames. */
const ALONG_STEPS: Readonly<Record<NudgeSize, number>> = { fine: 0.1, normal: 1, coarse: 10 };
const FRAME_STEPS: Readonly<Record<NudgeSize, number>> = { fine: 1, normal: 1, coarse: 10 };

/** A slanted line across the middle of what is shown, to be dragged onto the ball's band. */
export function startingSeed(
  fromPlace: SeedHandlesProps['fromPlace'],
  width: number,
  height: number,
): StreakSeed | null {
  const from = fromPlace(width * 0.3, height * 0.25);
  const to = fromPlace(width * 0.7, height * 0.75);
  return from === null || to === null ? null : { from, to };
}

/** The line that seeds the path: two ends to drag or nudge, its slope written beside it. */
export function SeedHandles(props: SeedHandlesProps) {
  const { movable, width, height, toPlace, fromPlace, onSeed } = props;
  const [draft, setDraft] = useState<StreakSeed | null>(null);
  const grabbed = useRef<readonly [number, number] | null>(null);
  const seed = draft ?? props.seed;
  const start = toPlace(seed.from);
  const end = toPlace(seed.to);
  if (start === null || end === null) return null;

  const slope = slopeOf(seed.from, seed.to);
  const drag = (which: End, right: number, down: number) => {
    if (grabbed.current === null) return;
    const place = fromPlace(grabbed.current[0] + right, grabbed.current[1] + down);
    if (place === null) return;
    const next = { ...seed, [which]: place };
    setDraft(next);
    onSeed(next, false);
  };
  const drop = () => {
    grabbed.current = null;
    setDraft(null);
    if (draft !== null) onSeed(draft, true);
  };
  const nudge = (which: End, right: number, down: number, size: NudgeSize) => {
    const place = seed[which];
    const moved = {
      frame: place.frame + down * FRAME_STEPS[size],
      along: place.along + right * ALONG_STEPS[size],
    };
    onSeed({ ...seed, [which]: moved }, true);
  };

  const middle = [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2] as const;
  return (
    <>
      <svg class="streak-overlay" width={width} height={height} aria-hidden="true">
        <Cased class="streak-seed" d={`M${start.join(' ')}L${end.join(' ')}`} />
        {slope !== null && (
          <text class="film-label" x={middle[0] + 12} y={middle[1] - 6}>
            {slope.toFixed(2)} px per frame
          </text>
        )}
      </svg>
      {movable &&
        (['from', 'to'] as const).map((which) => {
          const [left, top] = which === 'from' ? start : end;
          const { frame, along } = seed[which];
          return (
            <Handle
              key={which}
              left={left}
              top={top}
              look="cross"
              label={END_NAMES[which]}
              valueNow={Math.round(along * 10) / 10}
              valueText={`frame ${frame.toFixed(1)}, ${along.toFixed(1)} pixels along`}
              onGrab={() => {
                grabbed.current = [left, top];
              }}
              onDrag={(right, down) => drag(which, right, down)}
              onDrop={drop}
              onNudge={(right, down, size) => nudge(which, right, down, size)}
            />
          );
        })}
    </>
  );
}
