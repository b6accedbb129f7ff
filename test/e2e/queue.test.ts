import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { firstShown, foreign, openTool } from './tool';

const truth = JSON.parse(readFileSync('sample-clips/a-clean/truth.json', 'utf8')) as {
  exitVelocity: number;
};
const film = (path: string, name: string) => ({
  name,
  mimeType: 'video/mp4',
  buffer: readFileSync(path),
});

it('measures a queue in one setup beside the film that is open, past a clip that fails', async () => {
  await using tool = await openTool();
  const { page } = tool;
  await firstShown(page);
  await page.getByRole('button', { name: 'Close cautions' }).click();
  await page.getByLabel('Name of a new setup').fill('Bench, long lens');
  await page.getByRole('button', { name: 'Save this calibration as a setup' }).click();
  await page.getByText('This shot follows Bench, long lens.').waitFor();

  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page
    .locator('input[data-role=queue-files]')
    .setInputFiles([
      film('sample-clips/a-clean/clip.mp4', 'first.mp4'),
      film('sample-clips/a-clean/clip.mp4', 'second.mp4'),
      film('sample-clips/c-blur/clip.mp4', 'small.mp4'),
      film('test/fixtures/cut-index.mp4', 'cut.mp4'),
    ]);
  await page.getByRole('button', { name: 'Measure 4 clips' }).click();
  const rows = page.getByRole('region', { name: 'Clips in the queue' }).getByRole('listitem');
  await page.getByText('4 of 4 clips ended, 2 of them failed.').waitFor({ timeout: 500_000 });
  const states = await rows.evaluateAll((all) =>
    all.map((row) => [
      row.querySelector('.queue-name')?.textContent,
      row.getAttribute('data-state'),
      row.querySelector('[data-code]')?.getAttribute('data-code') ?? null,
    ]),
  );
  expect(states.slice(1, 3).map(([name, state]) => [name, state])).toEqual([
    ['first', 'done'],
    ['second', 'done'],
  ]);
  expect(states[0]?.[1]).toBe('failed');
  expect(states[3]).toEqual(['small', 'failed', 'setupSizeDiffers']);
  for (const i of [1, 2]) {
    const [, speed] = /done: ([\d.]+) ±/.exec((await rows.nth(i).textContent()) ?? '') ?? [];
    expect(Math.abs(Number(speed) / truth.exitVelocity - 1)).toBeLessThan(0.01);
  }
  const shots = page.getByRole('region', { name: 'Shots', exact: true }).locator('tbody th');
  expect(await shots.allTextContents()).toEqual(['first', 'second']);

  await page.getByRole('button', { name: 'Open second' }).click();
  await page.getByText('Frame 0 of second.mp4').waitFor({ state: 'attached' });
  await page.getByText('This shot follows Bench, long lens.').waitFor();
  expect(foreign(tool)).toEqual([]);
  expect(tool.errors).toEqual([]);
}, 600_000);
