import { THEMES } from '../../app/preferences';
import { isRendered } from '../../app/samples';
import { saveShot } from '../actions';
import { useDesk } from '../desk';
import { Icon } from './Icon';

/** Name of the shot, and what can be done to it as a whole. */
export function Header() {
  const desk = useDesk();
  const { shots, sample } = desk.session;
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
      </p>
      <div class="row header-actions">
        <button
          type="button"
          aria-pressed={place.value === 'notebook'}
          onClick={() => {
            place.value = place.value === 'shot' ? 'notebook' : 'shot';
          }}
        >
          Notebook
        </button>
        {place.value === 'shot' && <ShotActions />}
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

/** What can be done to the shot that is open. */
function ShotActions() {
  const desk = useDesk();
  const { shots } = desk.session;
  const draft = shots.draft.value;
  const undoLabel = shots.undoLabel.value;
  const redoLabel = shots.redoLabel.value;
  return (
    <>
      <button
        type="button"
        disabled={undoLabel === null}
        title={undoLabel === null ? 'Nothing to undo' : `Undo: ${undoLabel}`}
        onClick={shots.undo}
      >
        <Icon name="undo" /> Undo
      </button>
      <button
        type="button"
        disabled={redoLabel === null}
        title={redoLabel === null ? 'Nothing to redo' : `Redo: ${redoLabel}`}
        onClick={shots.redo}
      >
        <Icon name="redo" /> Redo
      </button>
      <button type="button" disabled={draft === null} onClick={() => saveShot(desk)}>
        Save shot
      </button>
    </>
  );
}
