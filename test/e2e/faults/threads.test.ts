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
  told,
} from './steps';

const film = ownFilm(scratchFolder());

it.each(['film', 'measure'])(
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
