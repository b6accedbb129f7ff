import type { TargetedKeyboardEvent, TargetedMouseEvent } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { FrameMark, FrameState } from '../../app/frameStates';
import { useWidth } from '../../plots/useWidth';
import { t } from '../../text/text';

interface FrameStripProps {
  readonly states: readonly FrameState[];
  readonly current: number;
  onPick(frame: number): void;
}

/** CSS px. */
const CELL = 11;
const ROW = 20;
const LABEL = 46;

const MARKS = ['used', 'byHand', 'refused', 'rejected', 'outside'] as const;

/** Each mark has its own shape. */
function markPath(mark: FrameMark, x: number, y: number): string {
  switch (mark) {
    case 'used':
      return `M${x - 3} ${y}a3 3 0 1 0 6 0a3 3 0 1 0 -6 0`;
    case 'byHand':
      return `M${x - 3} ${y - 3}h6v6h-6z`;
    case 'refused':
      return `M${x - 3.5} ${y - 3.5}l7 7m0 -7l-7 7`;
    case 'rejected':
      return `M${x - 4} ${y}h8`;
    case 'outside':
      return `M${x} ${y - 2}v4`;
  }
}

/** One mark for every frame around the flight; a click or the arrow keys go to one. */
export function FrameStrip({ states, current, onPick }: FrameStripProps) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const [hovered, setHovered] = useState<FrameState | null>(null);
  const columns = Math.max(1, Math.floor((width - LABEL) / CELL));
  const rowCount = Math.ceil(states.length / columns);
  const [first, last] = [states[0]?.frame ?? 0, states.at(-1)?.frame ?? 0];
  const currentAt = states.findIndex(({ frame }) => frame === current);
  const place = (i: number) => ({
    x: LABEL + ((i % columns) + 0.5) * CELL,
    y: (Math.floor(i / columns) + 0.5) * ROW,
  });

  const currentRow = currentAt < 0 ? null : Math.floor(currentAt / columns);
  useLayoutEffect(() => {
    const area = box.current;
    if (area === null || currentRow === null) return;
    const top = currentRow * ROW;
    if (top < area.scrollTop) area.scrollTop = top;
    else if (top + ROW > area.scrollTop + area.clientHeight) {
      area.scrollTop = top + ROW - area.clientHeight;
    }
  }, [currentRow]);

  const stateAt = (event: TargetedMouseEvent<HTMLDivElement>): FrameState | null => {
    const corner = event.currentTarget.getBoundingClientRect();
    const column = Math.floor((event.clientX - corner.left - LABEL) / CELL);
    const row = Math.floor((event.clientY - corner.top) / ROW);
    if (column < 0 || column >= columns) return null;
    return states[row * columns + column] ?? null;
  };
  const keys = (event: TargetedKeyboardEvent<HTMLDivElement>) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const steps: Readonly<Record<string, number>> = {
      ArrowLeft: -1,
      ArrowRight: 1,
      ArrowUp: -columns,
      ArrowDown: columns,
      Home: -Infinity,
      End: Infinity,
    };
    const step = steps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    onPick(Math.min(Math.max(current + step, first), last));
  };

  const now = states[currentAt];
  const told = hovered ?? now ?? null;
  return (
    <div class="frame-strip">
      <div ref={box} class="frame-strip-scroll">
        <div
          class="frame-strip-marks"
          role="slider"
          tabIndex={0}
          aria-label={t('frames.strip.label')}
          aria-valuemin={first}
          aria-valuemax={last}
          aria-valuenow={Math.min(Math.max(current, first), last)}
          aria-valuetext={t('frames.strip.now', {
            frame: current,
            mark: t(`frames.strip.mark.${now?.mark ?? 'outside'}`),
          })}
          onKeyDown={keys}
          onClick={(event) => {
            const state = stateAt(event);
            if (state !== null) onPick(state.frame);
          }}
          onPointerMove={(event) => setHovered(stateAt(event))}
          onPointerLeave={() => setHovered(null)}
        >
          <svg width={width} height={rowCount * ROW} aria-hidden="true">
            {Array.from({ length: rowCount }, (_, row) => (
              <text key={row} class="frame-strip-label" x={LABEL - 8} y={(row + 0.5) * ROW + 4}>
                {states[row * columns]?.frame}
              </text>
            ))}
            {MARKS.map((mark) => (
              <path
                key={mark}
                class={`frame-mark-${mark}`}
                d={states
                  .flatMap((state, i) => {
                    const { x, y } = place(i);
                    return state.mark === mark ? [markPath(mark, x, y)] : [];
                  })
                  .join('')}
              />
            ))}
            {currentAt >= 0 && (
              <rect
                class="frame-strip-current"
                x={place(currentAt).x - CELL / 2}
                y={place(currentAt).y - ROW / 2 + 1.5}
                width={CELL}
                height={ROW - 3}
              />
            )}
          </svg>
        </div>
      </div>
      <div class="frame-strip-foot">
        <ul class="frame-strip-keys">
          {MARKS.map((mark) => {
            const count = states.filter((state) => state.mark === mark).length;
            if (count === 0) return null;
            return (
              <li key={mark}>
                <svg width="12" height="12" aria-hidden="true">
                  <path class={`frame-mark-${mark}`} d={markPath(mark, 6, 6)} />
                </svg>
                {mark === 'outside'
                  ? t('frames.strip.mark.outside')
                  : t(`frames.strip.count.${mark}`, { n: count })}
              </li>
            );
          })}
        </ul>
        <span class="frame-strip-reading">
          {told !== null &&
            t('frames.strip.told', {
              frame: told.frame,
              mark: t(`frames.strip.mark.${told.mark}`),
            })}
        </span>
      </div>
    </div>
  );
}
