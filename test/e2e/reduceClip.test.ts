import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { foreign, measureFirst, openTool } from './tool';

const truth = JSON.parse(readFileSync('sample-clips/a-clean/truth.json', 'utf8')) as {
  exitVelocity: number;
  sealBurst: number;
  lead: number;
};

/** "v = 176.75 ± 0.78 m/s (95 %)": value and half the interval, as a person reads them. */
function readSpeed(text: string): { value: number; half: number } {
  const match = /v = ([\d.]+) ± ([\d.]+) m\/s/.exec(text);
  if (match === null) throw new Error(`no speed in "${text}"`);
  return { value: Number(match[1]), half: Number(match[2]) };
}

describe('sample a, reduced by clicking', () => {
  it('gives the exit velocity, the burst before it, and leads from the streak image to the frame', async () => {
    await using tool = await openTool();
    const { page } = tool;
    await measureFirst(page);
    await page.locator('[data-step=result]').click();

    const speed = readSpeed((await page.locator('[data-role=exit-velocity]').textContent()) ?? '');
    expect(Math.abs(speed.value / truth.exitVelocity - 1)).toBeLessThan(0.003);
    expect(Math.abs(speed.value - truth.exitVelocity)).toBeLessThan(speed.half);
    // u is at most half of the half-interval's 1.9 to 2 u.
    expect(speed.half / 1.9 / speed.value).toBeLessThan(0.003);

    const lead = (await page.locator('[data-role=lead]').textContent()) ?? '';
    const [, found, half] = /([\d.]+) ± ([\d.]+) µs before/.exec(lead) ?? [];
    expect(Math.abs(Number(found) - truth.lead * 1e6)).toBeLessThan(Number(half));

    // A line of the streak image brings its frame: three quarters down the picture of a film shown whole.
    const streak = page.getByRole('slider', { name: /streak/i }).first();
    const before = await page.getByText(/^Frame \d+ of clip\.mp4/).textContent();
    const box = await streak.boundingBox();
    if (box === null) throw new Error('the streak image is not on the page');
    await streak.click({ position: { x: box.width / 2, y: box.height * 0.75 } });
    await expect
      .poll(() => page.getByText(/^Frame \d+ of clip\.mp4/).textContent())
      .not.toBe(before);

    expect(foreign(tool)).toEqual([]);
    expect(tool.errors).toEqual([]);
  });
});
