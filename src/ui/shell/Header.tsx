import type { ComponentChildren } from 'preact';
import { THEMES } from '../../app/preferences';
import { isRendered } from '../../app/samples';
import { reasonWords } from '../../text/reasonWords';
import { showCount } from '../../text/show';
import { t } from '../../text/text';
import { saveShot, undoablesOf } from '../actions';
import { type Place, useDesk } from '../desk';
import { Icon } from './Icon';
import { LanguageChoice } from './LanguageChoice';

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
        {draft === null ? t('shell.header.noShot') : draft.name || t('shell.header.unnamed')}
        {(sample.value !== null || isRendered(draft?.notes ?? '')) && (
          <span class="tag">{t('shell.header.rendered')}</span>
        )}
        {shots.unsaved.value && sample.value === null && (
          <span class="tag">{t('shell.header.unsaved')}</span>
        )}
        {keeping.problem.value !== null && (
          <span class="tag tag-warning" title={reasonWords(keeping.problem.value).message}>
            {keeping.problem.value.code === 'footageNotKept'
              ? t('shell.header.footageNotKept')
              : t('shell.header.notKept')}
          </span>
        )}
      </p>
      <div class="row header-actions">
        <PlaceButton to="plan">{t('shell.header.plan')}</PlaceButton>
        <PlaceButton to="notebook">
          {queue.running.value
            ? t('shell.header.notebookRunning', {
                done: showCount(queue.ended.value),
                all: showCount(queue.clips.value.length),
              })
            : t('shell.header.notebook')}
        </PlaceButton>
        <PlaceButton to="mistakes">{t('mistakes.header')}</PlaceButton>
        {place.value !== 'mistakes' && <UndoButtons />}
        {place.value === 'shot' && (
          <button type="button" disabled={draft === null} onClick={() => saveShot(desk)}>
            {t('shell.header.save')}
          </button>
        )}
        <LanguageChoice />
        <button
          type="button"
          title={t('shell.header.themeTitle')}
          onClick={() => {
            theme.value = THEMES[(THEMES.indexOf(theme.value) + 1) % THEMES.length] ?? 'system';
          }}
        >
          <Icon name="theme" />{' '}
          <span class="word">{t('shell.header.theme', { theme: theme.value })}</span>
        </button>
        <button type="button" onClick={() => (desk.cautionsOpen.value = true)}>
          {t('shell.header.cautions')}
        </button>
        {place.value === 'shot' && (
          <button
            type="button"
            aria-expanded={desk.helpOpen.value}
            onClick={() => (desk.helpOpen.value = !desk.helpOpen.value)}
          >
            <Icon name="help" /> <span class="word">{t('shell.header.keys')}</span>
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
  const { place, mistake } = useDesk();
  const there = place.value === to;
  return (
    <button
      type="button"
      aria-pressed={there}
      onClick={() => {
        mistake.value = null;
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
        disabled={undoLabel === null}
        title={
          undoLabel === null
            ? t('shell.header.nothingToUndo')
            : t('shell.header.undoWhat', { what: undoLabel })
        }
        onClick={undo}
      >
        <Icon name="undo" /> <span class="word">{t('shell.header.undo')}</span>
      </button>
      <button
        type="button"
        disabled={redoLabel === null}
        title={
          redoLabel === null
            ? t('shell.header.nothingToRedo')
            : t('shell.header.redoWhat', { what: redoLabel })
        }
        onClick={redo}
      >
        <Icon name="redo" /> <span class="word">{t('shell.header.redo')}</span>
      </button>
    </>
  );
}
