import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { writeServiceWorker } from '../../scripts/offline';
import { staticHost } from './staticHost';
import { foreign, openTool } from './tool';

const SUB_PATH = '/some/deep/path/';
/** Not the one the tool starts on. Motion-JPEG in AVI, which the browser does not decode: WebAssembly has to. */
const SAMPLE = 'sample-clips/d-mjpeg';
const json = (path: string) => JSON.parse(readFileSync(path, 'utf8'));

const kept = (page: Page) =>
  page.locator('[data-role=offline][data-state=kept]').waitFor({ timeout: 200_000 });
const caches = (page: Page) =>
  page.evaluate(async () => (await window.caches.keys()).filter((n) => n.startsWith('exitframe')));

it('measures a sample from a deep path, without isolation, network and server, after one visit', async () => {
  const host = await staticHost('dist', SUB_PATH);
  await using tool = await openTool({ serviceWorkers: 'allow' }, host.address);
  const { page } = tool;
  await kept(page);
  await host.close();
  await page.context().setOffline(true);
  await page.reload();
  const { name } = json(`${SAMPLE}/d-mjpeg.shot.json`);
  await page.getByRole('button', { name, exact: true }).click({ timeout: 60_000 });
  await page.getByText('Frame 0 of clip.avi').waitFor({ state: 'attached', timeout: 120_000 });
  // One thread a decoder: nothing may need memory shared between threads.
  expect(await page.evaluate(() => window.crossOriginIsolated)).toBe(false);
  await page.locator('[data-step=ball]').click();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('button', { name: 'Next: Result' }).click({ timeout: 400_000 });
  const words = (await page.locator('[data-role=exit-velocity]').textContent()) ?? '';
  const speed = Number(/([\d.]+) ±/.exec(words)?.[1]);
  const { exitVelocity } = json(`${SAMPLE}/truth.json`);
  expect(Math.abs(speed / exitVelocity - 1)).toBeLessThan(0.01);
  expect(tool.errors).toEqual([]);
  expect(foreign(tool)).toEqual([]);
  // Nor is anything asked of the origin outside the tool's own folder.
  const asked = tool.requests.filter((url) => url.startsWith('http'));
  expect(asked.length).toBeGreaterThan(10);
  expect(asked.filter((url) => !url.startsWith(host.address))).toEqual([]);
}, 900_000);

describe('a new version', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'build-'));
    cpSync('dist', folder, { recursive: true });
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  it('is offered, leaves the work alone until it is taken, and leaves no old files', async () => {
    const host = await staticHost(folder, SUB_PATH);
    try {
      await using tool = await openTool({ serviceWorkers: 'allow' }, host.address);
      const { page } = tool;
      await kept(page);
      const [first] = await caches(page);
      await page.locator('[data-step=clock]').click();
      await page.getByLabel('Recording rate').first().fill('11000');
      await page.keyboard.press('Enter');

      const html = readFileSync(join(folder, 'index.html'), 'utf8');
      writeFileSync(
        join(folder, 'index.html'),
        html.replace('<title>exitframe', '<title>newer exitframe'),
      );
      await writeServiceWorker(folder);
      await page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()));
      const offer = page.getByRole('button', { name: 'Reload as the new version' });
      await offer.waitFor({ timeout: 120_000 });
      expect(await page.title()).toBe('exitframe');
      // A reload alone does not swap it either.
      await page.reload();
      expect(await page.title()).toBe('exitframe');
      await offer.click({ timeout: 60_000 });
      await page.waitForFunction(() => document.title === 'newer exitframe', null, {
        timeout: 60_000,
      });
      await expect
        .poll(() => page.locator('[data-step=clock] .step-figure').textContent(), {
          timeout: 60_000,
        })
        .toMatch(/^11\s000 \/s$/);
      await expect.poll(() => caches(page), { timeout: 30_000 }).toHaveLength(1);
      expect(await caches(page)).not.toContain(first);
      expect(tool.errors).toEqual([]);
    } finally {
      await host.close();
    }
  }, 500_000);

  it('is refused where the server holds a file that is not as built', async () => {
    writeFileSync(join(folder, 'icon.svg'), '<svg/>');
    const host = await staticHost(folder, SUB_PATH);
    try {
      await using tool = await openTool({ serviceWorkers: 'allow' }, host.address);
      const state = tool.page.locator('[data-role=offline][data-state=failed]');
      await state.waitFor({ timeout: 200_000 });
    } finally {
      await host.close();
    }
  }, 300_000);
});
