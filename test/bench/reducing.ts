import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { chromiumLaunch } from '../../scripts/chromium.mjs';
import { longestTask } from './mainThread';
import { wideClips } from './pipeline/clips';

const RUNS = 3;
/** In which the page has drawn what was found, and had it kept. */
const KEPT_WITHIN_MS = 1500;

/**
 * `npm run bench -- reducing`: the longest task of the main thread while the built tool measures a film of 1280 x 256 x
 * 2000, by the browser's own trace. Needs the pipeline bench's film, and so a native ffmpeg once.
 */
export async function reducing(say: (line: string) => void): Promise<void> {
  const [clip] = await wideClips();
  if (clip === undefined) throw new Error('There is no film to measure.');
  const shot = join(mkdtempSync(join(tmpdir(), 'reducing-')), 'wide.shot.json');
  writeFileSync(shot, JSON.stringify(clip.shot));
  const server = await preview({ preview: { port: 0 }, logLevel: 'warn' });
  const browser = await chromium.launch(chromiumLaunch());
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await page.goto(server.resolvedUrls?.local[0] ?? '');
    await page.locator('input[type=file]').first().setInputFiles([clip.path, shot]);
    await page
      .getByText(` of ${basename(clip.path)}`)
      .first()
      .waitFor({ state: 'attached' });
    await page.locator('[data-step=ball]').click();
    const cdp = await page.context().newCDPSession(page);
    for (let run = 0; run < RUNS; run++) {
      const { found, wall, core } = await longestTask(cdp, async () => {
        const begun = performance.now();
        await page
          .getByRole('button', { name: run === 0 ? 'Measure' : 'Measure again', exact: true })
          .click();
        await page.getByRole('button', { name: 'Cancel' }).first().waitFor();
        await page.getByRole('button', { name: 'Measure again' }).waitFor({ timeout: 300_000 });
        const took = (performance.now() - begun) / 1000;
        await page.waitForTimeout(KEPT_WITHIN_MS);
        return took;
      });
      say(
        `run ${run + 1}: measured in ${found.toFixed(1)} s; longest main-thread task ${wall.toFixed(1)} ms, of core time ${core.toFixed(1)} ms`,
      );
    }
  } finally {
    await browser.close();
    await server.close();
  }
}
