import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import type { Locator, Page, Route } from 'playwright-core';
import { afterAll, expect } from 'vitest';
import { type OpenTool, openTool } from '../tool';

/*
 * What tests of faults do. Each fault: nothing typed or measured is lost, the page says in its own language what is
 * wrong and what to do, and once the cause is gone the same button gives the same numbers.
 */

const LONG = { timeout: 240_000 };

/** Footage and its shot file, by their paths. */
export interface Film {
  readonly film: string;
  readonly shot: string;
}

/** A folder for the tests of one file. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'faults-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  return folder;
}

/** Samples that faults are tried on: clip and shot file. Both state 12 000 frames a second. */
const SAMPLES = {
  h264: ['sample-clips/a-clean/clip.mp4', 'sample-clips/a-clean/a-clean.shot.json'],
  motionJpeg: ['sample-clips/d-mjpeg/clip.avi', 'sample-clips/d-mjpeg/d-mjpeg.shot.json'],
} as const;
type Sample = keyof typeof SAMPLES;

/** The clip of a sample. */
export const clipOf = (sample: Sample): Buffer => readFileSync(SAMPLES[sample][0]);

/** Writes a film with the shot file of a sample, not hashed; `reading` says how headerless pixels lie. */
export function writeFilm(film: string, bytes: Buffer, sample: Sample, reading?: object): Film {
  writeFileSync(film, bytes);
  const written = JSON.parse(readFileSync(SAMPLES[sample][1], 'utf8'));
  written.footage = { path: basename(film), sha256: null, ...(reading && { reading }) };
  const shot = `${film}.shot.json`;
  writeFileSync(shot, JSON.stringify(written));
  return { film, shot };
}

/** The sample measured soonest as a file of one's own, to be told from the one that the page begins with. */
export const ownFilm = (folder: string): Film =>
  writeFilm(join(folder, 'film.avi'), clipOf('motionJpeg'), 'motionJpeg');

/** The tool in German, so that words that were left in English are found. */
export async function openGerman(address?: string): Promise<OpenTool> {
  const tool = await openTool({ locale: 'de-DE' }, address);
  tool.page.setDefaultTimeout(LONG.timeout);
  return tool;
}

const figure = (page: Page, step: string) => page.locator(`[data-step=${step}] .step-figure`);
export const measureButton = (page: Page): Locator => page.locator('button.measure');

/** What the page says of a fault. */
export const told = (page: Page, code: string): Locator =>
  page.locator(`[data-code=${code}]`).first();

/** What is there while a film is shown. */
export const filmShown = (page: Page, path: string): Locator =>
  page.getByText(new RegExp(`^Bild \\d+ von ${basename(path)}`)).first();
export const showsFilm = (page: Page, path: string): Promise<void> =>
  filmShown(page, path).waitFor({ state: 'attached' });

/** Opens a film with an edit made, the ball's step on the screen. */
export async function opened(page: Page, { film, shot }: Film): Promise<void> {
  await page.locator('[data-step=footage]').click();
  await page.locator('input[data-role=files]').setInputFiles([film, shot]);
  await showsFilm(page, film);
  await edited(page);
}

/** Waits until a reload finds the film that is open. */
export async function copied(page: Page): Promise<void> {
  await page.locator('[data-step=footage]').click();
  await page.getByText('dieser Browser hält eine Kopie').waitFor();
  await page.locator('[data-step=ball]').click();
}

async function edited(page: Page): Promise<void> {
  await rateIs(page, /^12\s000 \/s$/);
  await page.locator('[data-step=clock]').click();
  await page.getByLabel('Bildrate der Aufnahme').first().fill('11000');
  await page.keyboard.press('Enter');
  await rateIsEdited(page);
  await page.locator('[data-step=ball]').click();
}

const rateIs = (page: Page, rate: RegExp) =>
  expect.poll(() => figure(page, 'clock').textContent(), LONG).toMatch(rate);
export const rateIsEdited = (page: Page): Promise<void> => rateIs(page, /^11\s000 \/s$/);

/** Measures until there is progress to be seen. */
export async function measuring(page: Page): Promise<void> {
  await measureButton(page).click();
  await page.locator('progress[value]').waitFor({ state: 'attached' });
}

/** Measures to the end without a fault; gives the numbers of the result as they are shown. */
export async function measured(page: Page): Promise<string> {
  await page.locator('[data-step=ball]').click();
  await measureButton(page).click();
  await page.getByRole('button', { name: 'Abbrechen' }).waitFor({ state: 'attached' });
  await measureButton(page).waitFor();
  // A measurement that failed leaves the numbers before it: only that it tells of no fault shows that these are new.
  expect(await page.locator('.notice-problem').allTextContents()).toEqual([]);
  const numbers = await numbersOf(page);
  expect(numbers).toMatch(/\d m\/s/);
  return numbers;
}

/** Exit velocity and lead with their uncertainties, and the scale. */
async function numbersOf(page: Page): Promise<string> {
  await page.locator('[data-step=result]').click();
  const shown = [
    page.locator('[data-role=exit-velocity]'),
    ...['scale', 'seal', 'result'].map((step) => figure(page, step)),
  ];
  const texts = [];
  for (const one of shown) texts.push(await one.textContent());
  await page.locator('[data-step=ball]').click();
  return texts.join('; ');
}

/** Inputs and the result before are still there. */
export async function keeps(page: Page, numbers: string): Promise<void> {
  await rateIsEdited(page);
  expect(await numbersOf(page)).toBe(numbers);
  expect(await page.getByRole('button', { name: 'Rückgängig', exact: true }).isEnabled()).toBe(
    true,
  );
}

/** Has something happen in the first of the threads of a kind. */
export async function inThread({ page }: OpenTool, kind: string, what: () => void): Promise<void> {
  const [thread] = page.workers().filter((one) => one.url().includes(`${kind}.worker`));
  if (thread === undefined) throw new Error(`There is no ${kind} thread.`);
  await thread.evaluate(what).catch(() => {}); // it ends before it answers
}

/** Answers for a thread's file with one in which something is put before the thread's own script. */
export const withPrelude = (prelude: string) => async (route: Route) => {
  const response = await route.fetch();
  await route.fulfill({ response, body: prelude + (await response.text()) });
};

/** Opens a film in a page whose threads of a kind begin with `prelude`; gives what lets those to come begin as built. */
export async function openedWithPrelude(
  page: Page,
  film: Film,
  threads: RegExp,
  prelude: string,
): Promise<() => Promise<void>> {
  await showsFilm(page, 'clip.mp4');
  const answer = withPrelude(prelude);
  await page.context().route(threads, answer);
  await page.reload();
  await opened(page, film);
  return () => page.context().unroute(threads, answer);
}
