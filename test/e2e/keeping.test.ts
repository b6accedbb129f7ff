import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { foreign, openTool } from './tool';

const ready = (page: Page) => page.getByText(/^Frame \d+ of/).waitFor({ state: 'attached' });
const figure = (page: Page, step: string) => page.locator(`[data-step=${step}] .step-figure`);
const frame = (page: Page) =>
  page
    .getByText(/^Frame \d+ of/)
    .first()
    .textContent();

async function typeRate(page: Page, rate: string): Promise<void> {
  await page.locator('[data-step=clock]').click();
  await page.getByLabel('Recording rate').first().fill(rate);
  await page.keyboard.press('Enter');
}

it('stands after a reload where it stood, with its result and its undo', async () => {
  await using tool = await openTool();
  const { page } = tool;
  await ready(page);
  await page.getByRole('button', { name: 'Close cautions' }).click();
  // A file of one's own: nothing but the browser's copy brings it back.
  await page
    .locator('input[data-role=files]')
    .setInputFiles(['sample-clips/a-clean/clip.mp4', 'sample-clips/a-clean/a-clean.shot.json']);
  await page.getByText('this browser holds a copy').waitFor();
  await page.locator('[data-step=ball]').click();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('button', { name: 'Next: Result' }).click({ timeout: 300_000 });
  const speed = await figure(page, 'result').textContent();
  const shown = await frame(page);
  const speedIs = (asBefore: boolean) =>
    expect
      .poll(async () => (await figure(page, 'result').textContent()) === speed, { timeout: 60_000 })
      .toBe(asBefore);
  // The result has followed each edit before the page is left.
  await page.keyboard.press('x');
  await speedIs(false);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await speedIs(true);
  await page.reload();

  await ready(page);
  await expect.poll(() => figure(page, 'result').textContent(), { timeout: 30_000 }).toBe(speed);
  expect(await frame(page)).toBe(shown);
  expect(await page.getByRole('heading', { level: 2, name: 'Result' }).isVisible()).toBe(true);
  expect(await page.getByRole('button', { name: 'Close cautions' }).count()).toBe(0);
  const redo = page.getByRole('button', { name: 'Redo', exact: true });
  expect(await redo.isEnabled()).toBe(true);
  expect(await page.locator('[data-role=exit-velocity]').textContent()).toContain('m/s');
  expect(foreign(tool)).toEqual([]);
  expect(tool.errors).toEqual([]);
}, 600_000);

it('keeps two tabs apart, and gives a closed window back', async () => {
  await using tool = await openTool();
  const { page } = tool;
  const context = page.context();
  await ready(page);
  await typeRate(page, '11000');
  const second = await context.newPage();
  await second.goto(tool.address);
  await ready(second);
  await typeRate(second, '9000');
  await typeRate(page, '11500');
  await Promise.all([page.reload(), second.reload()]);
  await expect
    .poll(() => figure(page, 'clock').textContent(), { timeout: 30_000 })
    .toMatch(/^11\s500 \/s$/);
  await expect
    .poll(() => figure(second, 'clock').textContent(), { timeout: 30_000 })
    .toMatch(/^9\s?000 \/s$/);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect
    .poll(() => figure(page, 'clock').textContent(), { timeout: 30_000 })
    .toMatch(/^11\s000 \/s$/);
  await expect
    .poll(() => figure(second, 'clock').textContent(), { timeout: 30_000 })
    .toMatch(/^9\s?000 \/s$/);

  await second.close();
  await page.waitForTimeout(500);
  await page.close();
  const later = await context.newPage();
  await later.goto(tool.address);
  await expect
    .poll(() => figure(later, 'clock').textContent(), { timeout: 30_000 })
    .toMatch(/^11\s000 \/s$/);
  expect(tool.errors).toEqual([]);
}, 300_000);
