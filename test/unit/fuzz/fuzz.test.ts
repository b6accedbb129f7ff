import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { codesIn, judge } from '../../fuzz/judge';
import type { Look } from '../../fuzz/look';
import { mutate } from '../../fuzz/mutate';
import { readAll } from '../../fuzz/pool';
import { SAMPLES } from '../../fuzz/samples';
import { damagedShot } from '../../fuzz/shotText';
import { crossChecked, type Row, type Trial } from '../../fuzz/tally';

/** `npm run fuzz` reads 500 of each, in Chromium too. */
const OF_EACH = 8;

it('damaged files are refused, read the same, told of, or changed where nothing can tell', async () => {
  const tasks = [...SAMPLES.keys(), null].flatMap((sample) =>
    Array.from({ length: OF_EACH }, (_, number) => ({ sample, seed: 1, number })),
  );
  const failed: string[] = [];
  const outcomes = new Set<string>();
  await readAll(tasks, 2, ({ sample, number }, { outcome, why, how }) => {
    outcomes.add(outcome);
    const name = sample === null ? 'shot file' : SAMPLES[sample]?.name;
    if (outcome === 'failed') failed.push(`${name}, mutant ${number}: ${why} (${how})`);
  });
  expect(failed).toEqual([]);
  expect([...outcomes].sort()).toEqual(expect.arrayContaining(['refused', 'same', 'untold']));
}, 600_000);

describe('mutants', () => {
  const bytes = Uint8Array.from({ length: 1000 }, (_, i) => i % 251);

  it('are the same for the same seed, mostly differ from the whole, and leave it alone', () => {
    const before = bytes.slice();
    const [a, b] = [seededRandom(7), seededRandom(7)];
    const mutants = Array.from({ length: 200 }, () => mutate(bytes, a));
    for (const mutant of mutants) expect(mutate(bytes, b)).toEqual(mutant);
    const changed = mutants.filter((one) => Buffer.compare(one.bytes, bytes) !== 0);
    expect(changed.length).toBeGreaterThan(180);
    expect(new Set(mutants.map(({ how }) => how)).size).toBeGreaterThan(190);
    expect(bytes).toEqual(before);
  });

  it('of a shot file hold numbers that are none and keys of JavaScript’s own objects', () => {
    const text =
      '{"format": "exitframe-shot", "ball": {"mass": {"value": 1, "u": 0}}, "list": [1]}';
    const texts = Array.from({ length: 400 }, (_, n) => damagedShot(text, 1, n).text);
    expect(texts).toEqual(Array.from({ length: 400 }, (_, n) => damagedShot(text, 1, n).text));
    for (const part of [
      'NaN',
      '1e999',
      '"__proto__": ',
      '"constructor": ',
      '\uFEFF{',
      '"a":[{"a":',
    ]) {
      expect(texts.some((one) => one.includes(part))).toBe(true);
    }
  });
});

describe('the verdict', () => {
  const whole: Exclude<Look, { refused: unknown }> = {
    ...{ facts: '{}', frames: ['a', 'b'], times: [0, 1], sound: 'none', warnings: ['old'] },
  };
  const codes = codesIn('| `truncated` | cut off | x |\n| `unexpected` | … | y |\n');
  const message = 'It is cut off after so many bytes.';
  const of = (seen: Look, summed = false) => judge(whole, seen, summed, codes).outcome;

  it('is a failure where frames differ though the file sums them, or an error was not foreseen', () => {
    expect(of({ ...whole, frames: ['a', 'c'] }, true)).toBe('failed');
    expect(of({ refused: { code: 'unexpected', message } })).toBe('failed');
    expect(of({ refused: { code: 'neverHeardOf', message } })).toBe('failed');
    expect(of({ refused: { code: 'truncated', message: '' } })).toBe('failed');
    expect(judge({ refused: { code: 'truncated', message } }, whole, false, codes).outcome).toBe(
      'failed',
    );
  });

  it('is none where it is refused with a reason, the same, warned of, or cannot be told', () => {
    expect(of(whole, true)).toBe('same');
    expect(of({ refused: { code: 'truncated', message } })).toBe('refused');
    expect(of({ ...whole, times: [0, 2], warnings: ['old', 'new'] })).toBe('warned');
    expect(of({ ...whole, times: [0, 2], warnings: ['old'] })).toBe('untold');
    expect(of({ ...whole, frames: ['a', 'c'] })).toBe('untold');
  });

  it('on what Chromium shows is a failure where ffmpeg finds it damaged', () => {
    const trial = (outcome: Trial['outcome'], why: string): Row => ({
      ...{ sample: 's', where: 'Node', trials: [{ number: 3, how: '', outcome, why }] },
    });
    const seen = trial('untold', 'frames');
    const beside = (other: Row) => crossChecked(seen, other).trials[0]?.outcome;
    expect(beside(trial('refused', 'decoderFailed'))).toBe('failed');
    expect(beside(trial('untold', 'frames'))).toBe('untold');
    expect(beside(trial('refused', 'singleFrame'))).toBe('untold');
  });
});
