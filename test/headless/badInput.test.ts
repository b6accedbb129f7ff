import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ShotInput } from '../../src/shot/schema';
import { type CommandOutput, reduce } from './command';

type KnownLengthInput = NonNullable<ShotInput['scale']['lengths']>[number];

const clip = (name: string) => resolve('test/fixtures', name);

const KNOWN: KnownLengthInput = { from: [20, 40], to: [100, 40], length: 0.2, u: 5e-5 };

/** A shot of the small empty clip, right in everything. */
const sound: ShotInput = {
  format: 'exitframe-shot',
  version: 5,
  name: '2031-04-17 T',
  footage: { path: clip('no-ball.mp4'), sha256: null },
  timing: { source: 'recordingRate', recordingRate: { value: 12_000, u: 0.6 } },
  scale: { lengths: [KNOWN] },
  muzzle: { point: [30, 24], u: 0.5, axis: [1, 0] },
  seals: null,
};
const timed = (value: unknown) => ({
  timing: { source: 'recordingRate', recordingRate: { value, u: 0.6 } },
});
const filmed = (path: string) => ({ footage: { path, sha256: null } });
const length = { ...KNOWN, to: [20, 40] };

/** What is wrong, what of the sound shot changes, what the one line must say. */
const BAD: readonly (readonly [what: string, change: object, line: RegExp])[] = [
  ['an unknown key', { scale: { ...sound.scale, zoom: 2 } }, /unknown key "scale\.zoom"/],
  ['a newer version', { version: 6 }, /version 6.*reads up to version 5/],
  [
    'missing footage',
    filmed('nowhere.mp4'),
    /"nowhere\.mp4" cannot be read: there is no such file/,
  ],
  [
    'footage with another hash',
    { footage: { path: clip('no-ball.mp4'), sha256: 'ab'.repeat(32) } },
    /not the one this shot file was made with.*(ab){32}/,
  ],
  ['a zero-byte file', filmed('empty.mp4'), /is empty/],
  ['a file that is no video', filmed('letter.mp4'), /is not a video/],
  ['a clip cut before its index', filmed(clip('cut-index.mp4')), /cut off: its index/],
  ['a clip cut within its frames', filmed(clip('cut-frames.mp4')), /cut off: it should have/],
  ['sound without film', filmed(clip('sound-only.mp4')), /sound only/],
  ['a single frame', filmed(clip('one-frame.mp4')), /single frame/],
  ['a rate of 0', timed(0), /timing\.recordingRate\.value/],
  ['a negative rate', timed(-12_000), /timing\.recordingRate\.value/],
  ['a rate in words', timed('fast'), /timing\.recordingRate\.value/],
  ['an absurd rate', timed(1e12), /timing\.recordingRate\.value.*outside/],
  ['a length of no pixels', { scale: { lengths: [length] } }, /scale\.lengths\.0/],
  ['a muzzle outside the frame', { muzzle: { point: [500, 24] } }, /muzzle.*outside/i],
];

/** The shot can be read, but there is no exit velocity in the footage. */
const UNANSWERED: readonly (readonly [what: string, change: object, reason: RegExp])[] = [
  ['no ball', {}, /no ball/i],
  ['a ball in two frames only', filmed(clip('two-frames.mp4')), /2 frames/],
];

let folder: string;
let bad: CommandOutput;
let unanswered: CommandOutput;

const fileOf = (kind: string, i: number) => join(folder, `${kind}-${i}.shot.json`);

async function reduceEach(kind: string, changes: readonly object[], ...options: string[]) {
  const shots = changes.map((change, i) => ({
    file: fileOf(kind, i),
    shot: { ...sound, ...change },
  }));
  for (const { file, shot } of shots) await writeFile(file, JSON.stringify(shot));
  return reduce(...shots.map(({ file }) => file), ...options);
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'headless-'));
  await writeFile(join(folder, 'empty.mp4'), '');
  await writeFile(
    join(folder, 'letter.mp4'),
    'Dear all, the film is in the other folder.\n'.repeat(99),
  );
  bad = await reduceEach(
    'bad',
    BAD.map(([, change]) => change),
  );
  unanswered = await reduceEach(
    'unanswered',
    UNANSWERED.map(([, change]) => change),
    '--out',
    folder,
  );
});

afterAll(() => rm(folder, { recursive: true }));

describe('bad input', () => {
  it.each(BAD.map(([what, , line], i) => [what, line, i] as const))(
    '%s is named',
    (_what, line, i) => {
      const said = bad.problems.filter((problem) => problem.startsWith(`${fileOf('bad', i)}: `));
      expect(said).toHaveLength(1);
      expect(said[0]).toMatch(line);
    },
  );

  it('ends with code 2, one line a problem and no result', () => {
    expect(bad.code).toBe(2);
    expect(bad.problems).toHaveLength(BAD.length);
    expect(bad.stdout).toBe('');
  });
});

describe('footage without an answer', () => {
  it.each(UNANSWERED.map(([what, , reason], i) => [what, reason, i] as const))(
    '%s gives a result that says so',
    async (_what, reason, i) => {
      const name = `unanswered-${i}.result.json`;
      const result = JSON.parse(await readFile(join(folder, name), 'utf8'));
      expect(result.exitVelocity.unavailable.message).toMatch(reason);
      const said = unanswered.problems.filter((line) => line.startsWith(fileOf('unanswered', i)));
      expect(said).toEqual([expect.stringContaining(result.exitVelocity.unavailable.message)]);
    },
  );

  it('ends with code 1 and prints nothing where files were asked for', () => {
    expect(unanswered.code).toBe(1);
    expect(unanswered.stdout).toBe('');
  });
});

describe('a single shot', () => {
  it('is printed whole on standard output', async () => {
    const { stdout } = await reduceEach('single', [filmed(clip('two-frames.mp4'))]);
    expect(JSON.parse(stdout)).toMatchObject({ format: 'exitframe-result', shot: sound.name });
  });
});
