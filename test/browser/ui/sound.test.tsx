import { afterEach, beforeEach, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { setSound } from '../../../src/app/edits';
import { type MountedPage, mountPage, openClip } from './mountPage';

let mounted: MountedPage;
beforeEach(async () => {
  mounted = await mountPage();
  await openClip(mounted.session);
  await page.getByRole('button', { name: /Seal/ }).first().click();
});
afterEach(() => mounted.unmount());

const sound = () => mounted.session.shots.draft.value?.sound;

it('cannot be used where the footage has no track', async () => {
  await expect
    .element(page.getByLabelText('The sound track times burst and impact'))
    .toBeDisabled();
  await expect.element(page.getByText('This footage has no sound track.')).toBeVisible();
});

it('asks how far the microphone is from a backstop once there is one', async () => {
  mounted.session.shots.edit(
    setSound({
      offset: { value: 0, u: 1e-3 },
      microphone: { distance: { value: 1, u: 0.01 }, toBackstop: null },
      backstopDistance: null,
    }),
    { label: 'sound' },
  );
  const toBackstop = page.getByLabelText('Microphone to backstop');
  await expect.element(page.getByLabelText('Backstop to muzzle')).toBeVisible();
  await expect.element(toBackstop).not.toBeInTheDocument();
  await page.getByLabelText('Backstop to muzzle').fill('0.9 m');
  await userEvent.keyboard('{Enter}');
  await toBackstop.fill('1.1 m');
  await userEvent.keyboard('{Enter}');
  expect(sound()).toMatchObject({
    backstopDistance: { value: 0.9, u: 0.01 },
    microphone: { toBackstop: { value: 1.1, u: 0.01 } },
  });
  await page.getByLabelText('Backstop to muzzle').fill('');
  await userEvent.keyboard('{Enter}');
  await expect.element(toBackstop).not.toBeInTheDocument();
  expect(sound()?.microphone.toBackstop).toBeNull();
});
