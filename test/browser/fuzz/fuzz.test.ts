import { proxy } from 'comlink';
import { afterAll, describe, expect, inject, it } from 'vitest';
import codesPage from '../../../docs/error-codes.md?raw';
import { startWorkforce, type Workforce } from '../../../src/app/workforce';
import type { Reading } from '../../../src/core/film';
import type { FootageFile } from '../../../src/footage/source';
import type { Shot } from '../../../src/shot/schema';
import shotText from '../../fixtures/fuzz/flight.shot.json?raw';
import { codesIn, failed, judge, type Verdict } from '../../fuzz/judge';
import { type Look, look } from '../../fuzz/look';
import { damaged, SAMPLES, SHOT } from '../../fuzz/samples';
import { judgeShot, lookAtShot } from '../../fuzz/shotLook';
import { damagedShot } from '../../fuzz/shotText';
import type { Trial } from '../../fuzz/tally';
import { filesAt } from '../footage/decoding';

// `npm run fuzz` gives more of them.
const { seed, count, only } = inject('fuzz') ?? { seed: 1, count: 12, only: '' };
const codes = codesIn(codesPage);
/** A mutant not done with after so long hangs, ms. */
const LIMIT = 60_000;

let died: (why: string) => void = () => {};
const start = () => startWorkforce((why) => died(`a thread died: ${why}`));
let threads: Workforce = start();
afterAll(() => threads.dispose());

/** Opens and reads by the page's own film thread. */
const byThread = (files: readonly FootageFile[], reading: Reading): Promise<Look> =>
  look(async () => {
    const { film } = threads;
    const info = await film.open(files, reading);
    return {
      info,
      timestamps: () => film.timestamps(),
      audio: () => film.audio(),
      async *frames() {
        const run = await film.startRun({ start: 0, end: info.frameCount });
        for (let next = await film.next(run); next.length > 0; next = await film.next(run)) {
          yield* next;
        }
        await film.check([{ start: 0, end: info.frameCount }]); // as a measurement does of what it looks at
      },
    };
  });

/** Threads that hang or die are replaced, and the mutant has failed. */
async function orFailed(verdict: () => Promise<Verdict>): Promise<Verdict> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const lost = new Promise<string>((resolve) => {
    died = resolve;
    timer = setTimeout(() => resolve(`hangs: nothing for ${LIMIT / 1000} s`), LIMIT);
  });
  const first = await Promise.race([verdict(), lost]);
  clearTimeout(timer);
  if (typeof first !== 'string') return first;
  threads.dispose();
  threads = start();
  return failed(first);
}

describe('damaged files, read by the threads of the page', () => {
  it.for(SAMPLES.filter(({ name }) => name.includes(only)))('$name', async (sample, { task }) => {
    const files = await filesAt(sample.path);
    const whole = await byThread(files, sample.reading);
    const trials: Trial[] = [];
    for (let number = 0; number < count; number++) {
      const mutant = await damaged(sample, files, seed, number);
      const verdict = await orFailed(async () =>
        judge(whole, await byThread(mutant.files, sample.reading), sample.summed, codes),
      );
      trials.push({ number, how: mutant.how, ...verdict });
    }
    expect.soft(trials.filter(({ outcome }) => outcome === 'failed')).toEqual([]);
    task.meta.row = { sample: sample.name, where: 'Chromium', trials };
  });

  it.runIf('shot file'.includes(only))('shot file', async ({ task }) => {
    const reduce = async (shot: Shot) => {
      const info = await threads.film.open(await filesAt(SHOT.film), shot.footage.reading);
      const inputs = {
        ...{ shot, info, timestamps: await threads.film.timestamps(), footageSha256: '' },
        ...{ audio: null, setupScene: null },
      };
      return (
        await threads.reduce.reduce(
          inputs,
          proxy(() => {}),
        )
      ).result;
    };
    const whole = await lookAtShot(shotText, reduce);
    const trials: Trial[] = [];
    for (let number = 0; number < count; number++) {
      const mutant = damagedShot(shotText, seed, number);
      const verdict = await orFailed(async () =>
        judgeShot(whole, await lookAtShot(mutant.text, reduce), codes),
      );
      trials.push({ number, how: mutant.how, ...verdict });
    }
    expect.soft(trials.filter(({ outcome }) => outcome === 'failed')).toEqual([]);
    task.meta.row = { sample: 'shot file', where: 'Chromium', trials };
  });
});
