import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { HEADERS, POLICY } from '../../scripts/policy';
import { foreign, openTool } from './tool';

const SAMPLE = 'sample-clips/a-clean';
/** Runs if anything takes it for markup. */
const MARKUP = '<img src=x onerror=document.title="broken">';
const FILM = `${MARKUP}.mp4`;

/** Sample a as files a person might be sent, with markup wherever a text may stand. */
function hostileFiles() {
  const shot = JSON.parse(readFileSync(`${SAMPLE}/a-clean.shot.json`, 'utf8'));
  shot.name = MARKUP;
  shot.notes = MARKUP;
  shot.footage.path = FILM;
  return [
    {
      name: 'hostile.shot.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(shot)),
    },
    { name: FILM, mimeType: 'video/mp4', buffer: readFileSync(`${SAMPLE}/clip.mp4`) },
  ];
}

const madeOfMarkup = (page: Page) => page.locator('img[src=x], [onerror]').count();
const broken = (page: Page) =>
  page.evaluate(() => (window as unknown as { broken: string[] }).broken);

it('is served isolated, with its policy in headers and page', async () => {
  await using tool = await openTool();
  const { page, address } = tool;
  const response = await page.request.get(address);
  for (const [name, value] of Object.entries(HEADERS)) {
    expect(response.headers()[name.toLowerCase()]).toBe(value);
  }
  expect(await page.evaluate(() => window.crossOriginIsolated)).toBe(true);
  const meta = page.locator('meta[http-equiv=Content-Security-Policy]');
  expect(await meta.getAttribute('content')).toBe(POLICY);
  // Of scripts, the tool's own files and WebAssembly, and nothing else.
  const scripts = POLICY.split('; ').filter((rule) => rule.startsWith('script-src'));
  expect(scripts).toEqual(["script-src 'self' 'wasm-unsafe-eval'"]);
});

it('breaks no rule of its policy from film to report, and shows markup in names as text', async () => {
  await using tool = await openTool();
  const { page } = tool;
  await page.addInitScript(() => {
    // Without the dialog of the system files are downloaded.
    Reflect.deleteProperty(window, 'showSaveFilePicker');
    const list: string[] = [];
    Object.assign(window, { broken: list });
    document.addEventListener('securitypolicyviolation', (event) =>
      list.push(`${event.violatedDirective} ${event.blockedURI} ${event.sourceFile}`),
    );
  });
  await page.reload();
  await page.getByText(/^Frame \d+ of clip\.mp4/).waitFor({ state: 'attached', timeout: 60_000 });

  await page.locator('input[type=file]').first().setInputFiles(hostileFiles());
  await page.getByText(`Frame 0 of ${FILM}`).waitFor({ state: 'attached', timeout: 60_000 });
  expect(await page.getByRole('banner').textContent()).toContain(MARKUP);
  await page.locator('[data-step=ball]').click();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('button', { name: 'Measure again' }).waitFor({ timeout: 400_000 });
  await page.locator('[data-step=result]').click();
  await page.getByRole('button', { name: 'Report…' }).click();
  await page.getByRole('button', { name: 'Full report' }).click();
  await page.locator('.flight-picture').waitFor({ timeout: 60_000 });
  expect(await madeOfMarkup(page)).toBe(0);

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as web page…', exact: true }).first().click(),
  ]);
  const saved = readFileSync(await download.path(), 'utf8');
  expect(saved).not.toContain('<img');
  expect(saved).toContain('&lt;img src=x');
  // Without the saved page's own policy, which would hide it: the markup must not even be there.
  const bare = saved.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, '');
  expect(bare).not.toBe(saved);
  const reader = await page.context().newPage();
  await reader.setContent(bare);
  expect(await reader.locator('.report-title').textContent()).toContain(MARKUP);
  expect(await reader.locator('body').textContent()).toContain(FILM);
  expect(await madeOfMarkup(reader)).toBe(0);
  expect(await reader.title()).not.toBe('broken');
  await reader.close();

  expect(await page.title()).not.toBe('broken');
  expect(await broken(page)).toEqual([]);
  expect(foreign(tool)).toEqual([]);
  expect(tool.errors).toEqual([]);

  // The policy bites in page and threads, and the watch is awake.
  const ran = await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.ran = true';
    document.head.append(script);
    return 'ran' in window;
  });
  expect(ran).toBe(false);
  await expect
    .poll(() => broken(page))
    .toContainEqual(expect.stringContaining('script-src-elem inline'));
  const thread = page.workers().find((one) => one.url().includes('measure.worker'));
  const made = await thread?.evaluate(
    () =>
      // Past this call, which the browser's tools make exempt from the policy.
      new Promise((resolve) => {
        setTimeout(() => {
          try {
            resolve(new Function('return "made"')());
          } catch {
            resolve('refused');
          }
        });
      }),
  );
  expect(made).toBe('refused');
}, 700_000);
