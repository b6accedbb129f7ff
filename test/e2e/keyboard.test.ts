import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { firstShown, openTool } from './tool';

const truth = JSON.parse(readFileSync('sample-clips/a-clean/truth.json', 'utf8')) as {
  exitVelocity: number;
};
/** More stops than any way on the page has. */
const MOST_STOPS = 150;
/** Nudges of an arrow, px: with Shift and alone. */
const NUDGES = [
  { held: 'Shift+', step: 1 },
  { held: '', step: 0.1 },
] as const;

/** Presses Tab until the focus is on what has this role and name, and checks that the focus can be seen. */
async function tabTo(page: Page, role: string, name: RegExp): Promise<void> {
  for (let i = 0; i < MOST_STOPS; i++) {
    const found = page.getByRole(role as 'button', { name }).first();
    if (
      (await found.count()) > 0 &&
      (await found.evaluate((it) => it === document.activeElement))
    ) {
      // A ring around it, or drawn inside it on the film.
      const ring = await found.evaluate((it) => [
        getComputedStyle(it).outlineStyle,
        getComputedStyle(it, '::after').borderTopStyle,
      ]);
      expect(ring, `focus on ${name}`).toContain('solid');
      return;
    }
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab does not reach the ${role} ${name}.`);
}

async function press(page: Page, name: RegExp): Promise<void> {
  await tabTo(page, 'button', name);
  await page.keyboard.press('Enter');
}

async function type(page: Page, name: RegExp, text: string): Promise<void> {
  await tabTo(page, 'textbox', name);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** Moves a handle of the film to an image point by its arrow keys. */
async function moveHandle(page: Page, name: RegExp, to: readonly [number, number]): Promise<void> {
  await tabTo(page, 'slider', name);
  const handle = page.getByRole('slider', { name }).first();
  const place = async () => {
    const text = (await handle.getAttribute('aria-valuetext')) ?? '';
    return (text.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
  };
  for (const { held, step } of NUDGES) {
    const at = await place();
    for (const [axis, [less, more]] of [
      [0, ['ArrowLeft', 'ArrowRight']],
      [1, ['ArrowUp', 'ArrowDown']],
    ] as const) {
      const off = (to[axis] as number) - (at[axis] ?? 0);
      const times = Math.trunc(off / step + 1e-6 * Math.sign(off));
      for (let i = 0; i < Math.abs(times); i++) {
        await page.keyboard.press(`${held}${times > 0 ? more : less}`);
      }
    }
  }
  const [x, y] = await place();
  expect(Math.hypot((x ?? 0) - to[0], (y ?? 0) - to[1])).toBeLessThan(0.2);
}

it('leads from a bare clip to its speed by the keyboard alone', async () => {
  await using tool = await openTool();
  const { page } = tool;
  await firstShown(page);
  await press(page, /^Close cautions$/);
  // The dialogue that the file comes from is the browser's.
  await page.locator('input[data-role=files]').setInputFiles('sample-clips/a-clean/clip.mp4');
  await page.getByText('The recording rate is not known yet.').waitFor();

  await press(page, /^Next: Clock$/);
  await type(page, /^Recording rate$/, '12000');
  await type(page, /^Exposure$/, '20 us');

  await press(page, /^Next: Scale$/);
  await press(page, /^Draw a known length$/);
  await moveHandle(page, /^Known length 1, first end$/, [258.3, 222]);
  await moveHandle(page, /^Known length 1, second end$/, [861.3, 222]);
  await type(page, /^Distance between the marks$/, '200 mm');
  await type(page, /^Camera distance$/, '1.5 m');
  await press(page, /^Mark it on the film$/);
  await moveHandle(page, /^Point on the muzzle plane$/, [199.7, 107.9]);

  await press(page, /^Next: Ball$/);
  await press(page, /^Measure$/);
  await page.getByRole('button', { name: 'Next: Result' }).waitFor({ timeout: 120_000 });
  await press(page, /^Next: Result$/);
  const text = (await page.locator('[data-role=exit-velocity]').textContent()) ?? '';
  const [, value, half] = /v = ([\d.]+) ± ([\d.]+) m\/s/.exec(text) ?? [];
  expect(Math.abs(Number(value) / truth.exitVelocity - 1)).toBeLessThan(0.01);
  expect(Math.abs(Number(value) - truth.exitVelocity)).toBeLessThan(Number(half));
  expect(tool.errors).toEqual([]);
});
