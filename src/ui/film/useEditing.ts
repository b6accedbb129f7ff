import { useEffect, useRef, useState } from 'preact/hooks';
import type { ImagePoint, ImageVector } from '../../core/units';
import { drawn, type Edit, withEdit } from './editing';
import type { HandleProps } from './Handle';
import { type EditHandle, handlesOf } from './handles';
import type { FilmMode, FilmOverlays, FilmViewProps } from './props';
import type { FilmTransform, Size } from './view';

/** Length of the arrow along the direction of travel, CSS px. */
export const ARROW = 90;
/** Shortest length or region worth keeping after a drag, CSS px. */
const SHORTEST_DRAG = 4;
const RIGHTWARDS: ImageVector = [1, 0];

/** A place being worked on, and the direction its exact place matters along. */
export interface WorkedOn {
  readonly at: ImagePoint;
  readonly direction: ImageVector;
}

export interface Editing {
  /** The overlays with the unsettled edit in them. */
  readonly shown: FilmOverlays;
  readonly handles: readonly EditHandle[];
  readonly workedOn: WorkedOn | null;
  eventsOf(
    handle: EditHandle,
  ): Required<Pick<HandleProps, 'onGrab' | 'onDrag' | 'onDrop' | 'onNudge' | 'onActive'>>;
  toolStart(at: ImagePoint): void;
  toolMove(at: ImagePoint): void;
  toolEnd(kept: boolean): void;
}

/** Turns drags, presses and nudges into edits, draws the unsettled one, reports each to its callback. */
export function useEditing(props: FilmViewProps, view: FilmTransform, image: Size): Editing {
  const { mode, overlays, currentFrame } = props;
  const [draft, setDraft] = useState<Edit | null>(null);
  const [active, setActive] = useState<string | null>(null);
  const [pressed, setPressed] = useState<ImagePoint | null>(null);
  const held = useRef<{ readonly handle: EditHandle; edit: Edit | null } | null>(null);
  const tool = useRef<{ readonly start: ImagePoint; edit: Edit | null } | null>(null);

  const modeName = JSON.stringify(mode);
  // What was being drawn ends with its mode.
  useEffect(() => {
    setDraft(null);
    setPressed(null);
    held.current = null;
    tool.current = null;
  }, [modeName]);

  const report = (edit: Edit, settled: boolean) => {
    setDraft(settled ? null : edit);
    tell(props, edit, settled);
  };
  const shown = draft === null ? overlays : withEdit(overlays, draft);
  const handles = handlesOf(mode, shown, currentFrame, image, ARROW / view.scale);

  return {
    shown,
    handles,
    workedOn: workedOn(handles, active, pressed),
    eventsOf: (handle) => ({
      onGrab() {
        held.current = { handle, edit: null };
      },
      onDrag(right, down) {
        if (held.current === null) return;
        const [x, y] = held.current.handle.at;
        const edit = held.current.handle.moved([x + right / view.scale, y + down / view.scale]);
        held.current.edit = edit;
        report(edit, false);
      },
      onDrop() {
        const edit = held.current?.edit ?? null;
        held.current = null;
        if (edit !== null) report(edit, true);
      },
      onNudge(right, down, size) {
        const step = handle.steps[size];
        report(handle.moved([handle.at[0] + right * step, handle.at[1] + down * step]), true);
      },
      onActive(is) {
        setActive((now) => (is ? handle.id : now === handle.id ? null : now));
      },
    }),
    toolStart(at) {
      tool.current = { start: at, edit: null };
      this.toolMove(at);
    },
    toolMove(at) {
      const drag = tool.current;
      if (drag === null) return;
      setPressed(at);
      const kept = longEnough(mode, drag.start, at, view.scale);
      drag.edit = kept ? drawn(mode, overlays, currentFrame, drag.start, at, image) : null;
      if (drag.edit !== null) report(drag.edit, false);
    },
    toolEnd(kept) {
      const edit = tool.current?.edit ?? null;
      tool.current = null;
      setPressed(null);
      setDraft(null);
      if (kept && edit !== null) report(edit, true);
    },
  };
}

function tell(props: FilmViewProps, edit: Edit, settled: boolean): void {
  switch (edit.kind) {
    case 'length':
      props.onLengthChange?.(edit.index, edit.from, edit.to, settled);
      break;
    case 'edge':
      props.onEdgeChange?.(edit.index, edit.from, edit.to, settled);
      break;
    case 'plane':
      props.onPlaneChange?.(edit.corner, edit.at, settled);
      break;
    case 'muzzle':
      props.onMuzzleChange?.(edit.point, edit.axis, settled);
      break;
    case 'seed':
      props.onSeedChange?.(edit.frame, edit.at, settled);
      break;
    case 'point':
      props.onPointChange?.(edit.frame, edit.at, settled);
      break;
    case 'region':
      props.onRegionChange?.(edit.which, edit.region, settled);
      break;
  }
}

/** A press gives a point at once; a length or region needs some way between its ends. */
function longEnough(mode: FilmMode, start: ImagePoint, end: ImagePoint, scale: number): boolean {
  if (mode.kind !== 'length' && mode.kind !== 'edge' && mode.kind !== 'region') return true;
  return Math.hypot(end[0] - start[0], end[1] - start[1]) * scale >= SHORTEST_DRAG;
}

function workedOn(
  handles: readonly EditHandle[],
  active: string | null,
  pressed: ImagePoint | null,
): WorkedOn | null {
  if (pressed !== null) return { at: pressed, direction: handles[0]?.direction ?? RIGHTWARDS };
  const handle = handles.find(({ id }) => id === active);
  // The arrow's tip only turns: what lies under it does not matter.
  return handle === undefined || handle.look === 'tip' ? null : handle;
}
