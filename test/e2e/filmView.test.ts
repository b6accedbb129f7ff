import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { foreign, openFirstAfresh, openTool } from './tool';

/** Pictures of the whole film take a pass through it. */
const PATIENT = { timeout: 60_000 } as const;

/** Mean of the greys in a part of the film as it is shown, in pixels of the film. */
const greysOf = (page: Page, [x, y, width, height]: readonly [number, number, number, number]) =>
  page.evaluate(
    ([left, top, w, h]) => {
      const canvas = document.querySelector<HTMLCanvasElement>('.film > canvas');
      const data = canvas?.getContext('2d')?.getImageData(left, top, w, h).data ?? [];
      const greys = Array.from(data).filter((_, i) => i % 4 === 0);
      return { mean: greys.reduce((sum, grey) => sum + grey, 0) / greys.length };
    },
    [x, y, width, height] as const,
  );

describe('the film view on sample a', () => {
  it('shows film, change, flight, pixels, two frames and the streak image before measuring', async () => {
    await using tool = await openTool();
    const { page } = tool;
    await openFirstAfresh(page);

    // The streak image and the small pictures are there before anything is measured.
    await page.getByText(/^Streak image of 140 frames/).waitFor({ state: 'attached' });
    const slider = page.getByRole('slider', { name: 'Frame', exact: true });
    await slider.fill('77');
    await page.getByText('Frame 77 of clip.mp4').waitFor({ state: 'attached' });

    // A part of the picture without ball or fragments is mid grey once only change is shown.
    const still = [300, 4, 200, 20] as const;
    await expect.poll(async () => (await greysOf(page, still)).mean, PATIENT).toBeLessThan(60);
    await page.getByRole('combobox', { name: 'Show' }).selectOption('change');
    await expect
      .poll(async () => (await greysOf(page, still)).mean, PATIENT)
      .toBeCloseTo(127.5, -0.5);

    await page.locator('[data-step=ball]').click();
    await page.getByRole('button', { name: 'Measure', exact: true }).click();
    await page.getByRole('button', { name: 'Measure again' }).waitFor({ timeout: 120_000 });
    expect(await slider.getAttribute('aria-valuetext')).toMatch(/ball in frames \d+ to \d+$/);

    // Every ball beside the next: bright all along the path, while one frame has one ball.
    const path = [250, 60, 770, 120] as const;
    await page.getByRole('combobox', { name: 'Show' }).selectOption('filmed');
    await expect.poll(async () => (await greysOf(page, still)).mean, PATIENT).toBeLessThan(60);
    const one = await greysOf(page, path);
    await page.getByRole('combobox', { name: 'Show' }).selectOption('flight');
    await expect
      .poll(async () => (await greysOf(page, path)).mean, PATIENT)
      .toBeGreaterThan(one.mean + 8);

    await page.getByRole('combobox', { name: 'Show' }).selectOption('filmed');
    await page.getByRole('button', { name: 'Two frames' }).click();
    await page.getByRole('button', { name: '10 frames on' }).click();
    await page.getByRole('region', { name: /^Frame \d+, held beside the film$/ }).waitFor();
    await page.keyboard.press('h');

    await page.getByRole('group', { name: 'Film', exact: true }).focus();
    await page.keyboard.press('.');
    await page.locator('.pixel-numbers').waitFor();
    await page.keyboard.press('m');
    const magnifier = page.getByRole('slider', { name: 'Magnifier' });
    await magnifier.focus();
    await page.keyboard.press('ArrowRight');
    expect(await magnifier.getAttribute('aria-valuetext')).toMatch(/grey \d+$/);

    expect(foreign(tool)).toEqual([]);
    expect(tool.errors).toEqual([]);
  });

  it('takes a path drawn on the streak image, with its speed, before the first measurement', async () => {
    await using tool = await openTool();
    const { page } = tool;
    await openFirstAfresh(page);
    await page.getByText(/^Streak image of 140 frames/).waitFor({ state: 'attached' });
    await page.getByRole('button', { name: 'Draw the ball’s path' }).click();
    const earlier = page.getByRole('slider', { name: 'Slanted line, earlier end' });
    await earlier.focus();
    await page.keyboard.press('ArrowRight');
    expect(await earlier.getAttribute('aria-valuetext')).toMatch(
      /px per frame, about [\d.]+ m\/s$/,
    );
    await page.locator('[data-step=ball]').click();
    await page
      .getByRole('button', { name: /^Remove the place in frame/ })
      .first()
      .waitFor();
    expect(tool.errors).toEqual([]);
  });
});
