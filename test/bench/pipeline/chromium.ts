import { chromium, type Page } from 'playwright-core';
import { build, type InlineConfig, preview } from 'vite';
import { chromiumLaunch } from '../../../scripts/chromium.mjs';
import { noEval } from '../../../scripts/noEval';
import type { PipelinePage } from './timings';

const ROOT = 'test/bench/pipeline/threads';
const OUT = 'node_modules/.cache/bench/page';

/** Builds the bench's page as the tool is built and opens it in Chromium. */
export async function openBenchPage(): Promise<{
  readonly page: Page;
  /** Of the browser. */
  readonly pid: number;
  close(): Promise<void>;
}> {
  const config: InlineConfig = {
    configFile: false,
    root: ROOT,
    base: './',
    plugins: [noEval()],
    worker: { format: 'es', plugins: () => [noEval()] },
    build: {
      outDir: `${process.cwd()}/${OUT}`,
      emptyOutDir: true,
      target: 'es2022',
      chunkSizeWarningLimit: 12_000,
      assetsInlineLimit: 0,
    },
    preview: { port: 0 },
    logLevel: 'error',
  };
  await build(config);
  const server = await preview(config);
  const browser = await chromium.launchServer(chromiumLaunch());
  const page = await (await chromium.connect(browser.wsEndpoint())).newPage();
  page.on('pageerror', (error) => process.stderr.write(`${error.message}\n`));
  await page.goto(server.resolvedUrls?.local[0] ?? '');
  return {
    page,
    pid: browser.process().pid ?? 0,
    async close() {
      await browser.close();
      await server.close();
    },
  };
}

/** Opens a clip in the page; what it is asked afterwards is of this clip. */
export async function openClip(
  page: Page,
  path: string,
): Promise<Awaited<ReturnType<PipelinePage['open']>>> {
  await page.locator('input').setInputFiles(path);
  return page.evaluate(() => window.pipeline.open());
}

declare global {
  interface Window {
    readonly pipeline: PipelinePage;
  }
}
