import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { firstShown, openTool } from './tool';

const FOLDER = 'test/fixtures/breadth';

/** Drops a file onto the page as a person would. */
async function drop(page: Page, name: string): Promise<void> {
  const bytes = (await readFile(`${FOLDER}/${name}`)).toString('base64');
  await page.evaluate(
    ([fileName, text]) => {
      const data = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([data], fileName));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }));
    },
    [name, bytes] as const,
  );
}

const shown = (page: Page, name: string) =>
  page.getByText(`Frame 0 of ${name}, 48 by 40 pixels`).waitFor({ state: 'attached' });

it('opens a folder of stills, a zip of them and a TIFF of several pages', async () => {
  await using tool = await openTool();
  const { page } = tool;
  await firstShown(page);
  await page.locator('input[webkitdirectory]').first().setInputFiles(`${FOLDER}/png-16`);
  await shown(page, 'disc-8.png');
  for (const name of ['png-16.zip', 'pages-16.tif']) {
    await drop(page, name);
    await shown(page, name);
  }
  expect(tool.errors).toEqual([]);
});

it('asks how headerless pixels lie, and knows it after a reload', async () => {
  await using tool = await openTool();
  const { page } = tool;
  await firstShown(page);
  await drop(page, 'grey-12-big.raw');
  const dialog = page.getByRole('dialog', { name: 'Pixels without a header' });
  await dialog.getByText('It does not fit yet').waitFor();
  await dialog.getByLabel('Width, pixels').fill('48');
  await dialog.getByLabel('Height, pixels').fill('40');
  await dialog.getByLabel('Grey values').selectOption('12');
  await dialog.getByLabel('Byte order').selectOption('big');
  await dialog.getByLabel('Bytes before the first frame').fill('32');
  await dialog.getByLabel('Bytes between frames').fill('6');
  await dialog.getByLabel('Bytes between frames').blur();
  await dialog.getByText('It fits: 3 frames').waitFor();
  await dialog.getByRole('img').waitFor();
  // Escape leaves it, also where no field has the focus; asked again it is as before.
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'detached' });
  await drop(page, 'grey-12-big.raw');
  await dialog.getByText('It fits: 3 frames').waitFor();
  await dialog.getByRole('button', { name: 'Open it so' }).click();
  await shown(page, 'grey-12-big.raw');
  await page.getByText('comes back: this browser holds a copy').waitFor();
  await page.reload();
  await shown(page, 'grey-12-big.raw');
  expect(tool.errors).toEqual([]);
});
