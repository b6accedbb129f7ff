import { describe, expect, it } from 'vitest';
import { type OnFault, renewableCrew } from '../../../src/app/crew';
import { ENDED_SILENTLY, faultOf, type ThreadFault } from '../../../src/protocol/threadFault';
import { fakeCrew } from '../../fixtures/crew';

const never = () => new Promise<never>(() => {});

/** Crews as they were brought up, each with its way to say that a thread died. */
function crews(connected: () => Promise<void> = async () => {}) {
  const started: { die: OnFault; disposed: boolean }[] = [];
  const told: ThreadFault[] = [];
  const { crew, started: first } = renewableCrew(
    (die) => {
      const one = { die, disposed: false };
      started.push(one);
      const { film, reduce, ...rest } = fakeCrew();
      return {
        ...rest,
        film: { ...film, frame: never },
        reduce: { ...reduce, reduce: never },
        connected: connected(),
        dispose: () => {
          one.disposed = true;
        },
      };
    },
    (fault) => told.push(fault),
  );
  return { crew, first, started, told };
}

describe('threads that die', () => {
  it('refuse what was asked of them and what is asked later, with why', async () => {
    const { crew, first, started, told } = crews();
    await first;
    const frame = crew.film.frame(0);
    started[0]?.die(ENDED_SILENTLY);
    started[0]?.die(faultOf('and another')); // of the same crew: it is replaced as a whole
    await expect(frame).rejects.toMatchObject({
      code: 'threadDied',
      values: { because: 'threadEnded' },
    });
    await expect(crew.film.sha256()).rejects.toMatchObject({ code: 'threadDied' });
    expect(told).toEqual([ENDED_SILENTLY]);
  });

  it('are replaced once, when others are asked to be ready', async () => {
    const { crew, first, started } = crews();
    await first;
    await crew.ready();
    expect(started).toHaveLength(1);
    started[0]?.die(ENDED_SILENTLY);
    await Promise.all([crew.ready(), crew.ready()]);
    expect(started.map(({ disposed }) => disposed)).toEqual([true, false]);
    expect(crew.generation()).toBe(1);
    expect(await crew.film.sha256()).toMatch(/^\w+$/);
  });

  it('that do not come up are said, and tried again', async () => {
    let isGone = true;
    const { crew, first, started, told } = crews(() => (isGone ? never() : Promise.resolve()));
    started[0]?.die(faultOf(undefined));
    await expect(first).rejects.toMatchObject({
      code: 'threadsNotStarted',
      values: { because: 'threadNotFetched' },
    });
    isGone = false;
    await crew.ready();
    expect(started).toHaveLength(2);
    expect(told).toEqual([]);
  });
});
