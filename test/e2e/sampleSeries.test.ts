import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { foreign, openTool } from './tool';

const truth = JSON.parse(readFileSync('sample-clips/series/truth.json', 'utf8')) as {
  shots: { exitVelocity: number; launcher: { discharge: number } }[];
};

/** "0.62 ± 0.04": value and half the interval, as a person reads them. */
function readBoth(text: string): { value: number; half: number } {
  const match = /([\d.]+) ± ([\d.]+)/.exec(text);
  if (match === null) throw new Error(`no number in "${text}"`);
  return { value: Number(match[1]), half: Number(match[2]) };
}

describe('the rendered series, opened by one click', () => {
  it('fills the notebook, and the leak fitted to it holds the truth', async () => {
    await using tool = await openTool();
    const { page } = tool;
    await page.getByRole('button', { name: 'Series of 12 shots' }).click();
    await page.getByText('12 of 12 shots shown, 12 of them counted.').waitFor({ timeout: 60_000 });
    await page.getByRole('button', { name: 'Draw its curve' }).click();
    await page.getByText('The curve is for the launcher of').waitFor({ timeout: 300_000 });

    await page.getByLabel('residual pressure', { exact: true }).check();
    await page.getByRole('button', { name: 'Fit', exact: true }).click();
    const table = page.getByRole('region', { name: 'Fitted inputs' });
    await table.waitFor({ timeout: 300_000 });
    const rows = await table.getByRole('row').allTextContents();
    expect(rows).toHaveLength(3);
    expect(rows[0]).toContain('Correlation with residual pressure');
    const cells = await table.getByRole('row').nth(1).getByRole('cell').allTextContents();
    const { value, half } = readBoth(cells[0] ?? '');
    expect(Math.abs(value - (truth.shots[0]?.launcher.discharge ?? 0))).toBeLessThan(half);
    expect(cells).toHaveLength(4);

    // One of the two films that were kept opens from its row.
    await page.getByRole('button', { name: 'Open the film of 2031-05-06 A' }).click();
    await page.getByText('Frame 0 of 2031-05-06-A.mp4').waitFor({ state: 'attached' });
    expect(foreign(tool)).toEqual([]);
    expect(tool.errors).toEqual([]);
  }, 700_000);
});
