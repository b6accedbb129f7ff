import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { preview } from 'vite';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { writeServiceWorker } from '../../scripts/offline';
import { headersOf, PAGE_POLICY } from '../../scripts/policy';
import { staticHost } from './staticHost';
import { foreign, type OpenTool, openTool } from './tool';

const SUB_PATH = '/some/sub/path/';
const truth = JSON.parse(readFileSync('sample-clips/a-clean/truth.json', 'utf8')) as {
  exitVelocity: number;
};

const kept = (page: Page) =>
  page.locator('[data-role=offline][data-state=kept]').waitFor({ timeout: 120_000 });
const caches = (page: Page) =>
  page.evaluate(async () => (await window.caches.keys()).filter((n) => n.startsWith('exitframe')));

/** Reduces the clip that is open and holds its speed against the truth. */
async function reduces({ page, errors }: OpenTool): Promise<void> {
  await page.getByText('Frame 0 of clip.mp4').waitFor({ state: 'attached', timeout: 60_000 });
  await page.locator('[data-step=ball]').click();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('button', { name: 'Next: Result' }).click({ timeout: 400_000 });
  const words = (await page.locator('[data-role=exit-velocity]').textContent()) ?? '';
  const speed = Number(/([\d.]+) ±/.exec(words)?.[1]);
  expect(Math.abs(speed / truth.exitVelocity - 1)).toBeLessThan(0.01);
  expect(errors).toEqual([]);
}

it('measures without a network and without its server, from a sub-path, after one visit', async () => {
  const host = await staticHost('dist', SUB_PATH);
  await using tool = await openTool({}, host.address);
  const { page } = tool;
  await kept(page);
  await host.close();
  await page.context().setOffline(true);
  await page.reload();
  expect(await page.evaluate(() => window.crossOriginIsolated)).toBe(false);
  await reduces(tool);
  expect(foreign(tool)).toEqual([]);
  expect(
    tool.requests.every((url) => !url.startsWith('http') || url.startsWith(host.address)),
  ).toBe(true);
}, 700_000);

it('is isolated by its own server and breaks no rule of its policy while it reduces a clip', async () => {
  const server = await preview({ preview: { port: 0 }, logLevel: 'warn' });
  const address = server.resolvedUrls?.local[0] ?? '';
  try {
    await using tool = await openTool({}, address);
    const { page } = tool;
    await page.evaluate(() => {
      const broken: string[] = [];
      Object.assign(window, { broken });
      document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) =>
        broken.push(`${violatedDirective} ${blockedURI}`),
      );
    });
    expect(await page.evaluate(() => window.crossOriginIsolated)).toBe(true);
    const meta = page.locator('meta[http-equiv=Content-Security-Policy]');
    expect(await meta.getAttribute('content')).toBe(PAGE_POLICY);
    const response = await page.request.get(address);
    for (const [name, value] of Object.entries(headersOf('/'))) {
      expect(response.headers()[name.toLowerCase()]).toBe(value);
    }
    // The policy bites: a script in the page is not run.
    await reduces(tool);
    expect(await page.evaluate(() => (window as unknown as { broken: string[] }).broken)).toEqual(
      [],
    );
    expect(foreign(tool)).toEqual([]);
    const ran = await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'window.ran = true';
      document.head.append(script);
      return 'ran' in window;
    });
    expect(ran).toBe(false);
  } finally {
    await server.close();
  }
}, 700_000);

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
      await using tool = await openTool({}, host.address);
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
      await offer.waitFor({ timeout: 60_000 });
      expect(await page.title()).toBe('exitframe');
      // A reload alone does not swap it either.
      await page.reload();
      expect(await page.title()).toBe('exitframe');
      await offer.click();
      await page.waitForFunction(() => document.title === 'newer exitframe');
      await expect
        .poll(() => page.locator('[data-step=clock] .step-figure').textContent(), {
          timeout: 30_000,
        })
        .toMatch(/^11\s000 \/s$/);
      await expect.poll(() => caches(page), { timeout: 10_000 }).toHaveLength(1);
      expect(await caches(page)).not.toContain(first);
      expect(tool.errors).toEqual([]);
    } finally {
      await host.close();
    }
  }, 300_000);

  it('is refused where the server holds a file that is not as built', async () => {
    writeFileSync(join(folder, 'icon.svg'), '<svg/>');
    const host = await staticHost(folder, SUB_PATH);
    try {
      await using tool = await openTool({}, host.address);
      const state = tool.page.locator('[data-role=offline][data-state=failed]');
      await state.waitFor({ timeout: 120_000 });
    } finally {
      await host.close();
    }
  }, 200_000);
});
