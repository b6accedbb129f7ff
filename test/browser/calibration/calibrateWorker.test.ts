import { proxy, wrap } from 'comlink';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { CalibrateApi } from '../../../src/protocol/calibrate';
import { carryReasons } from '../../../src/protocol/errors';
import type { LampQuestion } from '../../../src/reduction/calibrateClock';
import { lampPictures } from '../../fixtures/lampPictures';
import { filesAt } from '../footage/decoding';

carryReasons();
let worker: Worker;
beforeEach(() => {
  worker = new Worker(new URL('../../../workers/calibrate.worker.ts', import.meta.url), {
    type: 'module',
  });
});
afterEach(() => worker.terminate());
const api = () => wrap<CalibrateApi>(worker);

const QUESTION: LampQuestion = { mains: { value: 50, u: 0.02 }, rate: 30, assumed: null };
const quiet = () => proxy(() => undefined);

describe('the line time', () => {
  it('comes out of pictures of a lamp as they were drawn', async () => {
    const clip = { frames: 24, width: 16, height: 120, rate: 30, flicker: 100, lineTime: 60e-6 };
    const files = lampPictures(clip).map(({ name, bytes }) => ({ name, blob: new Blob([bytes]) }));
    const shares: number[] = [];
    const { info, report } = await api().lineTime(
      files,
      QUESTION,
      proxy((share: number) => void shares.push(share)),
    );
    expect([info.width, info.height, info.frameCount]).toEqual([16, 120, 24]);
    expect(shares.at(-1)).toBe(1);
    if (!report.ok) throw new Error(report.reason.message);
    expect(report.value.direction).toBe('down');
    expect(report.value.lineTime.u).toBeLessThan(1e-6);
    expect(Math.abs(report.value.lineTime.value - clip.lineTime)).toBeLessThan(
      3 * report.value.lineTime.u,
    );
  });

  it('asks for a rate where the pictures have no times of their own', async () => {
    const clip = { frames: 2, width: 4, height: 4, rate: 30, flicker: 100, lineTime: 0 };
    const files = lampPictures(clip).map(({ name, bytes }) => ({ name, blob: new Blob([bytes]) }));
    const { report } = await api().lineTime(files, { ...QUESTION, rate: null }, quiet());
    expect(report).toMatchObject({ ok: false, reason: { code: 'noTimeStamps' } });
  });

  it("goes by the clip's own times where it has them", async () => {
    const files = await filesAt('test/fixtures/footage/uneven.mp4');
    const { info, report } = await api().lineTime(files, { ...QUESTION, rate: null }, quiet());
    // A test card, lit by no lamp.
    expect(info.name).toBe('uneven.mp4');
    expect(report).toMatchObject({ ok: false });
  });

  it('throws why a file cannot be read', async () => {
    const broken = [{ name: 'letter.mp4', blob: new Blob(['Dear all']) }];
    await expect(api().lineTime(broken, QUESTION, quiet())).rejects.toMatchObject({
      code: expect.stringMatching(/^(notFootage|undecodable|noVideoTrack)$/),
    });
  });
});
