import { readdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { lampPictures } from '../fixtures/lampPictures';
import { firstShown, foreign, openTool } from './tool';

const step = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name });

async function opened(page: Page): Promise<void> {
  await firstShown(page);
  await page.getByRole('button', { name: 'Close cautions' }).click();
}

it('measures the line time from pictures of a lamp, the film staying open', async () => {
  await using tool = await openTool();
  const { page } = tool;
  await opened(page);
  await step(page, 'Clock').click();
  await page.getByLabel('Recording rate').first().fill('1000');
  await page.keyboard.press('Enter');
  await page.getByText('Measure it from a lamp').click();
  const truth = 9e-6;
  const clip = { frames: 60, width: 32, height: 64, rate: 1000, flicker: 100, lineTime: truth };
  await page.locator('[data-role=lamp]').setInputFiles(
    lampPictures(clip).map(({ name, bytes }) => ({
      name,
      mimeType: 'image/bmp',
      buffer: Buffer.from(bytes),
    })),
  );
  const words = await page.getByText(/^Lines are read downwards/).textContent();
  const [, value, u] = /([\d.]+) ± ([\d.]+) µs/.exec(words ?? '') ?? [];
  expect(Number(u)).toBeLessThan(1);
  expect(Math.abs(Number(value) - truth * 1e6)).toBeLessThan(3 * Number(u));
  await page.getByText('The lamp was filmed at 32 by 64 pixels').waitFor();
  await page.getByRole('button', { name: 'Use this line time' }).click();
  const field = page.getByLabel('Time per line read');
  const stated = await field.inputValue();
  expect(stated).toMatch(/ µs$/);
  expect(Number.parseFloat(stated)).toBeCloseTo(Number(value), 1);
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await field.inputValue()).toBe('0 µs');
  // The film is still there to be shown.
  await page.getByRole('slider', { name: 'Frame', exact: true }).fill('70');
  await page.getByText('Frame 70 of clip.mp4').waitFor({ state: 'attached' });
  expect(foreign(tool)).toEqual([]);
  expect(tool.errors).toEqual([]);
});

it('finds the lens from stills of a chessboard, and lays a grid by it', async () => {
  await using tool = await openTool();
  const { page } = tool;
  await opened(page);
  const folder = 'test/outside/data/chessboard';
  const all = readdirSync(folder)
    .filter((name) => name.endsWith('.jpg'))
    .map((name) => `${folder}/${name}`);
  // Every second one is enough, and spares time.
  const stills = all.filter((_, i) => i % 2 === 0);
  // A film by the same camera: its pictures have the same size.
  await page.locator('[data-role=files]').setInputFiles(stills.slice(0, 2));
  await page.getByText('Frame 0 of left01.jpg').waitFor({ state: 'attached' });
  await step(page, 'Scale').click();
  await page.getByText('Lens: no distortion stated').click();
  await page.getByText('From pictures of a chessboard').click();
  const choose = (files: string[]) => page.locator('[data-role=boards]').setInputFiles(files);
  // Cancelled by an event of its own: a pointer's click first waits until nothing moves, and on a
  // fast machine the search has ended by then.
  await choose(all);
  await page.getByRole('button', { name: 'Cancel' }).dispatchEvent('click');
  await page.getByRole('button', { name: 'Choose the clip or stills' }).waitFor();
  expect(await page.getByText(/The board was found/).count()).toBe(0);
  await choose(stills);
  await page.getByText('The board was found in 7 of 7 pictures').waitFor({ timeout: 90_000 });
  await page.getByRole('img', { name: /^left01.jpg: 54 corners in 9 by 6/ }).waitFor();
  await page.getByRole('button', { name: 'Use this lens' }).click();
  const focal = await page.locator('.facts div', { hasText: 'Focal length' }).textContent();
  const [, found, u] = /([\d.]+) ± ([\d.]+) px/.exec(focal ?? '') ?? [];
  // OpenCV's samples/data/left_intrinsics.yml, made from the same pictures: 535.916 px.
  expect(Math.abs(Number(found) - 535.916)).toBeLessThan(4 * Number(u));
  expect(Number(u)).toBeLessThan(4);
  await page.getByLabel('Show a grid of the flight plane').check();
  await page.locator('.film-grid .line').waitFor({ state: 'attached' });
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByText('Lens: no distortion stated').waitFor();
  expect(foreign(tool)).toEqual([]);
  expect(tool.errors).toEqual([]);
});
