import { afterEach, describe, expect, it } from 'vitest';
import { type Crew, createCrew } from '../../../src/headless/crew';

interface Order {
  readonly answer?: number;
  readonly end?: number | 'kill';
  readonly words?: string;
}
interface Answer {
  readonly answer: number;
  readonly pid: number;
}

const OBEDIENT = new URL('../../fixtures/obedient.mjs', import.meta.url);
let crew: Crew<Order, Answer>;
afterEach(() => crew.end());

const answerOf = (outcome: Awaited<ReturnType<typeof crew.run>>) => {
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value;
};

describe('a crew of processes', () => {
  it('answers each task, with no more processes than it may have', async () => {
    crew = createCrew(OBEDIENT, 2);
    const all = await Promise.all([0, 1, 2, 3, 4, 5, 6].map((answer) => crew.run({ answer })));
    expect(all.map((one) => answerOf(one).answer)).toEqual([0, 1, 2, 3, 4, 5, 6]);
    expect(new Set(all.map((one) => answerOf(one).pid)).size).toBeLessThanOrEqual(2);
  });

  it('loses one task with a process, and no other', async () => {
    crew = createCrew(OBEDIENT, 1);
    const words = 'gc…\nFATAL ERROR: Reached heap limit\n---- native stack\n';
    const tasks = [
      { answer: 1 },
      { end: 'kill' },
      { answer: 2 },
      { end: 134, words },
      { answer: 3 },
    ];
    const [one, killed, two, full, three] = await Promise.all(
      tasks.map((task) => crew.run(task as Order)),
    );
    expect([one, two, three].map((each) => each && answerOf(each).answer)).toEqual([1, 2, 3]);
    expect(killed).toMatchObject({ ok: false, reason: { code: 'processEnded' } });
    expect(killed).toMatchObject({ reason: { message: expect.stringContaining('SIGKILL') } });
    const said = expect.stringContaining('exit code 134; FATAL ERROR: Reached heap limit)');
    expect(full).toMatchObject({ reason: { code: 'processEnded', message: said } });
  });

  it('says so where a process cannot even start', async () => {
    crew = createCrew(new URL('../../fixtures/nowhere.mjs', import.meta.url), 1);
    for (let i = 0; i < 2; i++) {
      expect(await crew.run({ answer: i })).toMatchObject({ reason: { code: 'processEnded' } });
    }
  });
});
