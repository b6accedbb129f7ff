import type { Page } from 'playwright-core';
import { expect, inject, it } from 'vitest';
import {
  copied,
  filmShown,
  keeps,
  measured,
  opened,
  openGerman,
  ownFilm,
  rateIsEdited,
  scratchFolder,
  showsFilm,
  told,
} from './steps';

const film = ownFilm(scratchFolder());

it("the browser's storage is full", async () => {
  // A page of the same origin that writes nothing: the browser remembers for a while how much room a first write found.
  const address = inject('toolAddress');
  await using tool = await openGerman(`${address}icon-192.png`);
  const { page } = tool;
  const cdp = await page.context().newCDPSession(page);
  const { origin } = new URL(address);
  await cdp.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1000 });
  await page.goto(address);
  await opened(page, film);
  await page.locator('[data-step=footage]').click();
  await told(page, 'workNotKept').waitFor();
  expect(await told(page, 'workNotKept').textContent()).toContain('Sein Speicher ist voll');
  const numbers = await measured(page);
  await keeps(page, numbers);

  await cdp.send('Storage.overrideQuotaForOrigin', { origin });
  await page.locator('[data-step=footage]').click();
  await told(page, 'workNotKept').waitFor({ state: 'detached' });
  await page.reload();
  // There was no room for a copy of the footage either: it is asked for.
  await page.locator('input[data-role=files]').waitFor({ state: 'attached' });
  await page.locator('input[data-role=files]').setInputFiles(film.film);
  await showsFilm(page, film.film);
  await page.locator('[data-step=ball]').click();
  await keeps(page, numbers);
  expect(await measured(page)).toBe(numbers);
}, 600_000);

it('the browser has no database', async () => {
  await using tool = await openGerman();
  const { page } = tool;
  await page.addInitScript(() => Object.defineProperty(window, 'indexedDB', { value: undefined }));
  await page.reload();
  await opened(page, film);
  await page.locator('[data-step=footage]').click();
  await told(page, 'workNotKept').waitFor();
  expect(await told(page, 'workNotKept').textContent()).toContain(
    'Der Browser behält diese Arbeit nicht',
  );
  const numbers = await measured(page);
  await keeps(page, numbers);
}, 600_000);

const deleteKept = (page: Page) =>
  page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const deleting = indexedDB.deleteDatabase('exitframe');
        deleting.onsuccess = resolve;
        deleting.onblocked = reject;
      }),
  );

/** The page says what it lost; the inputs come back with the film, as the browser has them in another place too. */
async function takenUpAgain(page: Page): Promise<void> {
  expect(await told(page, 'workLost').textContent()).toContain(
    'Was dieses Fenster hielt, ist verloren',
  );
  await page.locator('input[data-role=files]').setInputFiles(film.film);
  await showsFilm(page, film.film);
  await page.getByRole('button', { name: 'Frühere Eingaben übernehmen' }).click();
  await rateIsEdited(page);
  expect(await told(page, 'workLost').count()).toBe(0);
}

it('what was kept is deleted under the page, which is reloaded at once', async () => {
  await using tool = await openGerman();
  const { page } = tool;
  await opened(page, film);
  await copied(page);
  const numbers = await measured(page);
  await deleteKept(page);
  await page.reload();
  // Whether it was quick enough to keep all anew is the browser's to decide: then nothing is lost, else it is said.
  const lost = told(page, 'workLost');
  await lost.or(filmShown(page, film.film)).first().waitFor({ state: 'attached' });
  if (await lost.isVisible()) await takenUpAgain(page);
  else await keeps(page, numbers);
  expect(await measured(page)).toBe(numbers);
}, 600_000);

it('what was kept is deleted while the page is away', async () => {
  const address = inject('toolAddress');
  await using tool = await openGerman();
  const { page } = tool;
  await opened(page, film);
  const numbers = await measured(page);
  await page.goto(`${address}icon-192.png`);
  await deleteKept(page);
  await page.goto(address);
  await told(page, 'workLost').waitFor();
  await takenUpAgain(page);
  expect(await measured(page)).toBe(numbers);
}, 600_000);
