import { chromium, type Page } from 'playwright-core';
import { preview } from 'vite';
import { chromiumLaunch } from '../../scripts/chromium.mjs';
import { longestTask } from './mainThread';
import { makeScrubClip } from './scrubClip';

const FRAMES = 600;
/** Film frames gone on by with every picture of the screen: step by step, quickly, and by leaps. */
const STRIDES = [1, 7, 97] as const;
const SECONDS = 5;

/** Counts pictures of the film painted; the page itself is left as it is. */
const countPaints = `
  window.paintedAt = [];
  const put = CanvasRenderingContext2D.prototype.putImageData;
  CanvasRenderingContext2D.prototype.putImageData = function (image, ...rest) {
    if (image.width === 1280 && image.height === 256) window.paintedAt.push(performance.now());
    return put.call(this, image, ...rest);
  };`;

/** Drags the frame slider to and fro with every picture of the screen. */
const dragFor = (stride: number) => `new Promise((done) => {
  const slider = document.querySelector('.frame-slider');
  const last = Number(slider.max);
  window.paintedAt.length = 0;
  const begun = performance.now();
  let asked = 0, at = 0, way = 1;
  const step = (now) => {
    if (now - begun > ${SECONDS * 1000}) {
      const seconds = (performance.now() - begun) / 1000;
      return done({ asked: asked / seconds, shown: window.paintedAt.length / seconds });
    }
    if (at + way * ${stride} > last || at + way * ${stride} < 0) way = -way;
    at += way * ${stride};
    slider.value = String(at);
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    asked += 1;
    requestAnimationFrame(step);
  };
  requestAnimationFrame(step);
})`;

/** `npm run bench -- scrub`: frames shown a second while the slider is dragged over a 1280 x 256 film in the built tool. */
export async function scrub(say: (line: string) => void): Promise<void> {
  const clip = await makeScrubClip(FRAMES);
  const address = process.env.TOOL_ADDRESS;
  const server =
    address === undefined ? await preview({ preview: { port: 0 }, logLevel: 'warn' }) : null;
  const browser = await chromium.launch(chromiumLaunch());
  try {
    const page: Page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await page.addInitScript(countPaints);
    await page.goto(address ?? server?.resolvedUrls?.local[0] ?? '');
    await page
      .getByText(/^Frame \d+ of clip\.mp4/)
      .waitFor({ state: 'attached', timeout: 120_000 });
    await page.locator('input[type=file]').first().setInputFiles(clip);
    await page
      .getByText(/^Frame \d+ of clip\.mkv/)
      .first()
      .waitFor({ state: 'attached', timeout: 120_000 });
    await page.waitForTimeout(3000);
    const cdp = await page.context().newCDPSession(page);
    for (const stride of STRIDES) {
      const { found, wall, core } = await longestTask(cdp, () =>
        page.evaluate<{ asked: number; shown: number }>(dragFor(stride)),
      );
      say(
        `every ${stride} frames: ${found.shown.toFixed(1)} of ${found.asked.toFixed(1)} frames/s asked for are shown; longest main-thread task ${wall.toFixed(1)} ms, of core time ${core.toFixed(1)} ms`,
      );
    }
  } finally {
    await browser.close();
    await server?.close();
  }
}
