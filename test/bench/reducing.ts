import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { chromiumLaunch } from '../../scripts/chromium.mjs';
import { longestTask } from './mainThread';
import { goToMeasure, measure, openFilm, showsFilm } from './measuring';
import { wideClips } from './pipeline/clips';
import { openUnwatched } from './unwatched';

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
    const page = await openUnwatched(browser, server.resolvedUrls?.local[0] ?? '');
    await showsFilm(page, 'clip.mp4', 120_000);
    await openFilm(page, clip.path, shot);
    await goToMeasure(page);
    const cdp = await browser.newBrowserCDPSession();
    for (let run = 0; run < RUNS; run++) {
      const { found, wall, core } = await longestTask(cdp, async () => {
        const begun = performance.now();
        await measure(page);
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
