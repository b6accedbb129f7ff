import { type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { inject } from 'vitest';
import { chromiumLaunch } from '../../scripts/chromium.mjs';

/** The tool open in a browser, and what it did that a person would not see. */
export interface OpenTool extends AsyncDisposable {
  readonly page: Page;
  /** Address of the page. */
  readonly address: string;
  /** Error lines of the console and errors that nothing caught. */
  readonly errors: readonly string[];
  /** Every address asked for, by the page or its workers. */
  readonly requests: readonly string[];
}

/** Opens the built tool in a browser of its own, nothing stored. Close it with `await using`. */
export async function openTool(
  options: BrowserContextOptions = {},
  address: string = inject('toolAddress'),
): Promise<OpenTool> {
  const browser = await chromium.launch(chromiumLaunch());
  try {
    const context = await browser.newContext({
      viewport: { width: 1280, height: 800 },
      ...options,
    });
    // Keeping all files takes a while; what is kept has tests of its own.
    if (options.serviceWorkers !== 'allow') {
      await context.addInitScript(() =>
        Reflect.deleteProperty(Navigator.prototype, 'serviceWorker'),
      );
    }
    const errors: string[] = [];
    const requests: string[] = [];
    context.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
    context.on('weberror', (error) => errors.push(error.error().message));
    context.on('request', (request) => requests.push(request.url()));
    const page = await context.newPage();
    await page.goto(address);
    return { page, address, errors, requests, [Symbol.asyncDispose]: () => browser.close() };
  } catch (error) {
    await browser.close();
    throw error;
  }
}

/** Waits for the sample that the page begins with: it stands at a frame with the ball in view. */
export const firstShown = (page: Page): Promise<void> =>
  page.getByText(/^Frame [1-9]\d* of clip\.mp4/).waitFor({ state: 'attached' });

/** Opens the first sample afresh: the page begins with it measured already. */
export async function openFirstAfresh(page: Page): Promise<void> {
  await firstShown(page);
  await page.getByRole('button', { name: '2031-04-17 A', exact: true }).click();
  await page.locator('[data-step=ball]', { hasText: 'not measured' }).waitFor();
}

/** Opens the first sample afresh, and measures it. */
export async function measureFirst(page: Page): Promise<void> {
  await openFirstAfresh(page);
  await page.locator('[data-step=ball]').click();
  await page.getByRole('heading', { level: 2, name: 'Ball', exact: true }).waitFor();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('button', { name: 'Measure again' }).waitFor({ timeout: 120_000 });
}

/** Addresses outside the tool's own origin; inline data and objects made by the page are its own. */
export const foreign = ({ requests, address }: OpenTool): string[] =>
  requests.filter((url) => {
    const { protocol, origin } = new URL(url);
    return protocol !== 'data:' && origin !== new URL(address).origin;
  });
