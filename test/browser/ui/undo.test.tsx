import { afterEach, beforeEach, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { setNotes } from '../../../src/app/edits';
import type { Session } from '../../../src/app/session';
import { exampleSeries, seriesFiles } from '../../fixtures/series';
import { type MountedPage, measuredClip, mountPage, openClip } from './mountPage';

let mounted: MountedPage;
let session: Session;
beforeEach(async () => {
  mounted = await mountPage();
  ({ session } = mounted);
});
afterEach(() => mounted.unmount());

const notes = () => session.shots.draft.value?.notes;
const edited = () => {
  for (const text of ['one', 'two']) session.shots.edit(setNotes(text), { label: `notes ${text}` });
};

it.each([
  ['{Control>}z{/Control}', '{Control>}y{/Control}'],
  ['{Control>}z{/Control}', '{Control>}{Shift>}Z{/Shift}{/Control}'],
  ['{Meta>}z{/Meta}', '{Meta>}{Shift>}Z{/Shift}{/Meta}'],
])('goes back by %s and forth by %s', async (back, forth) => {
  await openClip(session);
  edited();
  await userEvent.keyboard(back);
  expect(notes()).toBe('one');
  await userEvent.keyboard(back);
  expect(notes()).toBe('');
  await userEvent.keyboard(forth);
  expect(notes()).toBe('one');
});

it('leaves text being typed its own undo, and takes over once the field is at rest', async () => {
  await openClip(session);
  mounted.desk.step.value = 'clock';
  const rate = page.getByLabelText('Recording rate', { exact: true }).first();
  await rate.fill('12000');
  await userEvent.keyboard('{Control>}z{/Control}');
  expect(session.shots.undoLabel.value).toBeNull();
  await rate.fill('12000');
  await userEvent.keyboard('{Enter}');
  expect(session.shots.draft.value?.timing.recordingRate?.value).toBe(12000);
  await userEvent.keyboard('{Control>}z{/Control}');
  expect(session.shots.draft.value?.timing.recordingRate).toBeNull();
  await expect.element(rate).toHaveValue('');
});

it('undoes what was chosen from a list while the list has the focus', async () => {
  await measuredClip(session);
  mounted.desk.step.value = 'result';
  const model = page.getByLabelText('Motion', { exact: true });
  const before = session.shots.draft.value?.fit.model;
  await model.selectOptions('uniform');
  (model.element() as HTMLElement).focus();
  await userEvent.keyboard('{Control>}z{/Control}');
  expect(session.shots.draft.value?.fit.model).toBe(before);
});

it('keeps notes that are being typed while something else changes', async () => {
  await openClip(session);
  const field = page.getByLabelText('Notes', { exact: true });
  await field.fill('half a sen');
  session.shots.edit((draft) => ({ ...draft, coverage: 0.9 }), { label: 'coverage' });
  await expect.element(field).toHaveValue('half a sen');
  await page.getByLabelText('Name', { exact: true }).click();
  expect(notes()).toBe('half a sen');
});

it('goes back and forth in the notebook while that is shown', async () => {
  await openClip(session);
  edited();
  await session.notebook.add(seriesFiles(exampleSeries(2)));
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  const [first] = session.notebook.entries.value;
  session.notebook.setUsed(first?.name ?? '', false);
  await userEvent.keyboard('{Control>}z{/Control}');
  expect(session.notebook.entries.value[0]?.used).toBe(true);
  await userEvent.keyboard('{Control>}y{/Control}');
  expect(session.notebook.entries.value[0]?.used).toBe(false);
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(session.notebook.entries.value).toEqual([]);
  expect(notes()).toBe('two');
});
