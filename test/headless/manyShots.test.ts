import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { inputsOf } from '../../src/headless/inputs';
import { resultName } from '../../src/headless/resultFiles';
import type { Result } from '../../src/shot/result';
import { stillShot } from '../fixtures/stillShot';
import { type CommandOutput, outputOf, reduce, start } from './command';

let folder: string;
/** Of one setup, the third with its camera moved; one of another setup, and one that cannot be read among them. */
let files: readonly string[];
/** The results of those that can be read, by one command over all of them. */
let expected: Map<string, string>;
let out: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'many-'));
  const broken = join(folder, 'broken.shot.json');
  await writeFile(broken, '{ "format"');
  files = [
    await stillShot(folder, 'first', 0),
    await stillShot(folder, 'second', 0.1),
    broken,
    await stillShot(folder, 'third', 3),
    await stillShot(folder, 'by the window', 3, { setupId: 'window' }),
  ];
  out = await mkdtemp(join(folder, 'first-'));
  await reduce(...sound(), '--out', out);
  expected = await textsIn(out);
  expect(expected.size).toBe(4);
}, 240_000);
afterAll(() => rm(folder, { recursive: true }));
beforeEach(async () => {
  out = await mkdtemp(join(folder, 'out-'));
});

const sound = () => files.filter((file) => !file.includes('broken'));
const resultOf = (file: string) => join(out, resultName(file));
const summary = ({ problems }: CommandOutput) => problems.at(-1);
const textsIn = async (where: string) =>
  new Map(
    await Promise.all(
      (await readdir(where))
        .sort()
        .map(async (name) => [name, await readFile(join(where, name), 'utf8')] as const),
    ),
  );
const moved = ({ warnings }: Result) => warnings.some(({ code }) => code === 'cameraMoved');
const change = async (file: string, edit: (data: Record<string, unknown>) => object) =>
  writeFile(file, JSON.stringify(edit(JSON.parse(await readFile(file, 'utf8')))));

describe('several at a time', () => {
  it('say what one after the other say, in the order of the arguments', async () => {
    const single = await reduce(...files, '--jobs', '1');
    expect(await reduce(...files, '--jobs', '3')).toEqual(single);
    expect(single.code).toBe(2);
    const results = single.stdout
      .trimEnd()
      .split('\n')
      .map((line): Result => JSON.parse(line));
    expect(results.map(({ shot }) => shot)).toEqual(['first', 'second', 'third', 'by the window']);
    expect(results.map(moved)).toEqual([false, false, true, false]);
    expect(single.problems.map((line) => line.split(':')[0])).toEqual([...files]);
  }, 240_000);

  it('by themselves, held against a shot named, come out as in one command', async () => {
    for (const file of [...sound()].reverse()) {
      const { problems } = await reduce(file, '--out', out, '--setup-from', files[0] as string);
      expect(problems.at(-1)).toBe('reduce: 1 reduced, 0 kept, 0 failed.');
    }
    expect(await textsIn(out)).toEqual(expected);
  }, 240_000);

  it('are not begun where the scene to hold them against cannot be had', async () => {
    const of = (file: string) => reduce(files[0] as string, '--out', out, '--setup-from', file);
    const { code, problems } = await of(files[2] as string);
    expect(code).toBe(2);
    expect(problems).toEqual([
      expect.stringMatching(/^reduce: --setup-from .*broken.*not a shot file/),
    ]);
    const free = await stillShot(folder, 'free', 0, { setupId: null });
    expect((await of(free)).problems).toEqual([expect.stringContaining('names no setup')]);
    expect(await readdir(out)).toEqual([]);
  }, 240_000);

  it('are held against the scene of a setup file', async () => {
    const [{ scale, muzzle, timing }] = [JSON.parse(await readFile(files[0] as string, 'utf8'))];
    const levels = Array.from({ length: 40 * 20 }, (_, i) => (i % 7) * 1000);
    const setup = {
      ...{ format: 'exitframe-setup', version: 1, id: 'bench', name: 'Bench' },
      ...{ frame: { width: 320, height: 160 }, scale, muzzle, timing },
      scene: {
        ...{ shotName: 'elsewhere', footageSha256: null },
        fingerprint: { width: 320, height: 160, block: 8, levels },
      },
    };
    const file = join(folder, 'bench.setup.json');
    await writeFile(file, JSON.stringify(setup));
    const { stdout } = await reduce(files[0] as string, '--setup-from', file);
    const result: Result = JSON.parse(stdout);
    expect(result.inputs?.heldAgainst).toBe('elsewhere');
    expect(moved(result)).toBe(true);
    await writeFile(file, JSON.stringify({ ...setup, scene: null }));
    const without = await reduce(files[0] as string, '--setup-from', file);
    expect(without.problems).toEqual([expect.stringContaining('holds no still scene')]);
  }, 240_000);
});

describe('a run over results that are there', () => {
  beforeEach(async () => {
    for (const [name, text] of expected) await writeFile(join(out, name), text);
  });

  /** Runs again; `did`: how many were reduced, kept and failed. */
  async function again(did: string, ...options: string[]) {
    const output = await reduce(...sound(), '--out', out, ...options);
    expect(summary(output)).toBe(`reduce: ${did} failed.`);
    return output;
  }

  it('keeps them, and counts them all the same', async () => {
    const output = await again('0 reduced, 4 kept, 0');
    expect(output.code).toBe(1);
    expect(output.problems.filter((line) => line.includes('No ball'))).toHaveLength(4);
    expect(await textsIn(out)).toEqual(expected);
    await again('4 reduced, 0 kept, 0', '--again');
    expect(await textsIn(out)).toEqual(expected);
  }, 240_000);

  it('reduces a shot that was changed, or whose footage was', async () => {
    const [, second, , third] = files as [string, string, string, string];
    const [shotText, frame] = [await readFile(second, 'utf8'), join(folder, 'third-5.png')];
    const pixels = await readFile(frame);
    try {
      // Only said otherwise: nothing to do.
      await writeFile(second, JSON.stringify(JSON.parse(shotText), null, 3));
      await again('0 reduced, 4 kept, 0');
      await change(second, (shot) => ({ ...shot, notes: 'Rain.' }));
      await again('1 reduced, 3 kept, 0');
      expect(JSON.parse(await readFile(resultOf(second), 'utf8')).inputs.shot.notes).toBe('Rain.');
      await writeFile(frame, await readFile(join(folder, 'third-4.png')));
      await again('1 reduced, 3 kept, 0');
      expect(await readFile(resultOf(third), 'utf8')).not.toBe(expected.get(resultName(third)));
    } finally {
      await writeFile(second, shotText);
      await writeFile(frame, pixels);
    }
  }, 240_000);

  it('reduces anew what the shot of the setup it is held against no longer is', async () => {
    const [first, ...others] = sound();
    const output = await reduce(...others, first as string, '--out', out);
    // All three of the setup: the second is held against nothing now. The window's is kept.
    expect(summary(output)).toBe('reduce: 3 reduced, 1 kept, 0 failed.');
  }, 240_000);

  it('reduces what another state of the program left, what is cut off, and what lies', async () => {
    const [first, second, third, window] = sound() as [string, string, string, string];
    await change(resultOf(first), (data) => {
      const { shot } = (data as unknown as Result).inputs as NonNullable<Result['inputs']>;
      return { ...data, inputs: inputsOf('0'.repeat(64), shot, String(data.footageSha256), null) };
    });
    await writeFile(resultOf(second), expected.get(resultName(second))?.slice(0, 5000) ?? '');
    await change(resultOf(third), (data) => ({ ...data, exitVelocity: null }));
    await change(resultOf(window), (data) => ({ ...data, version: 3, inputs: undefined }));
    await again('4 reduced, 0 kept, 0');
    expect(await textsIn(out)).toEqual(expected);
  }, 240_000);
});

describe('a run that is stopped', () => {
  /** Eight shots of one film: long enough to be met at work. */
  const many = async () => {
    const shots: string[] = [];
    for (const letter of 'ABCDEFGH') {
      const file = join(folder, `${letter}.shot.json`);
      await writeFile(file, await readFile(files[0] as string, 'utf8'));
      await change(file, (shot) => ({ ...shot, name: letter, setupId: null }));
      shots.push(file);
    }
    return shots;
  };
  const firstResult = async () => {
    while ((await readdir(out)).every((name) => !name.endsWith('.result.json'))) {
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  };

  it('leaves whole results, and is gone on with', async () => {
    const shots = await many();
    const stopped = start('main', ...shots, '--out', out, '--jobs', '1');
    const ended = outputOf(stopped);
    await firstResult();
    stopped.kill('SIGKILL');
    expect((await ended).code).toBeNull();
    const left = (await readdir(out)).filter((name) => name.endsWith('.result.json')).length;
    expect(left).toBeLessThan(shots.length);
    const output = await reduce(...shots, '--out', out);
    const kept = Number(/ (\d+) kept, 0 failed/.exec(summary(output) ?? '')?.[1]);
    expect(kept).toBeGreaterThanOrEqual(left);
    const whole = await mkdtemp(join(folder, 'whole-'));
    await reduce(...shots, '--out', whole);
    for (const [name, text] of await textsIn(whole)) {
      expect(await readFile(join(out, name), 'utf8')).toBe(text);
    }
  }, 240_000);

  it.skipIf(process.platform !== 'linux')(
    'in one of its processes loses one shot',
    async () => {
      const shots = await many();
      const running = start('main', ...shots, '--out', out, '--jobs', '1');
      const ended = outputOf(running);
      await firstResult();
      const pid = running.pid as number;
      const [reducer] = (await readFile(`/proc/${pid}/task/${pid}/children`, 'utf8')).split(' ');
      process.kill(Number(reducer), 'SIGKILL');
      const { code, problems } = await ended;
      expect(code).toBe(2);
      expect(problems.filter((line) => line.includes('SIGKILL'))).toHaveLength(1);
      expect(problems.at(-1)).toBe('reduce: 7 reduced, 0 kept, 1 failed.');
    },
    240_000,
  );
});

describe('the examples of docs/many-shots.md', () => {
  const guide = readFileSync('docs/many-shots.md', 'utf8');
  const example = (name: string) =>
    new RegExp(`<!-- ${name} -->\n\`\`\`sh\n([^\`]+)\`\`\``).exec(guide)?.[1] ?? '';
  /** Runs a script with the list of sound shots, few shots to a job. */
  const run = (script: string, env: Record<string, string> = {}) =>
    spawnSync('bash', ['-c', script], {
      env: { ...process.env, ...env, LAB: out, EXITFRAME: process.cwd() },
      encoding: 'utf8',
    });
  beforeEach(() => writeFile(join(out, 'shots.txt'), `${sound().join('\n')}\n`));

  it('gives the same results task by task of an array', async () => {
    const script = example('slurm').replace('each=20', 'each=3');
    expect(script).toContain('#SBATCH');
    for (const task of ['2', '1']) {
      const { stderr } = run(script, { SLURM_ARRAY_TASK_ID: task });
      expect(stderr).toContain(`reduce: ${task === '1' ? 3 : 1} reduced, 0 kept, 0 failed.`);
    }
    expect(await textsIn(join(out, 'results'))).toEqual(expected);
  }, 240_000);

  it.skipIf(spawnSync('parallel', ['--version']).error !== undefined)(
    'gives the same results by GNU parallel',
    async () => {
      const script = example('parallel').replace('-N 20', '-N 3');
      expect(script).toContain('--joblog');
      const { stderr } = run(script);
      expect(stderr).toContain('reduce: 3 reduced, 0 kept, 0 failed.');
      expect(await textsIn(join(out, 'results'))).toEqual(expected);
      // No ball in any of them.
      expect(stderr).toContain('0 shots cannot show a scatter');
    },
    240_000,
  );
});
