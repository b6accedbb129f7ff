import { expect, it } from 'vitest';
import { foreign, openTool } from './tool';

it('opens on a rendered sample, asks nobody else for anything, and reports no error', async () => {
  await using tool = await openTool();
  const { page } = tool;
  await page
    .getByText(/^Frame \d+ of clip\.mp4, 1024 by 256 pixels/)
    .waitFor({ state: 'attached' });
  expect(await page.getByRole('banner').textContent()).toContain('rendered sample');

  const film = page.getByRole('group', { name: 'Film', exact: true }).locator('canvas').first();
  const differentGreys = () =>
    film.evaluate((canvas: HTMLCanvasElement) => {
      const { data } = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height) ?? {
        data: new Uint8ClampedArray(),
      };
      return new Set(data.filter((_value, i) => i % 4 === 0)).size;
    });
  await expect.poll(differentGreys, { timeout: 30_000 }).toBeGreaterThan(50);

  expect(await page.evaluate(() => crossOriginIsolated)).toBe(true);
  // The log sees what the workers fetch, too.
  expect(tool.requests.some((url) => url.includes('film.worker'))).toBe(true);
  expect(foreign(tool)).toEqual([]);
  expect(tool.errors).toEqual([]);

  // Both watches are awake; the page itself may ask nobody else.
  await page.evaluate(() => {
    console.error('seen');
    fetch('https://elsewhere.invalid/').catch(() => {});
  });
  await expect.poll(() => tool.errors).toContain('seen');
  await expect
    .poll(() => tool.errors)
    .toContainEqual(expect.stringMatching(/elsewhere.invalid.*Content Security Policy/));
  expect(foreign(tool)).toEqual([]);
  const other = await page.context().newPage();
  await other.goto('https://elsewhere.invalid/').catch(() => {});
  await expect.poll(() => foreign(tool)).toEqual(['https://elsewhere.invalid/']);
});
