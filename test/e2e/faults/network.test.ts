import type { Route } from 'playwright-core';
import { expect, it } from 'vitest';
import {
  inThread,
  keeps,
  measureButton,
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
const cut = (route: Route) => route.abort('internetdisconnected');

it.each([
  ['script', /assets\/library/],
  ['WebAssembly', /assets\/opencv/],
])(
  'the network goes before the image library is fetched: its %s',
  async (_, files) => {
    await using tool = await openGerman();
    const { page } = tool;
    await page.context().route(files, cut);
    await opened(page, film);
    await measureButton(page).click();
    await told(page, 'visionMissing').waitFor();
    expect(await told(page, 'visionMissing').textContent()).toContain('konnte nicht geholt werden');
    await rateIsEdited(page);
    await page.context().unroute(files, cut);
    const numbers = await measured(page);
    await keeps(page, numbers);
  },
  600_000,
);

it('the network goes before threads are started anew', async () => {
  await using tool = await openGerman();
  const { page } = tool;
  await opened(page, film);
  const numbers = await measured(page);
  await page.context().route(/\.worker/, cut);
  await inThread(tool, 'reduce', () => self.close());
  await page.locator('[data-step=footage]').click();
  await told(page, 'threadsNotStarted').waitFor();
  await page.locator('[data-step=ball]').click();
  await measureButton(page).click();
  await told(page, 'threadsNotStarted').waitFor();
  expect(await told(page, 'threadsNotStarted').textContent()).toContain(
    'Seine Datei konnte nicht geholt werden',
  );
  await keeps(page, numbers);
  await page.context().unroute(/\.worker/, cut);
  expect(await measured(page)).toBe(numbers);
}, 600_000);

it('the network goes after the page is fetched and before its threads are', async () => {
  await using tool = await openGerman();
  const { page } = tool;
  await opened(page, film);
  const numbers = await measured(page);
  await page.context().route(/\.worker/, cut);
  await page.reload();
  await page.getByText('Seine Datei konnte nicht geholt werden').waitFor();
  await page.context().unroute(/\.worker/, cut);
  await page.reload();
  await showsFilm(page, film.film);
  await page.locator('[data-step=ball]').click();
  await keeps(page, numbers);
  expect(await measured(page)).toBe(numbers);
}, 600_000);
