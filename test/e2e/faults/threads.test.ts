import { expect, it } from 'vitest';
import {
  inThread,
  keeps,
  measured,
  measuring,
  opened,
  openGerman,
  ownFilm,
  scratchFolder,
  showsFilm,
  told,
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

it('the thread that looks through the film ends: measuring goes on', async () => {
  await using tool = await openGerman();
  const { page } = tool;
  await opened(page, film);
  const numbers = await measured(page);
  const looking = page.waitForEvent('worker', (one) => one.url().includes('scenery.worker'));
  const opening = opened(page, film);
  await (await looking).evaluate(() => self.close()).catch(() => {}); // it ends before it answers
  await opening;
  expect(await measured(page)).toBe(numbers);
  await keeps(page, numbers);
}, 600_000);

it('the page is reloaded in the middle of a run', async () => {
  await using tool = await openGerman();
  const { page } = tool;
  await opened(page, film);
  const numbers = await measured(page);
  await measuring(page);
  await page.reload();
  await showsFilm(page, film.film);
  await keeps(page, numbers);
  expect(await measured(page)).toBe(numbers);
  expect(tool.errors).toEqual([]);
}, 600_000);
