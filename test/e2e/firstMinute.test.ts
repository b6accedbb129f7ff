import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { firstShown, foreign, openTool } from './tool';

const CLIP = 'sample-clips/a-clean/clip.mp4';
const truth = JSON.parse(readFileSync('sample-clips/a-clean/truth.json', 'utf8')) as {
  exitVelocity: number;
};

/** Drops a clip on what a selector finds, as the browser tells the page of it. */
async function drop(page: Page, selector: string, name: string): Promise<void> {
  const bytes = readFileSync(CLIP).toString('base64');
  const transfer = await page.evaluateHandle(
    ([data, file]) => {
      const held = new DataTransfer();
      const content = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
      held.items.add(new File([content], file, { type: 'video/mp4' }));
      return held;
    },
    [bytes, name] as const,
  );
  const target = page.locator(selector).first();
  await target.dispatchEvent('dragover', { dataTransfer: transfer });
  await target.dispatchEvent('drop', { dataTransfer: transfer });
}

describe('the first minute', () => {
  it('shows a sample already reduced, with no click and no WebAssembly', async () => {
    await using tool = await openTool();
    const { page } = tool;
    const said = (await page.locator('[data-role=first-speed]').textContent()) ?? '';
    const [, value, half] = /v = ([\d.]+) ± ([\d.]+) m\/s/.exec(said) ?? [];
    expect(Math.abs(Number(value) - truth.exitVelocity)).toBeLessThan(Number(half));
    expect(await page.getByText('Rendered sample 2031-04-17 A, already reduced').isVisible()).toBe(
      true,
    );

    // The steps, film and streak image of it are there, too; the frame shown has the ball clear of the muzzle.
    await firstShown(page);
    await page.getByText(/^Streak image of 140 frames/).waitFor({ state: 'attached' });
    await expect
      .poll(() => page.locator('[data-step=result] .step-figure').textContent())
      .toBe(`${value} m/s`);
    await page.locator('[data-step=clock]').click();
    expect(await page.locator('[data-role=first-speed]').count()).toBe(0);
    await page.locator('[data-step=footage]').click();
    await page.getByRole('button', { name: 'See how it was found' }).click();
    expect(await page.locator('[data-role=exit-velocity]').textContent()).toContain(value ?? '?');
    await page.getByRole('region', { name: 'Evidence' }).locator('svg').first().waitFor();
    expect(tool.requests.some((url) => url.includes('film.worker'))).toBe(true);
    // OpenCV's WebAssembly stands inside its library.
    expect(tool.requests.filter((url) => /\.wasm|library-/.test(url))).toEqual([]);
    expect(tool.errors).toEqual([]);
  });

  it('can be read and used before a thread has been fetched', async () => {
    await using tool = await openTool({}, 'about:blank');
    const { page } = tool;
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    let waiting = 0;
    await page.context().route(/\.worker-.*\.js/, async (route) => {
      waiting++;
      await held;
      await route.continue();
    });
    await page.goto(inject('toolAddress'));
    await page.locator('[data-role=first-speed]').waitFor({ timeout: 10_000 });
    expect(waiting).toBeGreaterThan(0);
    await page.getByRole('button', { name: 'Mistakes' }).click();
    await page.getByRole('heading', { name: 'Wrong recording rate' }).waitFor();
    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    await page.getByRole('heading', { name: 'Notebook' }).waitFor();
    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    expect(await page.getByText('Frame 0 of').count()).toBe(0);
    // What is asked meanwhile is done once they are there: a film of one's own, in the place of the sample.
    await page.locator('input[data-role=first-files]').setInputFiles({
      name: 'mine.mp4',
      mimeType: 'video/mp4',
      buffer: readFileSync(CLIP),
    });
    release();
    await page.getByText('Frame 0 of mine.mp4').waitFor({ state: 'attached' });
    expect(await page.locator('[data-role=first-speed]').count()).toBe(0);
    expect(tool.errors).toEqual([]);
  });

  it('says so where a thread cannot be fetched', async () => {
    await using tool = await openTool({}, 'about:blank');
    const { page } = tool;
    await page.context().route(/film\.worker-.*\.js/, (route) => route.abort());
    await page.goto(inject('toolAddress'));
    await page.getByText('A background thread did not start').waitFor({ timeout: 20_000 });
  });

  it('takes a clip dropped on a step, the streak image, a plot, the plan or the mistakes', async () => {
    await using tool = await openTool();
    const { page } = tool;
    await firstShown(page);
    const opens = async (selector: string, name: string) => {
      await drop(page, selector, name);
      await page.getByText(`Frame 0 of ${name}`).waitFor({ state: 'attached' });
      await page.getByRole('heading', { level: 2, name: 'Footage' }).waitFor();
    };
    await page.getByRole('button', { name: 'See how it was found' }).click();
    await opens('.evidence svg', 'on-plot.mp4');
    await opens('[data-step=seal]', 'on-step.mp4');
    await opens('[role=slider][aria-label*="treak"]', 'on-streak.mp4');
    await page.getByRole('button', { name: 'Plan a shot' }).click();
    await opens('main', 'on-plan.mp4');
    await page.getByRole('button', { name: 'Mistakes' }).click();
    await opens('main', 'on-mistakes.mp4');
    // In the notebook clips are many: it waits to be measured beside the shot.
    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    await drop(page, 'main', 'on-notebook.mp4');
    await page.getByText('on-notebook', { exact: true }).first().waitFor();
    expect(foreign(tool)).toEqual([]);
    expect(tool.errors).toEqual([]);
  });

  it('says what it found and needs, and reads values as people write them while they type', async () => {
    await using tool = await openTool();
    const { page } = tool;
    await firstShown(page);
    await drop(page, 'main', 'own.mp4');
    await page.getByText('Frame 0 of own.mp4').waitFor({ state: 'attached' });
    const found = page.locator('[data-role=found]');
    await expect.poll(() => found.textContent()).toContain('1024 × 256 px, 140 frames');
    const said = (await found.textContent()) ?? '';
    expect(said).toContain('It plays at 30 frames/s');
    expect(said).toMatch(
      /Still needed from you: the recording rate \(Clock\).*known length \(Scale\).*muzzle \(Scale\)/,
    );

    await page.locator('[data-step=clock]').click();
    const typed = async (label: string, text: string) => {
      const field = page.getByLabel(label, { exact: true }).first();
      await field.fill(text);
      return field;
    };
    const shows = async (label: string, text: string, afterwards: string) => {
      const field = await typed(label, text);
      await field.press('Enter');
      await expect.poll(() => field.inputValue()).toBe(afterwards);
    };
    await shows('Recording rate', '12 kHz', '12000 /s');
    await shows('Exposure', '1/50000 s', '20 µs');
    await shows('Exposure', '20 us', '20 µs');
    // What is wrong is said before Enter.
    await typed('Exposure', '20 kg');
    await page.getByText('“kg” is not a unit it can be given in.').waitFor();
    await typed('Exposure', '20,5 us');
    await page.getByText('has a comma, which could mean two things').waitFor();
    await page.keyboard.press('Escape');

    await page.locator('[data-step=scale]').click();
    await page.getByRole('button', { name: 'Draw a known length' }).click();
    await shows('Distance between the marks', '7.87 in', '199.898 mm');
    await shows('Distance between the marks', '200 mm', '200 mm');
    await page.locator('[data-step=footage]').click();
    await expect
      .poll(() => found.textContent())
      .toContain('Still needed from you: the place of the muzzle (Scale).');
    expect(tool.errors).toEqual([]);
  });
});
