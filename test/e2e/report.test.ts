import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Download, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { foreign, measureFirst, openTool } from './tool';

/** CSS px to points of a PDF. */
const POINTS = 72 / 96;
/** Sheets of paper, mm (ISO 216; ANSI/ASME Y14.1), and points in one. */
const PAPERS = { A4: [210, 297], Letter: [215.9, 279.4] } as const;
const POINTS_PER_MM = 72 / 25.4;

/** Sizes of a PDF's pages, points: Chromium writes page objects in the open. */
function pagesOf(pdf: Buffer): (readonly [number, number])[] {
  const text = pdf.toString('latin1');
  return [...text.matchAll(/\/Type\s*\/Page\b(?!s)[\s\S]*?\/MediaBox\s*\[([^\]]+)\]/g)].map(
    (match) => {
      const [, , width = 0, height = 0] = (match[1] ?? '').trim().split(/\s+/).map(Number);
      return [width, height] as const;
    },
  );
}

async function measure(page: Page): Promise<void> {
  await measureFirst(page);
  await page.locator('[data-step=result]').click();
  await page.getByRole('button', { name: 'Report…' }).click();
  await page.locator('.key-frame').first().waitFor();
}

async function saved(page: Page, button: string): Promise<Download> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button, exact: true }).first().click(),
  ]);
  return download;
}

describe('the report of sample a', () => {
  it('is printed on A4 and Letter, and opens from a file with the network off', async () => {
    await using tool = await openTool();
    const { page } = tool;
    // Without the dialog of the system files are downloaded.
    await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
    await page.reload();
    await measure(page);

    for (const extent of ['One page', 'Full report']) {
      await page.getByRole('button', { name: extent }).click();
      if (extent === 'Full report') await page.locator('.flight-picture').waitFor();
      for (const [format, [widthMm, heightMm]] of Object.entries(PAPERS)) {
        const pages = pagesOf(await page.pdf({ format }));
        if (extent === 'One page') expect(pages).toHaveLength(1);
        else {
          expect(pages.length).toBeGreaterThan(5);
          expect(pages.length).toBeLessThan(15);
        }
        for (const [width, height] of pages) {
          expect(Math.abs(width - widthMm * POINTS_PER_MM)).toBeLessThan(1);
          expect(Math.abs(height - heightMm * POINTS_PER_MM)).toBeLessThan(1);
        }
      }
    }

    // On paper nothing runs over the sheet's edge, whatever the window's width.
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const [paperWidth] = PAPERS.A4;
    const column = Math.round(((paperWidth - 30) * POINTS_PER_MM) / POINTS);
    await page.setViewportSize({ width: column, height: 900 });
    const beyond = await page.evaluate(
      (edge) =>
        [...document.querySelectorAll('.report-sheet *')]
          .filter((one) => one.closest('.hidden-text, svg') === null)
          .filter((one) => one.getBoundingClientRect().right > edge + 1)
          .map((one) => one.className),
      column,
    );
    expect(beyond).toEqual([]);
    // Light, also where the screen is dark.
    const ink = await page.locator('.report-title').evaluate((one) => getComputedStyle(one).color);
    expect(ink).toBe('rgb(27, 27, 27)');
    await page.emulateMedia({ media: null, colorScheme: null });
    await page.setViewportSize({ width: 1280, height: 800 });

    const folder = mkdtempSync(join(tmpdir(), 'report-'));
    const file = join(folder, 'report.html');
    await (await saved(page, 'Save as web page…')).saveAs(file);
    const statement = await page.locator('[data-role=quotable]').textContent();
    expect(statement).toMatch(/left the muzzle at 17\d\.\d\d m\/s, with a standard uncertainty/);

    const context = page.context();
    await context.setOffline(true);
    const alone = await context.newPage();
    const asked: string[] = [];
    alone.on('request', (request) => asked.push(request.url()));
    await alone.goto(pathToFileURL(file).href);
    expect(await alone.locator('[data-role=quotable]').textContent()).toBe(statement);
    expect(await alone.locator('svg.plot-chart').count()).toBeGreaterThan(5);
    // Pictures are read: a picture that is not has no size of its own.
    const sizes = await alone.evaluate(() =>
      Promise.all(
        [...document.querySelectorAll('image')].map(async (one) => {
          const picture = new Image();
          picture.src = one.getAttribute('href') ?? '';
          await picture.decode();
          return picture.naturalWidth;
        }),
      ),
    );
    // Three key frames and the whole flight.
    expect(sizes).toHaveLength(4);
    for (const size of sizes) expect(size).toBeGreaterThan(50);
    // The styles are in it too.
    const weight = await alone
      .locator('.report-title')
      .evaluate((one) => getComputedStyle(one).fontWeight);
    expect(weight).toBe('600');
    expect(asked.filter((url) => !url.startsWith('data:'))).toEqual([pathToFileURL(file).href]);

    // A narrow screen shows it without scrolling sideways.
    await alone.setViewportSize({ width: 390, height: 800 });
    const overflow = await alone.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(overflow).toBeLessThanOrEqual(0);
    expect(foreign(tool).filter((url) => !url.startsWith('file:'))).toEqual([]);
    expect(tool.errors).toEqual([]);
  });
});
