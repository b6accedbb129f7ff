import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import * as v from 'valibot';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isAvailable, type Quantity } from '../../src/core/estimate';
import type { Result } from '../../src/shot/result';
import { resultSchema } from '../../src/shot/resultSchema';
import { type CommandOutput, reduce } from './command';

const SAMPLES = 'sample-clips';
/** Clip of the phone with the rolling shutter, and the one that shows no ball. */
const PHONE = 'b-phone';
const NO_BALL = 'f-noball';
/** Clip that shows the ball in the bore, through the tube's clear wall. */
const CLEAR_TUBE = 'c-blur';
/** Name given to the phone's shot when its rolling shutter is denied. */
const UNCORRECTED = 'as if all lines were read at once';

interface Truth {
  readonly name: string;
  readonly exitVelocity: number;
  readonly sealBurst: number;
}

const readJson = async (path: string) => JSON.parse(await readFile(path, 'utf8'));
const truthOf = (clip: string): Promise<Truth> => readJson(join(SAMPLES, clip, 'truth.json'));
const shotFile = (clip: string) => join(SAMPLES, clip, `${clip}.shot.json`);

const clips = (await readdir(SAMPLES, { withFileTypes: true }))
  .filter((entry) => entry.isDirectory() && /^[a-z]-/.test(entry.name))
  .map(({ name }) => name)
  .sort();

let folder: string;
let output: CommandOutput;
/** By the shot's name. */
let results: Map<string, Result>;

function exitVelocity(shot: string): Quantity {
  const reported = results.get(shot)?.exitVelocity;
  if (reported === undefined || !isAvailable(reported)) throw new Error('no exit velocity');
  return reported;
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'samples-'));
  const phone = await readJson(shotFile(PHONE));
  phone.name = UNCORRECTED;
  phone.footage.path = resolve(SAMPLES, PHONE, phone.footage.path);
  phone.timing.readout.lineTime = { value: 0, u: 0 };
  const uncorrected = join(folder, 'uncorrected.shot.json');
  await writeFile(uncorrected, JSON.stringify(phone));
  output = await reduce(...clips.map(shotFile), uncorrected);
  const lines = output.stdout.trimEnd().split('\n');
  const read = lines.map((line): Result => v.parse(resultSchema, JSON.parse(line)));
  results = new Map(read.map((result) => [result.shot, result]));
}, 400_000);

afterAll(() => rm(folder, { recursive: true }));

describe('sample clips', () => {
  it('each give one result, in the order asked for', async () => {
    const truths = await Promise.all(clips.map(truthOf));
    expect([...results.keys()]).toEqual([...truths.map(({ name }) => name), UNCORRECTED]);
  });

  it.each(clips.filter((clip) => clip !== NO_BALL))(
    '%s: within 1 % of the truth, which its interval covers',
    async (clip) => {
      const truth = await truthOf(clip);
      const { value, interval } = exitVelocity(truth.name);
      expect(Math.abs(value / truth.exitVelocity - 1)).toBeLessThan(0.01);
      expect(interval[0]).toBeLessThan(truth.exitVelocity);
      expect(interval[1]).toBeGreaterThan(truth.exitVelocity);
    },
  );

  it('without a ball say why there is no exit velocity, with exit code 1', async () => {
    const { name } = await truthOf(NO_BALL);
    expect(results.get(name)?.exitVelocity).toMatchObject({ unavailable: { code: 'noBall' } });
    expect(output.problems).toEqual([expect.stringContaining(shotFile(NO_BALL))]);
    expect(output.code).toBe(1);
  });

  it('that show the ball in the bore tell its acceleration there', async () => {
    const { name, ...truth } = await readJson(join(SAMPLES, CLEAR_TUBE, 'truth.json'));
    // Second differences of the true places in the picture, frame by frame, on the way through the bore.
    const inBore = (truth.frames as { time: number; x: number; y: number }[])
      .filter(({ time }) => time < truth.exitTime)
      .slice(-4);
    const [a, b, c] = inBore.map(
      ({ x, y }) =>
        -truth.metresPerPixel * Math.hypot(x - truth.muzzlePoint[0], y - truth.muzzlePoint[1]),
    ) as [number, number, number];
    const interval = (inBore[1] as { time: number }).time - (inBore[0] as { time: number }).time;
    const acceleration = (a - 2 * b + c) / interval ** 2;
    // Launcher B is 1.4 m long; the renderer has the force at the muzzle half of what it is on average.
    expect(acceleration / (truth.exitVelocity ** 2 / (4 * 1.4))).toBeCloseTo(1, 2);
    const found = results.get(name)?.flight.boreAcceleration;
    if (!found || !isAvailable(found)) throw new Error('no acceleration in the bore');
    expect(found.interval[0]).toBeLessThan(acceleration);
    expect(found.interval[1]).toBeGreaterThan(acceleration);
    // Seven places in a clear tube, a blur of six tenths of a radius: not more than the size of it.
    expect(found.u).toBeLessThan(0.6 * acceleration);
  });

  it('filmed with a rolling shutter need its correction', async () => {
    const truth = await truthOf(PHONE);
    const { value, u } = exitVelocity(UNCORRECTED);
    expect(Math.abs(value - truth.exitVelocity)).toBeGreaterThan(10 * u);
  });

  it('with a sound track hear the burst when the film shows it', async () => {
    const { name, sealBurst } = await truthOf(PHONE);
    const sound = results.get(name)?.sound;
    if (!sound || !('burst' in sound) || !isAvailable(sound.burst)) throw new Error('not heard');
    expect(sound.agrees).toBe(true);
    expect(sound.burst.interval[0]).toBeLessThan(sealBurst);
    expect(sound.burst.interval[1]).toBeGreaterThan(sealBurst);
  });
});

it('what the page opens with is what the core finds now; else npm run first-look', async () => {
  const written = (await readJson(join(SAMPLES, 'a-clean', 'a-clean.reduction.json'))).result;
  const { exitVelocity, sealBurst } = results.get(written.shot) as Result;
  for (const [now, then] of [
    [exitVelocity, written.exitVelocity],
    [sealBurst, written.sealBurst],
  ]) {
    if (now === undefined || !('value' in now)) throw new Error('nothing found');
    expect(Math.abs(now.value - then.value)).toBeLessThan(0.3 * now.u);
  }
});
