import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { foreign, measureFirst, openTool } from './tool';

const speedOf = async (page: Page) =>
  (await page.locator('[data-step=result] .step-figure').textContent()) ?? '';

describe('frame by frame on sample a', () => {
  it('leads to the frames left out, corrects a centre by keyboard and takes it back', async () => {
    await using tool = await openTool();
    const { page } = tool;
    await measureFirst(page);
    const section = page.getByRole('region', { name: 'Frame by frame' });

    // The ball comes from behind an opaque barrel end: frames before that hold none.
    await page.getByRole('button', { name: /^Look at the \d+ left out$/ }).click();
    await section.getByRole('heading', { name: /^Frame \d+: left out$/ }).waitFor();
    expect(await section.getByText(/^1 of \d+$/).count()).toBe(1);
    expect(await section.locator('.verdict .remedy').textContent()).toMatch(/\w/);

    await section.getByLabel('Go through').selectOption('poorestFirst');
    await section.getByRole('heading', { name: /^Frame \d+: used$/ }).waitFor();
    await section.getByRole('img', { name: /^Frame \d+ around the ball/ }).waitFor();
    const before = await speedOf(page);
    await section.getByRole('button', { name: 'Correct the centre' }).click();
    const handle = section.getByRole('slider', { name: /^Ball centre in frame/ });
    await handle.focus();
    const xNow = async () => Number(await handle.getAttribute('aria-valuenow'));
    const x = await xNow();
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('ArrowRight');
    expect(await xNow()).toBeCloseTo(x + 1.1, 1);
    await section.getByText(/^Exit velocity/).waitFor();
    await expect
      .poll(() => section.getByText(/^Exit velocity/).textContent())
      .toMatch(/\d+\.\d+ → \d+\.\d+ m\/s, [+−]\d/);
    await section.getByRole('heading', { name: /placed by hand$/ }).waitFor();
    const change = await section.getByText(/^Exit velocity/).textContent();
    const [, from, to] = /([\d.]+) → ([\d.]+) m\/s/.exec(change ?? '') ?? [];
    // The change may need more figures than the speed itself.
    expect(Math.abs(Number(from) - Number.parseFloat(before))).toBeLessThan(0.006);
    expect(to).not.toBe(from);
    expect(Math.abs(Number(to) - Number.parseFloat(await speedOf(page)))).toBeLessThan(0.006);

    await section.getByRole('button', { name: /^Undo: centre in frame/ }).click();
    await section.getByRole('heading', { name: /^Frame \d+: used$/ }).waitFor();
    expect(await speedOf(page)).toBe(before);
    expect(foreign(tool)).toEqual([]);
    expect(tool.errors).toEqual([]);
  });

  it('keeps a measured film when measuring it again is cancelled: edits need no film', async () => {
    await using tool = await openTool();
    const { page } = tool;
    await measureFirst(page);
    await page.getByRole('button', { name: 'Measure again' }).click();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('button', { name: 'Measure again' }).waitFor();
    const section = page.getByRole('region', { name: 'Frame by frame' });
    await section.getByRole('heading', { name: /^Frame \d+: used$/ }).waitFor();
    const used = await page.locator('[data-step=ball] .step-figure').textContent();
    await section.getByRole('button', { name: 'Reject this frame' }).click();
    await section.getByRole('heading', { name: /^Frame \d+: left out$/ }).waitFor();
    await expect
      .poll(() => page.locator('[data-step=ball] .step-figure').textContent())
      .toBe(`${Number(used?.split(' ')[0]) - 1} frames used`);
    const outdated = page.getByText('Inputs changed after the result');
    expect(await outdated.count()).toBe(0);

    // Where the ball is said to be decides what is measured: that does need the film.
    await page.getByRole('button', { name: 'Show where the ball is' }).click();
    await page
      .getByRole('group', { name: 'Film', exact: true })
      .click({ position: { x: 500, y: 100 } });
    await outdated.waitFor();
    await page.getByRole('button', { name: /^Remove the place in frame/ }).click();
    await outdated.waitFor({ state: 'detached' });
    expect(tool.errors).toEqual([]);
  });
});
