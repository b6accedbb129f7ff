import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { firstShown, foreign, openTool } from './tool';

/** Presses Tab until what has the focus says this. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let i = 0; i < 200; i++) {
    const focused = await page.evaluate(() => document.activeElement?.textContent?.trim() ?? '');
    if (focused === name) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`no way by Tab to "${name}"`);
}

const focusedText = (page: Page) =>
  page.evaluate(() => document.activeElement?.textContent?.trim() ?? '');

it('leads by keyboard alone from the first screen to the mistakes and back, and from a step to its own', async () => {
  await using tool = await openTool();
  const { page } = tool;
  await firstShown(page);
  await tabTo(page, 'Mistakes');
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedText(page)).toBe('Usual mistakes, and how large they are');
  const picture = page.locator('.mistake-picture image').first();
  const href = (await picture.getAttribute('href')) ?? '';
  const answer = await page.request.get(new URL(href, tool.address).href);
  expect(answer.headers()['content-type']).toBe('image/png');
  await tabTo(page, 'Parallax');
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedText(page)).toBe('Parallax');
  await page.keyboard.press('Shift+Tab');
  await tabTo(page, 'Mistakes');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 2, name: 'Footage' }).waitFor();

  await page.keyboard.press('3');
  await tabTo(page, 'What this step works out');
  await page.keyboard.press('Enter');
  await tabTo(page, 'In pictures: Scale on the wrong plane');
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedText(page)).toBe('Scale on the wrong plane');
  await page.keyboard.press('Shift+Tab');
  await page.getByRole('button', { name: 'Back to the shot' }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedText(page)).toBe('In pictures: Scale on the wrong plane');
  expect(foreign(tool)).toEqual([]);
  expect(tool.errors).toEqual([]);
});
