import type { ComponentChildren } from 'preact';
import { THEMES } from '../../app/preferences';
import { isRendered } from '../../app/samples';
import { saveShot, undoablesOf } from '../actions';
import { type Place, useDesk } from '../desk';
import { Icon } from './Icon';

/** Name of the shot, and what can be done to it as a whole. */
export function Header() {
  const desk = useDesk();
  const { shots, sample, keeping, queue } = desk.session;
  const { theme } = desk.preferences;
  const { place } = desk;
  const draft = shots.draft.value;
  return (
    <header class="header">
      <h1 class="brand">exitframe</h1>
      <p class="shot-name">
        {draft === null ? 'no shot open' : draft.name || 'unnamed shot'}
        {(sample.value !== null || isRendered(draft?.notes ?? '')) && (
          <span class="tag">rendered sample, Brinewick Teaching Laboratory</span>
        )}
        {shots.unsaved.value && sample.value === null && (
          <span class="tag">not saved to a file</span>
        )}
        {keeping.problem.value !== null && (
          <span class="tag tag-warning" title={keeping.problem.value.message}>
            {keeping.problem.value.code === 'footageNotKept'
              ? 'footage not kept for a reload'
              : 'not kept for a reload'}
          </span>
        )}
      </p>
      <div class="row header-actions">
        <PlaceButton to="plan">Plan a shot</PlaceButton>
        <PlaceButton to="notebook">
          Notebook
          {queue.running.value && ` (${queue.ended.value} of ${queue.clips.value.length})`}
        </PlaceButton>
        {place.value !== 'plan' && <UndoButtons />}
        {place.value === 'shot' && (
          <button type="button" disabled={draft === null} onClick={() => saveShot(desk)}>
            Save shot
          </button>
        )}
        <button
          type="button"
          title="Colours: as the system, light, dark"
          onClick={() => {
            theme.value = THEMES[(THEMES.indexOf(theme.value) + 1) % THEMES.length] ?? 'system';
          }}
        >
          <Icon name="theme" /> Theme: {theme.value}
        </button>
        <button type="button" onClick={() => (desk.cautionsOpen.value = true)}>
          Cautions
        </button>
        {place.value === 'shot' && (
          <button
            type="button"
            aria-expanded={desk.helpOpen.value}
            onClick={() => (desk.helpOpen.value = !desk.helpOpen.value)}
          >
            <Icon name="help" /> Keys
          </button>
        )}
      </div>
    </header>
  );
}

/** Goes to another part of the window, and back to the shot. */
function PlaceButton({
  to,
  children,
}: {
  readonly to: Place;
  readonly children: ComponentChildren;
}) {
  const { place } = useDesk();
  const there = place.value === to;
  return (
    <button
      type="button"
      aria-pressed={there}
      onClick={() => {
        place.value = there ? 'shot' : to;
      }}
    >
      {children}
    </button>
  );
}

/** Back and forth in the shot that is open, or in the notebook. */
function UndoButtons() {
  const { undoLabel, redoLabel, undo, redo } = undoablesOf(useDesk());
  return (
    <>
      <button
        type="button"
        disabled={undoLabel.value === null}
        title={undoLabel.value === null ? 'Nothing to undo' : `Undo: ${undoLabel.value}`}
        onClick={undo}
      >
        <Icon name="undo" /> Undo
      </button>
      <button
        type="button"
        disabled={redoLabel.value === null}
        title={redoLabel.value === null ? 'Nothing to redo' : `Redo: ${redoLabel.value}`}
        onClick={redo}
      >
        <Icon name="redo" /> Redo
      </button>
    </>
  );
}
