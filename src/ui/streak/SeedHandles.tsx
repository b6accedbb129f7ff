import { useRef } from 'preact/hooks';
import { showFixed } from '../../text/show';
import { t } from '../../text/text';
import { Cased } from '../film/Cased';
import { Handle, type NudgeSize } from '../film/Handle';
import { slopeOf } from './mapping';
import type { StreakPlace, StreakSeed } from './props';

interface SeedHandlesProps {
  readonly seed: StreakSeed;
  readonly movable: boolean;
  readonly width: number;
  readonly height: number;
  /** The slope in words: '14.72 px per frame, about 176 m/s'. */
  readonly slopeText: (pixelsPerFrame: number) => string;
  toPlace(place: StreakPlace): readonly [number, number] | null;
  fromPlace(left: number, top: number): StreakPlace | null;
  onSeed(seed: StreakSeed, settled: boolean): void;
}

type Part = 'from' | 'to' | 'whole';

/** Room a letter takes, CSS px. */
const LETTER = 6.8;
/** Keyboard steps along the axis, px, and in time, frames. */
const ALONG_STEPS: Readonly<Record<NudgeSize, number>> = { fine: 0.1, normal: 1, coarse: 10 };
const FRAME_STEPS: Readonly<Record<NudgeSize, number>> = { fine: 1, normal: 1, coarse: 10 };

/** A slanted line along the fitted path or, where there is none, across the middle of what is shown. */
export function startingSeed(
  curve: readonly StreakPlace[] | null,
  fromPlace: SeedHandlesProps['fromPlace'],
  width: number,
  height: number,
): StreakSeed | null {
  const [first, last] = [curve?.[0], curve?.at(-1)];
  if (first !== undefined && last !== undefined && first.frame !== last.frame) {
    return { from: first, to: last };
  }
  const from = fromPlace(width * 0.3, height * 0.25);
  const to = fromPlace(width * 0.7, height * 0.75);
  return from === null || to === null ? null : { from, to };
}

/** The line that seeds the path: its ends and its middle to drag or nudge, its slope written beside it. */
export function SeedHandles(props: SeedHandlesProps) {
  const { seed, movable, width, height, toPlace, fromPlace, onSeed } = props;
  /** Where the line was when it was taken hold of, and what it has become. */
  const held = useRef<{ readonly start: StreakSeed; next: StreakSeed | null } | null>(null);
  const start = toPlace(seed.from);
  const end = toPlace(seed.to);
  if (start === null || end === null) return null;

  const moved = (place: StreakPlace, right: number, down: number): StreakPlace | null => {
    const at = toPlace(place);
    return at === null ? null : fromPlace(at[0] + right, at[1] + down);
  };
  const drag = (part: Part, right: number, down: number) => {
    if (held.current === null) return;
    const from = part === 'to' ? seed.from : moved(held.current.start.from, right, down);
    const to = part === 'from' ? seed.to : moved(held.current.start.to, right, down);
    if (from === null || to === null) return;
    held.current.next = { from, to };
    onSeed(held.current.next, false);
  };
  const drop = () => {
    const next = held.current?.next ?? null;
    held.current = null;
    if (next !== null) onSeed(next, true);
  };
  const nudge = (part: Part, right: number, down: number, size: NudgeSize) => {
    const by = (place: StreakPlace) => ({
      frame: place.frame + down * FRAME_STEPS[size],
      along: place.along + right * ALONG_STEPS[size],
    });
    onSeed(
      {
        from: part === 'to' ? seed.from : by(seed.from),
        to: part === 'from' ? seed.to : by(seed.to),
      },
      true,
    );
  };

  const slope = slopeOf(seed.from, seed.to);
  const middle = [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2] as const;
  const text = slope === null ? '' : props.slopeText(slope);
  const room = LETTER * text.length;
  const textLeft = Math.max(4, Math.min(middle[0] + 22, width - room));
  const places: Readonly<Record<Part, readonly [number, number]>> = {
    from: start,
    whole: middle,
    to: end,
  };
  const told = (part: Part) => {
    const { frame, along } =
      part === 'whole'
        ? {
            frame: (seed.from.frame + seed.to.frame) / 2,
            along: (seed.from.along + seed.to.along) / 2,
          }
        : seed[part];
    const at = { frame: showFixed(frame, 1), along: showFixed(along, 1) };
    return {
      along,
      words:
        slope === null ? t('streak.line.at', at) : t('streak.line.atSlope', { ...at, slope: text }),
    };
  };
  return (
    <>
      <svg class="streak-overlay" width={width} height={height} aria-hidden="true">
        <Cased class="streak-seed" d={`M${start.join(' ')}L${end.join(' ')}`} />
        {slope !== null && (
          <text class="film-label" x={textLeft} y={middle[1] - 12}>
            {text}
          </text>
        )}
      </svg>
      {movable &&
        (['from', 'whole', 'to'] as const).map((part) => {
          const [left, top] = places[part];
          const { along, words } = told(part);
          return (
            <Handle
              key={part}
              left={left}
              top={top}
              look={part === 'whole' ? 'tip' : 'cross'}
              label={t(`streak.line.${part}`)}
              valueNow={Math.round(along * 10) / 10}
              valueText={words}
              onGrab={() => {
                held.current = { start: seed, next: null };
              }}
              onDrag={(right, down) => drag(part, right, down)}
              onDrop={drop}
              onNudge={(right, down, size) => nudge(part, right, down, size)}
            />
          );
        })}
    </>
  );
}
