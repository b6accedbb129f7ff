import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { firstShown, foreign, openTool } from './tool';

const truth = JSON.parse(readFileSync('sample-clips/a-clean/truth.json', 'utf8')) as {
  exitVelocity: number;
};
const FRAME = { width: 1024, height: 256 };

/** Where an image point stands on the page; pixel centres are whole numbers. */
async function placeOf(page: Page, x: number, y: number): Promise<readonly [number, number]> {
  const film = page.getByRole('group', { name: 'Film', exact: true }).locator('canvas').first();
  const box = await film.boundingBox();
  if (box === null) throw new Error('the film is not on the page');
  return [
    box.x + ((x + 0.5) / FRAME.width) * box.width,
    box.y + ((y + 0.5) / FRAME.height) * box.height,
  ];
}

async function type(page: Page, label: string, text: string): Promise<void> {
  await page.getByLabel(label).first().fill(text);
  await page.keyboard.press('Enter');
}

it('leads from a bare clip to its speed, saying at each step what comes next', async () => {
  await using tool = await openTool();
  const { page } = tool;
  await firstShown(page);
  await page.getByRole('button', { name: 'Close cautions' }).click();

  await page.locator('input[data-role=files]').setInputFiles('sample-clips/a-clean/clip.mp4');
  await page.getByText('The recording rate is not known yet.').waitFor();
  await page.getByRole('button', { name: 'Next: Clock' }).click();
  await type(page, 'Recording rate', '12000');
  await type(page, 'Exposure', '20 us');

  await page.getByRole('button', { name: 'Next: Scale' }).click();
  await page.getByRole('button', { name: 'Draw a known length' }).click();
  const [left, markY] = await placeOf(page, 258.3, 222);
  const [right] = await placeOf(page, 861.3, 222);
  await page.mouse.move(left, markY);
  await page.mouse.down();
  await page.mouse.move((left + right) / 2, markY);
  await page.mouse.move(right, markY);
  await page.mouse.up();
  await type(page, 'Distance between the marks', '200 mm');
  await type(page, 'Camera distance', '1.5 m');

  await page.getByRole('button', { name: 'Mark it on the film' }).click();
  await page.mouse.click(...(await placeOf(page, 199.7, 107.9)));
  // The arrow's tip, drawn level with the point, sets the direction of travel.
  const tip = await page.getByRole('slider', { name: 'Direction of travel' }).boundingBox();
  if (tip === null) throw new Error('the direction of travel is not on the film');
  await page.mouse.move(tip.x + tip.width / 2, tip.y + tip.height / 2);
  await page.mouse.down();
  await page.mouse.move(tip.x + tip.width / 2 + 100, tip.y + tip.height / 2 + 2);
  await page.mouse.up();
  // Only a stated direction can be given back to the fit.
  expect(
    await page.getByRole('button', { name: 'Fit the direction from the path' }).isEnabled(),
  ).toBe(true);

  await page.getByRole('button', { name: 'Next: Ball' }).click();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('button', { name: 'Next: Result' }).click({ timeout: 120_000 });

  const text = (await page.locator('[data-role=exit-velocity]').textContent()) ?? '';
  const [, value, half] = /v = ([\d.]+) ± ([\d.]+) m\/s/.exec(text) ?? [];
  expect(Math.abs(Number(value) / truth.exitVelocity - 1)).toBeLessThan(0.01);
  expect(Math.abs(Number(value) - truth.exitVelocity)).toBeLessThan(Number(half));
  // 101 325 Pa on a circle of 30 mm, and that on 1.90 g (ISO 2533 for the pressure; the rest is arithmetic).
  const drive = (await page.locator('[data-role=drive]').textContent()) ?? '';
  expect(drive).toContain('about 71.6 N');
  expect(drive).toContain('3840 g');
  expect(foreign(tool)).toEqual([]);
  expect(tool.errors).toEqual([]);
});
