import { describe, expect, it } from 'vitest';
import type { FrameRange } from '../../../src/core/film';
import type { GreyFrame } from '../../../src/core/frame';
import { composeFlight, type LookPart, lookThrough } from '../../../src/reduction/lookThrough';
import { infoOf } from '../../fixtures/crew';

const never = { aborted: false, throwIfAborted() {} };

/** A bright column that moves on by one pixel a frame. */
function moving(index: number): GreyFrame {
  const data = new Uint8Array(64 * 32).fill(50);
  for (let y = 0; y < 32; y++) data[y * 64 + index] = 250;
  return { index, width: 64, height: 32, data, white: 255 };
}
const film = {
  asked: [] as FrameRange[],
  async *frames(range: FrameRange) {
    film.asked.push(range);
    for (let i = range.start; i < range.end; i++) yield moving(i);
  },
};

describe('a look through a film', () => {
  it('gives a streak row for every frame and the small pictures', async () => {
    const parts: LookPart[] = [];
    await lookThrough(
      {
        info: infoOf('clip.mp4', 40),
        streak: { origin: [10, 16], axis: [1, 0], halfWidth: 2 },
      },
      film,
      (part) => parts.push(part),
      never,
    );
    const rows = parts.flatMap((part) => part.rows);
    expect(rows.map(({ frame }) => frame)).toEqual(Array.from({ length: 40 }, (_, i) => i));
    const from = parts[0]?.line.from ?? 0;
    for (const { frame, row } of rows) expect(row.indexOf(250)).toBe(frame - 10 - from);
    const small = parts.flatMap((part) => part.small);
    expect(small.map(({ index }) => index)).toEqual(rows.map(({ frame }) => frame));
    expect(parts.at(-1)?.share).toBe(1);
  });

  it('stops where it is given up', async () => {
    const stopped = {
      aborted: true,
      throwIfAborted() {
        throw new Error('given up');
      },
    };
    const ask = lookThrough(
      {
        info: infoOf('clip.mp4', 40),
        streak: { origin: [10, 16], axis: [1, 0], halfWidth: 2 },
      },
      film,
      () => {},
      stopped,
    );
    await expect(ask).rejects.toThrow('given up');
  });
});

describe('the flight put together', () => {
  it('reads only the stretch of film with frames in it, and takes only those', async () => {
    film.asked.length = 0;
    const scene = {
      width: 64,
      height: 32,
      level: new Float32Array(64 * 32).fill(50),
      white: 255,
      noise: { readVariance: 1, gain: 0 },
    };
    const shares: number[] = [];
    const picture = await composeFlight(
      { scene, frames: [10, 20, 30].map((frame) => ({ frame, disc: null })) },
      film,
      (share) => shares.push(share),
      never,
    );
    expect(film.asked).toEqual([{ start: 10, end: 31 }]);
    const bright = Array.from(picture.data.subarray(0, 64)).flatMap((grey, x) =>
      grey === 250 ? [x] : [],
    );
    expect(bright).toEqual([10, 20, 30]);
    expect(shares.at(-1)).toBe(1);
  });
});
