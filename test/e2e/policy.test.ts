import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { text } from 'node:stream/consumers';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { preview } from 'vite';
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
/** What the saved report says of itself, and whatever it asks for. */
const OWN_POLICY = /<meta http-equiv="Content-Security-Policy" content="([^"]*)">/;

/**
 * The build served with its policy, whose violations the browser reports to the server: those of threads too, and from
 * the first line of their scripts on.
 */
async function reportingHost() {
  const refused: string[] = [];
  const policy = HEADERS['Content-Security-Policy'];
  const server = await preview({
    preview: {
      port: 0,
      headers: { ...HEADERS, 'Content-Security-Policy': `${policy}; report-uri /refused` },
    },
    logLevel: 'warn',
    plugins: [
      {
        name: 'refused',
        configurePreviewServer: ({ middlewares }) => {
          middlewares.use('/refused', async (request, response) => {
            const { 'csp-report': told } = JSON.parse(await text(request));
            const where = basename(new URL(told['document-uri']).pathname) || 'page';
            refused.push(`${where}: ${told['effective-directive']} ${told['blocked-uri']}`);
            response.writeHead(204).end();
          });
        },
      },
    ],
  });
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new Error('The server gave no local address.');
  return { address, refused, [Symbol.asyncDispose]: () => server.close() };
}

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
  await using host = await reportingHost();
  await using tool = await openTool({}, host.address);
  const { page } = tool;
  // Without the dialog of the system files are downloaded.
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
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
  expect(OWN_POLICY.exec(saved)?.[1]).toMatch(/^default-src 'none'; /);
  expect(saved).not.toContain('<script');
  // Without the saved page's own policy, which would hide it: the markup must not even be there.
  const bare = saved.replace(OWN_POLICY, '');
  expect(bare).not.toBe(saved);
  const reader = await page.context().newPage();
  const file = join(mkdtempSync(join(tmpdir(), 'hostile-')), 'report.html');
  writeFileSync(file, bare);
  const asked: string[] = [];
  reader.on('request', (request) => asked.push(request.url()));
  await reader.goto(pathToFileURL(file).href);
  expect(await reader.locator('.report-title').textContent()).toContain(MARKUP);
  expect(await reader.locator('body').textContent()).toContain(FILM);
  expect(await madeOfMarkup(reader)).toBe(0);
  expect(await reader.title()).not.toBe('broken');
  expect(asked.filter((url) => !url.startsWith('data:'))).toEqual([pathToFileURL(file).href]);
  await reader.close();

  expect(await page.title()).not.toBe('broken');
  expect(host.refused).toEqual([]);
  expect(foreign(tool).filter((url) => !url.startsWith('file:'))).toEqual([]);
  expect(tool.errors).toEqual([]);

  // The policy bites in page and threads, and the watch is awake.
  const ran = await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.ran = true';
    document.head.append(script);
    return 'ran' in window;
  });
  expect(ran).toBe(false);
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
  await expect
    .poll(() => host.refused, { timeout: 20_000 })
    .toEqual([
      'page: script-src-elem inline',
      expect.stringMatching(/^measure\.worker.*\.js: script-src eval$/),
    ]);
}, 700_000);
