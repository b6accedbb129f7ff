import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  type CoreRun,
  type RunCore,
  runCore,
  runCoreAgain,
} from '../../../src/footage/ffmpeg/core';
import { nodePlatform } from '../../../src/footage/node';

const module = await nodePlatform.loadCore();
const ffmpeg = (run: Partial<CoreRun>) =>
  runCore(module, { program: 'ffmpeg', args: [], inputs: {}, outputs: {}, ...run });
/** A picture source of the core's own. */
const pattern = ['-v', 'error', '-f', 'lavfi', '-i', 'color=c=gray:size=16x8'];

describe('running the core', () => {
  afterEach(() => vi.restoreAllMocks());

  it('hands outputs on as they are written', async () => {
    let bytes = 0;
    const outcome = await ffmpeg({
      args: [...pattern, '-frames:v', '5', '-pix_fmt', 'gray', '-f', 'rawvideo', '/out/grey'],
      outputs: {
        grey: (part) => {
          bytes += part.length;
        },
      },
    });
    expect(outcome.exitCode).toBe(0);
    expect(bytes).toBe(5 * 16 * 8);
  });

  it('can be done again and again', async () => {
    // One instance used for all of them hangs before the hundredth.
    for (let run = 0; run < 120; run++) {
      const { exitCode } = await ffmpeg({
        args: [...pattern, '-frames:v', '1', '-f', 'null', '-'],
      });
      expect(exitCode).toBe(0);
    }
  });

  it('gives the same in an instance that has run before as in a new one', async () => {
    const again = runCoreAgain(module);
    const started = vi.spyOn(WebAssembly, 'instantiate');
    const framesFrom = async (run: RunCore, start: number) => {
      const got: number[] = [];
      const { exitCode } = await run({
        program: 'ffmpeg',
        args: [
          ...['-v', 'error', '-f', 'lavfi', '-i', 'testsrc=size=64x48'],
          ...['-vf', `trim=start_frame=${start}:end_frame=${start + 3}`],
          ...['-pix_fmt', 'gray', '-f', 'rawvideo', '/out/grey'],
        ],
        inputs: {},
        outputs: { grey: (part) => got.push(...part) },
      });
      expect(exitCode).toBe(0);
      return got;
    };
    for (let start = 0; start < 30; start++) await framesFrom(again, start);
    expect(started).toHaveBeenCalledTimes(2); // 24 runs, then 6
    const fresh: RunCore = (run) => runCore(module, run);
    for (const start of [3, 40]) {
      const frames = await framesFrom(again, start);
      expect(frames).toHaveLength(3 * 64 * 48);
      expect(frames).toEqual(await framesFrom(fresh, start));
    }
    expect(await framesFrom(again, 3)).not.toEqual(await framesFrom(again, 40));
  });

  it('starts another instance after a run that went wrong', async () => {
    const again = runCoreAgain(module);
    const run = (input: readonly string[]) =>
      again({
        program: 'ffmpeg',
        args: ['-v', 'error', ...input, '-frames:v', '1', '-f', 'null', '-'],
        inputs: {},
        outputs: {},
      });
    const started = vi.spyOn(WebAssembly, 'instantiate');
    expect((await run(pattern)).exitCode).toBe(0);
    expect((await run(['-i', '/in/nothing'])).exitCode).not.toBe(0);
    expect(started).toHaveBeenCalledTimes(1);
    expect((await run(pattern)).exitCode).toBe(0);
    expect(started).toHaveBeenCalledTimes(2);
  });

  it('says what went wrong', async () => {
    const { exitCode, log } = await ffmpeg({ args: ['-v', 'error', '-i', '/in/nothing'] });
    expect(exitCode).not.toBe(0);
    expect(log.join()).toContain('No such file');
  });

  it('passes on what an output throws', async () => {
    const full = () => {
      throw new Error('no room left');
    };
    const args = [...pattern, '-frames:v', '5', '-f', 'rawvideo', '/out/grey'];
    await expect(ffmpeg({ args, outputs: { grey: full } })).rejects.toThrow('no room left');
  });

  it('ends a decoder that neither reads nor writes', async () => {
    let clock = 0;
    vi.spyOn(performance, 'now').mockImplementation(() => {
      clock += 1000; // each look at the clock a second later
      return clock;
    });
    await expect(ffmpeg({ args: [...pattern, '-f', 'null', '-'] })).rejects.toMatchObject({
      code: 'decoderFailed',
      message: expect.stringContaining('60 s'),
    });
  });
});
