/** Reads mutants one after the other as the parent process asks for them. */
import { readFile } from 'node:fs/promises';
import { footageFile, nodePlatform } from '../../src/footage/node';
import { openFootage } from '../../src/footage/open';
import type { FootageFile } from '../../src/footage/source';
import { createMeasurer } from '../../src/reduction/measurer';
import { reduceShot } from '../../src/reduction/reduceShot';
import type { Shot } from '../../src/shot/schema';
import { filesAt } from '../unit/footage/reading';
import { codesIn, judge, type Verdict } from './judge';
import { type Look, look } from './look';
import { damaged, SAMPLES, type Sample, SHOT } from './samples';
import { judgeShot, lookAtShot, type ShotLook } from './shotLook';
import { damagedShot } from './shotText';

export interface Task {
  /** Place in `SAMPLES`; null: the shot file. */
  readonly sample: number | null;
  readonly seed: number;
  readonly number: number;
}

export interface Answer extends Verdict {
  /** What was done to the file. */
  readonly how: string;
  /** Most memory this process has held, bytes. */
  readonly memory: number;
}

const codes = codesIn(await readFile('docs/error-codes.md', 'utf8'));

const lookAt = (sample: Sample, files: readonly FootageFile[]): Promise<Look> =>
  look(async () => {
    const source = await openFootage(files, nodePlatform, { reading: sample.reading });
    const whole = { start: 0, end: source.info.frameCount };
    return {
      info: source.info,
      timestamps: () => source.timestamps(),
      frames: () => source.frames(whole),
      audio: () => source.audio(),
    };
  });

async function reduce(shot: Shot) {
  const files = [await footageFile(SHOT.film)];
  const source = await openFootage(files, nodePlatform, { reading: shot.footage.reading });
  const inputs = {
    ...{ shot, info: source.info, timestamps: await source.timestamps(), footageSha256: '' },
    ...{ audio: null, setupScene: null },
  };
  const { signal } = new AbortController();
  return (await reduceShot(inputs, source, createMeasurer(), () => {}, signal)).result;
}

const wholes = new Map<Sample, { files: readonly FootageFile[]; look: Look }>();
let wholeShot: ShotLook | null = null;

async function ofSample(sample: Sample, { seed, number }: Task) {
  const files = wholes.get(sample)?.files ?? (await filesAt(sample.path));
  const whole = wholes.get(sample)?.look ?? (await lookAt(sample, files));
  wholes.set(sample, { files, look: whole });
  const mutant = await damaged(sample, files, seed, number);
  const seen = await lookAt(sample, mutant.files);
  return { ...judge(whole, seen, sample.summed, codes), how: mutant.how };
}

async function ofShot({ seed, number }: Task) {
  const text = await readFile(SHOT.path, 'utf8');
  wholeShot ??= await lookAtShot(text, reduce);
  const mutant = damagedShot(text, seed, number);
  return { ...judgeShot(wholeShot, await lookAtShot(mutant.text, reduce), codes), how: mutant.how };
}

process.on('message', async (task: Task) => {
  const sample = task.sample === null ? null : (SAMPLES[task.sample] as Sample);
  const found = await (sample === null ? ofShot(task) : ofSample(sample, task));
  const answer: Answer = { ...found, memory: process.resourceUsage().maxRSS * 1024 };
  process.send?.(answer);
});
