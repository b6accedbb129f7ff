import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Registered } from '../../validate/registry';
import { readArguments } from '../../validate/run/arguments';
import type { runTasks } from '../../validate/run/pool';
import { type RunOptions, runClasses } from '../../validate/run/runClasses';

let root = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'validate-'));
  mkdirSync(join(root, 'src'));
  writeFileSync(join(root, 'src/estimator.ts'), 'export const answer = 1;');
});
afterEach(() => rmSync(root, { recursive: true }));

/** Five chunks whose records are their numbers times the seed; concludes with their sum. */
const sums: Registered = {
  validation: {
    name: 'sums',
    chunks: 5,
    run: async (chunk, seed) => chunk * seed,
    conclude: (records) => ({
      rows: [],
      plots: [],
      text: String(records.reduce((sum: number, record) => sum + Number(record), 0)),
    }),
  },
  sources: ['src'],
};

/** Runs in this process; breaks off before the chunk of this number. Notes what was run. */
function inThisProcess(ran: number[], breakAt = Number.POSITIVE_INFINITY): typeof runTasks {
  return async (tasks, _processes, onRecord) => {
    for (const task of tasks) {
      if (task.chunk === breakAt) throw new Error('broken off');
      onRecord(task, await sums.validation.run(task.chunk, task.seed));
      ran.push(task.chunk);
    }
  };
}

const run = (seed: number, runAll: typeof runTasks) => {
  const options: RunOptions = {
    subject: 'ball',
    classes: [sums],
    seed,
    root,
    folder: join(root, 'cache'),
    processes: 1,
    say: () => {},
    runAll,
  };
  return runClasses(options);
};

describe('a run', () => {
  it('that was broken off goes on where it stopped', async () => {
    const ran: number[] = [];
    await expect(run(2, inThisProcess(ran, 3))).rejects.toThrow('broken off');
    expect(ran).toEqual([0, 1, 2]);
    const [report] = await run(2, inThisProcess(ran));
    expect(ran).toEqual([0, 1, 2, 3, 4]);
    expect(report?.report.text).toBe('20');
    expect(readdirSync(join(root, 'cache')).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('does not take records of another seed or other sources', async () => {
    const ran: number[] = [];
    await run(2, inThisProcess(ran));
    await run(2, inThisProcess(ran));
    expect(ran).toHaveLength(5);
    const [other] = await run(3, inThisProcess(ran));
    expect(ran).toHaveLength(10);
    expect(other?.report.text).toBe('30');
    writeFileSync(join(root, 'src/estimator.ts'), 'export const answer = 2;');
    await run(2, inThisProcess(ran));
    expect(ran).toHaveLength(15);
    expect(readdirSync(join(root, 'cache'))).toHaveLength(5);
  });
});

describe('the command line', () => {
  it('takes a seed, the clock, or a class', () => {
    expect(readArguments(['ball'], 0)).toEqual({ subject: 'ball', seed: 1, className: null });
    expect(readArguments(['ball', '--seed', '7', '--class', 'blur'], 0)).toEqual({
      subject: 'ball',
      seed: 7,
      className: 'blur',
    });
    expect(readArguments(['ball', '--seed', 'clock'], 2 ** 31 + 5)).toMatchObject({ seed: 5 });
  });

  it.each([
    [[], 'What is to be validated'],
    [['moon'], 'What is to be validated'],
    [['ball', '--seed', 'x'], 'whole number'],
    [['ball', '--seed', '-1'], 'whole number'],
    [['ball', '--class', 'moon'], 'no class "moon"'],
    [['ball', '--quick'], 'not understood'],
    [['ball', '--seed'], 'not understood'],
  ])('refuses %j', (words, why) => {
    expect(readArguments(words, 0)).toContain(why);
  });
});
