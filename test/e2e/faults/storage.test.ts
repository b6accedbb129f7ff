import { expect, inject, it } from 'vitest';
import {
  keeps,
  measured,
  opened,
  openGerman,
  ownFilm,
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
