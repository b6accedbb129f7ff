import { completeShot } from '../app/draft';
import { placePoint, setFrameRejected } from '../app/edits';
import { isRejected } from '../app/frameStates';
import type { NotebookEdit } from '../app/notebook';
import { toCsv } from '../app/notebookCsv';
import { addOpenShot } from '../app/notebookShots';
import type { Setup } from '../app/resultTypes';
import { fileNameOf, saveFile } from '../app/saving';
import type { ImagePoint } from '../core/units';
import { showCount } from '../text/show';
import { t } from '../text/text';
import type { Desk } from './desk';

/** Writes the shot file, or says in its step what is missing for one. */
export async function saveShot(desk: Desk): Promise<void> {
  const { shots, notices } = desk.session;
  const draft = shots.draft.value;
  if (draft === null) return;
  const shot = completeShot(draft);
  if (!shot.ok) {
    const { code, message, values } = shot.reason;
    notices.problem('footage', {
      ...shot.reason,
      code: 'shotNotSaved',
      message: `The shot cannot be saved to a file yet. ${message} It is kept in this browser meanwhile.`,
      values: { ...values, because: code },
    });
    desk.step.value = 'footage';
    return;
  }
  try {
    const text = `${JSON.stringify(shot.value, null, 2)}\n`;
    const saved = await saveFile(
      `${fileNameOf(draft.name)}.shot.json`,
      text,
      t('shell.files.shot'),
    );
    if (saved) shots.markSaved();
  } catch (error) {
    notices.report('footage', error);
  }
}

/** What undo and redo go back and forth in: the shot, or the notebook or plan where that is shown. */
export function undoablesOf(desk: Desk) {
  const { undo, redo, undoLabel, redoLabel } = undoableOf(desk);
  return {
    undo,
    redo,
    undoLabel: editWords(undoLabel.value),
    redoLabel: editWords(redoLabel.value),
  };
}

function undoableOf({ place, session }: Desk) {
  switch (place.value) {
    case 'notebook':
      return session.notebook;
    case 'plan':
      return session.planning;
    default:
      return session.shots;
  }
}

/** What an edit is called; null: there is none. */
function editWords(edit: string | NotebookEdit | null): string | null {
  if (edit === null || typeof edit === 'string') return edit;
  switch (edit.kind) {
    case 'added':
      return t('edits.shotsAdded', {
        count: edit.names.length,
        number: showCount(edit.names.length),
        name: edit.names[0] ?? '',
      });
    case 'counted':
      return t(edit.used ? 'edits.shotCounted' : 'edits.shotNotCounted', { name: edit.name });
    case 'dropped':
      return t('edits.shotsDropped');
  }
}

/** Writes the result file. */
export async function saveResult(desk: Desk): Promise<void> {
  const reduction = desk.session.measuring.reduction.value;
  if (reduction === null) return;
  try {
    const text = `${JSON.stringify(reduction.result, null, 2)}\n`;
    await saveFile(
      `${fileNameOf(reduction.result.shot)}.result.json`,
      text,
      t('shell.files.result'),
    );
  } catch (error) {
    desk.session.notices.report('result', error);
  }
}

/** Writes the plan's shot file, for the film that is still to be taken. */
export async function savePlan({ session: { planning, notices } }: Desk): Promise<void> {
  const planned = planning.judgement.value?.shot;
  if (!planned?.ok) return;
  const shot = { ...planned.value, name: planned.value.name || t('plan.unnamed') };
  try {
    const text = `${JSON.stringify(shot, null, 2)}\n`;
    await saveFile(`${fileNameOf(shot.name)}.shot.json`, text, t('shell.files.shot'));
  } catch (error) {
    notices.report('footage', error);
  }
}

/** Puts the ball's centre of a frame by hand; nudges that follow at once are one step to undo. */
export function placeCentre({ session: { shots } }: Desk, frame: number, at: ImagePoint): void {
  shots.edit(placePoint(frame, at), {
    label: t('edits.centre', { frame: `${frame}` }),
    mergeKey: `point-${frame}`,
  });
}

/** Takes a frame out, or uses it again. */
export function rejectFrame({ session: { shots } }: Desk, frame: number): void {
  const rejected = isRejected(shots.draft.value?.edits, frame);
  shots.edit(setFrameRejected(frame, !rejected), {
    label: t(rejected ? 'edits.frameRestored' : 'edits.frameRejected', { frame: `${frame}` }),
  });
}

/** Writes a setup to a file. */
export async function saveSetup({ session: { notices } }: Desk, setup: Setup): Promise<void> {
  try {
    const text = `${JSON.stringify(setup, null, 2)}\n`;
    await saveFile(`${fileNameOf(setup.name)}.setup.json`, text, t('shell.files.setup'));
  } catch (error) {
    notices.report('footage', error);
  }
}

/** Writes the open shot into the notebook and goes there. */
export async function writeInNotebook(desk: Desk): Promise<void> {
  if (await addOpenShot(desk.session)) desk.place.value = 'notebook';
}

/** Goes to the notebook and reads the rendered series into it. */
export function openSampleSeries(desk: Desk): void {
  desk.place.value = 'notebook';
  void desk.session.notebook.addSampleSeries();
}

/** Writes the notebook with everything in it. */
export async function saveNotebook({ session: { notebook } }: Desk): Promise<void> {
  const file = notebook.file();
  const name = `${fileNameOf(file.name || 'shots')}.notebook.json`;
  try {
    if (await saveFile(name, `${JSON.stringify(file)}\n`, t('shell.files.notebook')))
      notebook.markSaved();
  } catch (error) {
    notebook.report(name, error);
  }
}

/** Writes the rows as they are shown. */
export async function saveTable({ session: { notebook } }: Desk): Promise<void> {
  const name = `${fileNameOf(notebook.name.value || 'shots')}.csv`;
  try {
    await saveFile(name, toCsv(notebook.rows.value), t('shell.files.table'), 'text/csv');
  } catch (error) {
    notebook.report(name, error);
  }
}
