import { basename, resolve } from 'node:path';
import type { UnwatchedPage } from './unwatched';

/** The button, which a way to cancel takes the place of. */
const MEASURE = `document.querySelector('button.measure')`;

/** Waits until the page shows a frame of a film, by its file's name. */
export const showsFilm = (page: UnwatchedPage, name: string, timeout: number): Promise<void> =>
  page.until(
    `[...document.querySelectorAll('*')].some(({ childElementCount, textContent }) =>
      childElementCount === 0 && textContent.includes(${JSON.stringify(` of ${name}`)}))`,
    timeout,
  );

/** Opens a film with its shot file. */
export async function openFilm(page: UnwatchedPage, film: string, shot: string): Promise<void> {
  await page.setFiles('input[data-role=files]', [resolve(film), resolve(shot)]);
  await showsFilm(page, basename(film), 600_000);
}

/** Goes to the step in which the film is measured. */
export async function goToMeasure(page: UnwatchedPage): Promise<void> {
  await page.evaluate(`document.querySelector('[data-step=ball]').click()`);
  await page.until(`${MEASURE} !== null`, 10_000);
}

/** Measures the film to its end. */
export async function measure(page: UnwatchedPage): Promise<void> {
  await page.evaluate(`${MEASURE}.click()`);
  await page.until(`document.querySelector('button.cancel, .notice-problem') !== null`, 60_000);
  await page.until(`${MEASURE} !== null`, 3_600_000);
}
