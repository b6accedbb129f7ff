import { afterEach, describe, expect, it, vi } from 'vitest';
import { type CoreRun, runCore } from '../../../src/footage/ffmpeg/core';
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
