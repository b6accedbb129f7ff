import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import {
  clipOf,
  keeps,
  measured,
  openedWithPrelude,
  openGerman,
  scratchFolder,
  writeFilm,
} from './steps';

const film = writeFilm(join(scratchFolder(), 'film.mp4'), clipOf('h264'), 'h264');

/** Put before the film thread's script: what befalls the thread that it starts, as soon as that one reads. */
const nestedThreadBreaks = `{
  let fault = 'none';
  new BroadcastChannel('fault').onmessage = ({ data }) => { fault = data; };
  self.Worker = class extends Worker {
    constructor(...given) {
      super(...given);
      const breaks = {
        none: () => {},
        ends: () => this.terminate(),
        fails: () => this.dispatchEvent(new ErrorEvent('error', { message: 'broken on purpose' })),
      };
      this.addEventListener('message', breaks[fault], { once: true });
    }
  };
}\n`;

/** What the result says where the film could not be checked; null: it was. */
async function unchecked(page: Page): Promise<string | null> {
  await page.locator('[data-step=result]').click();
  await page.locator('[data-role=exit-velocity]').waitFor();
  const warning = page.locator('[data-code=filmUnchecked]');
  const said = (await warning.count()) === 0 ? null : await warning.textContent();
  await page.locator('[data-step=ball]').click();
  return said;
}

it('the thread that reads the film a second time ends without a word, or fails', async () => {
  await using tool = await openGerman();
  const { page } = tool;
  await openedWithPrelude(page, film, /film\.worker/, nestedThreadBreaks);
  const measuredWith = async (fault: string) => {
    await page.evaluate((said) => new BroadcastChannel('fault').postMessage(said), fault);
    return measured(page);
  };
  const numbers = await measuredWith('ends');
  expect(await unchecked(page)).toContain('ohne Angabe eines Grundes');
  expect(await measuredWith('fails')).toBe(numbers);
  expect(await unchecked(page)).toContain('broken on purpose');
  await keeps(page, numbers);
  // The check only tells whether the numbers can be relied on.
  expect(await measuredWith('none')).toBe(numbers);
  expect(await unchecked(page)).toBeNull();
}, 900_000);
