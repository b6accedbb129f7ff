import type { TargetedKeyboardEvent, TargetedPointerEvent } from 'preact';
import { useRef } from 'preact/hooks';

export type NudgeSize = 'fine' | 'normal' | 'coarse';

export interface HandleProps {
  /** Place in the viewport, CSS px. */
  readonly left: number;
  readonly top: number;
  readonly label: string;
  /** Its place in words, and as the one number a slider has. */
  readonly valueText: string;
  readonly valueNow: number;
  readonly look: 'cross' | 'tip' | 'corner';
  /** Turn of the look, degrees; 0 unless given. */
  readonly turn?: number;
  onGrab?(): void;
  /** Way since it was grabbed, CSS px; a tenth of the pointer's while Alt is held. */
  onDrag(right: number, down: number): void;
  onDrop(): void;
  /** Arrow keys: -1, 0 or 1 each way; Shift coarse, Alt fine. */
  onNudge(right: number, down: number, size: NudgeSize): void;
  onActive?(active: boolean): void;
}

/** Share of the pointer's way a handle moves while Alt is held. */
const FINE_DRAG = 0.1;

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** A point to take hold of with mouse, finger or keyboard; its middle stays clear so that the image shows. */
export function Handle(props: HandleProps) {
  const drag = useRef<{ x: number; y: number; right: number; down: number } | null>(null);

  const grab = (event: TargetedPointerEvent<HTMLDivElement>) => {
    if (event.button !== 0 || !event.isPrimary) return;
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    event.currentTarget.focus({ preventScroll: true });
    drag.current = { x: event.clientX, y: event.clientY, right: 0, down: 0 };
    props.onGrab?.();
  };
  const move = (event: TargetedPointerEvent<HTMLDivElement>) => {
    const held = drag.current;
    if (held === null) return;
    const share = event.altKey ? FINE_DRAG : 1;
    held.right += (event.clientX - held.x) * share;
    held.down += (event.clientY - held.y) * share;
    held.x = event.clientX;
    held.y = event.clientY;
    props.onDrag(held.right, held.down);
  };
  const drop = () => {
    if (drag.current === null) return;
    drag.current = null;
    props.onDrop();
  };
  const nudge = (event: TargetedKeyboardEvent<HTMLDivElement>) => {
    if (event.key === 'Escape') event.currentTarget.blur();
    const arrow = ARROWS[event.key];
    if (arrow === undefined || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    props.onNudge(...arrow, event.altKey ? 'fine' : event.shiftKey ? 'coarse' : 'normal');
  };

  return (
    <div
      class={`handle handle-${props.look}`}
      style={{
        transform: `translate(${props.left}px, ${props.top}px) rotate(${props.turn ?? 0}deg)`,
      }}
      role="slider"
      tabIndex={0}
      aria-label={props.label}
      aria-valuenow={props.valueNow}
      aria-valuetext={props.valueText}
      onPointerDown={grab}
      onPointerMove={move}
      onPointerUp={drop}
      onPointerCancel={drop}
      onKeyDown={nudge}
      onFocus={() => props.onActive?.(true)}
      onBlur={() => props.onActive?.(false)}
    />
  );
}
