import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { chromiumLaunch } from '../../scripts/chromium.mjs';
import { longestTask } from './mainThread';
import { wideClips } from './pipeline/clips';
import { openUnwatched } from './unwatched';

const RUNS = 3;
/** In which the page has drawn what was found, and had it kept. */
const KEPT_WITHIN_MS = 1500;
const SHOWS_A_FRAME = `document.querySelector('.frame-slider') !== null`;
/** The button, which a way to cancel takes the place of. */
const MEASURE = `document.querySelector('button.measure')`;

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
    const page = await openUnwatched(browser, server.resolvedUrls?.local[0] ?? '');
    await page.until(SHOWS_A_FRAME, 60_000);
    await page.setFiles('input[data-role=files]', [resolve(clip.path), shot]);
    await page.until(`document.body.textContent.includes(' of ${basename(clip.path)}')`, 60_000);
    await page.evaluate(`document.querySelector('[data-step=ball]').click()`);
    await page.until(`${MEASURE} !== null`, 10_000);
    const cdp = await browser.newBrowserCDPSession();
    for (let run = 0; run < RUNS; run++) {
      const { found, wall, core } = await longestTask(cdp, async () => {
        const begun = performance.now();
        await page.evaluate(`${MEASURE}.click()`);
        await page.until(`${MEASURE} === null`, 10_000);
        await page.until(`${MEASURE} !== null`, 300_000);
        const took = (performance.now() - begun) / 1000;
        await pause(KEPT_WITHIN_MS);
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
