import { expect, it } from 'vitest';
import {
  copied,
  inThread,
  keeps,
  measureButton,
  measured,
  measuring,
  opened,
  openGerman,
  ownFilm,
  rateIsEdited,
  scratchFolder,
  showsFilm,
  told,
  withPrelude,
} from './steps';

const film = ownFilm(scratchFolder());

it.each(['film', 'measure', 'reduce'])(
  'the %s thread ends without a word, or fails',
  async (kind) => {
    await using tool = await openGerman();
    const { page } = tool;
    await opened(page, film);
    const numbers = await measured(page);
    const faults = [
      [() => self.close(), 'ohne Angabe eines Grundes'],
      [
        () =>
          void setTimeout(() => {
            throw new Error('broken on purpose');
          }),
        'broken on purpose',
      ],
    ] as const;
    for (const [fault, why] of faults) {
      await measuring(page);
      await inThread(tool, kind, fault);
      await told(page, 'threadDied').waitFor();
      const words = await told(page, 'threadDied').textContent();
      expect(words).toContain('Ein Hintergrundprozess brach ab');
      expect(words).toContain(why);
      await keeps(page, numbers);
    }
    expect(await measured(page)).toBe(numbers);
  },
  900_000,
);

/** Put before the thread's own script: it ends when it has asked for some of the film's frames. */
const endsInItsMidst = `{
  const { postMessage } = MessagePort.prototype;
  let asked = 0;
  MessagePort.prototype.postMessage = function (...given) {
    asked += 1;
    if (asked > 4) self.close();
    return postMessage.apply(this, given);
  };
}\n`;

it('the thread that looks through the film ends: it is told, and measuring goes on', async () => {
  await using tool = await openGerman();
  const { page } = tool;
  await showsFilm(page, 'clip.mp4');
  const ending = withPrelude(endsInItsMidst);
  await page.context().route(/scenery\.worker/, ending);
  await opened(page, film);
  await page.locator('[data-step=footage]').click();
  await told(page, 'sceneryStopped').waitFor();
  const words = await told(page, 'sceneryStopped').textContent();
  expect(words).toContain('der den Film durchsieht, brach ab');
  expect(words).toContain('Öffnen Sie den Film erneut');
  const numbers = await measured(page);
  await keeps(page, numbers);

  await page.context().unroute(/scenery\.worker/, ending);
  await opened(page, film);
  expect(await measured(page)).toBe(numbers);
  await page.locator('[data-step=footage]').click();
  expect(await page.locator('.notice-problem').allTextContents()).toEqual([]);
}, 600_000);

it('the page is reloaded in the middle of a run, the first or a later one', async () => {
  await using tool = await openGerman();
  const { page } = tool;
  await opened(page, film);
  await copied(page);
  const reloaded = async () => {
    await page.reload();
    await showsFilm(page, film.film);
    await page.locator('[data-step=ball]').click();
    await measureButton(page).waitFor();
    await rateIsEdited(page);
  };
  await measuring(page);
  await reloaded();
  expect(await measureButton(page).textContent()).toBe('Messen'); // not again: there is no number
  await page.locator('[data-step=result]').click();
  expect(await page.locator('[data-role=exit-velocity]').count()).toBe(0);
  const numbers = await measured(page);
  await measuring(page);
  await reloaded();
  expect(await measureButton(page).textContent()).toBe('Erneut messen');
  await keeps(page, numbers);
  expect(await measured(page)).toBe(numbers);
  expect(tool.errors).toEqual([]);
}, 600_000);
