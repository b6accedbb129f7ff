import { proxy, wrap } from 'comlink';
import { afterAll, describe, expect, it } from 'vitest';
import type { CalibrateApi } from '../../../src/protocol/calibrate';
import { carryReasons } from '../../../src/protocol/errors';
import type { LampQuestion } from '../../../src/reduction/calibrateClock';
import { lampPictures } from '../../fixtures/lampPictures';
import { filesAt } from '../footage/decoding';

carryReasons();
const worker = new Worker(new URL('../../../workers/calibrate.worker.ts', import.meta.url), {
  type: 'module',
});
const api = wrap<CalibrateApi>(worker);
afterAll(() => worker.terminate());

/** A picture of one straight edge near the top, as a lens that bends it by k1 over the picture's width shows it. */
function bowedEdge(width: number, height: number, k1: number) {
  const data = new Uint8Array(width * height);
  const [cx, cy] = [(width - 1) / 2, (height - 1) / 2];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      // Seen at (x, y), freed of the lens by fixed-point iteration on r = rd / (1 + k1 r^2).
      const rd = Math.hypot(x - cx, y - cy) / width;
      let r = rd;
      for (let i = 0; i < 20; i++) r = rd / (1 + k1 * r * r);
      const straight = rd === 0 ? y : cy + ((y - cy) * r) / rd;
      data[y * width + x] = Math.round(60 + 120 / (1 + Math.exp(-(straight - EDGE) / 0.8)));
    }
  }
  return { index: 0, width, height, data, white: 255 };
}
const EDGE = 12;

const QUESTION: LampQuestion = { mains: { value: 50, u: 0.02 }, rate: 30, assumed: null };
const quiet = () => proxy(() => undefined);

describe('the line time', () => {
  it('comes out of pictures of a lamp as they were drawn', async () => {
    const clip = { frames: 24, width: 16, height: 120, rate: 30, flicker: 100, lineTime: 60e-6 };
    const files = lampPictures(clip).map(({ name, bytes }) => ({ name, blob: new Blob([bytes]) }));
    const shares: number[] = [];
    const { info, report } = await api.lineTime(
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
    const { report } = await api.lineTime(files, { ...QUESTION, rate: null }, quiet());
    expect(report).toMatchObject({ ok: false, reason: { code: 'noTimeStamps' } });
  });

  it("goes by the clip's own times where it has them", async () => {
    const files = await filesAt('test/fixtures/footage/uneven.mp4');
    const { info, report } = await api.lineTime(files, { ...QUESTION, rate: null }, quiet());
    // A test card, lit by no lamp.
    expect(info.name).toBe('uneven.mp4');
    expect(report).toMatchObject({ ok: false });
  });

  it('throws why a file cannot be read', async () => {
    const broken = [{ name: 'letter.mp4', blob: new Blob(['Dear all']) }];
    await expect(api.lineTime(broken, QUESTION, quiet())).rejects.toMatchObject({
      code: expect.stringMatching(/^(notFootage|undecodable|noVideoTrack)$/),
    });
  });
});

describe('the lens', () => {
  it('comes out of an edge as it was bent', async () => {
    const lens = await api.lensFromEdges(bowedEdge(320, 200, -0.15), [
      [
        [20, 14],
        [300, 14],
      ],
    ]);
    if (!lens.ok) throw new Error(lens.reason.message);
    const { k1 } = lens.value;
    expect(Math.abs(k1.value + 0.15)).toBeLessThan(3 * k1.u);
    expect(k1.u).toBeLessThan(0.05);
  });

  it('is not told by a clip without a board, which says so frame by frame', async () => {
    const files = await filesAt('test/fixtures/footage/vp9.webm');
    const shares: number[] = [];
    const found = await api.lensFromBoards(
      files,
      null,
      proxy((share: number) => void shares.push(share)),
    );
    expect(found.lens).toMatchObject({ ok: false, reason: { code: 'tooFewBoards' } });
    expect(found.boards).toEqual([]);
    expect(found.refused.length).toBeGreaterThan(1);
    expect(found.refused.map(({ frame }) => frame)).toEqual(
      found.pictures.map(({ frame }) => frame.index),
    );
    expect(found.pictures.length).toBeLessThanOrEqual(30);
    expect(shares.every((share, i) => share > (shares[i - 1] ?? 0) && share <= 1)).toBe(true);
  });
});
