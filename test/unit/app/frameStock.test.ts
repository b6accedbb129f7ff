import { describe, expect, it } from 'vitest';
import { createFrameStock } from '../../../src/app/frameStock';
import { flat, runsOf } from '../../fixtures/frameRuns';

const upTo = (bytes: number, frames = 1000) => ({ bytes, frames });

/** Until nothing is under way any more. */
const quiet = () => new Promise((resolve) => setTimeout(resolve, 5));

const all = (ranges: readonly { readonly start: number; readonly end: number }[]) =>
  ranges.flatMap(({ start, end }) => Array.from({ length: end - start }, (_, i) => start + i));

describe('the stock of frames', () => {
  it('decodes the whole of a film that fits, each frame once, the one asked for first', async () => {
    const film = runsOf();
    const stock = createFrameStock(film, upTo(100 * 300));
    stock.reset(200);
    expect((await stock.get(50))?.index).toBe(50);
    await quiet();
    expect(film.asked[0]?.start).toBe(50);
    expect(all(film.asked).sort((a, b) => a - b)).toEqual(Array.from({ length: 200 }, (_, i) => i));
    const before = film.asked.length;
    expect((await stock.get(199))?.index).toBe(199);
    await quiet();
    expect(film.asked).toHaveLength(before);
    expect(film.open.size).toBe(0);
  });

  it('keeps no more than its bytes, most of them ahead of the way the film is moved', async () => {
    const film = runsOf();
    const stock = createFrameStock(film, upTo(100 * 40));
    stock.reset(1000);
    await stock.get(500);
    await stock.get(501);
    await quiet();
    const decoded = all(film.asked);
    expect(Math.min(...decoded)).toBeGreaterThanOrEqual(501 - 12);
    expect(Math.max(...decoded)).toBeLessThanOrEqual(501 + 32);
    // Backwards the window lies on the other side; what is still in it is not decoded again.
    const before = film.asked.length;
    await stock.get(500);
    await quiet();
    const again = all(film.asked.slice(before));
    expect(Math.min(...again)).toBe(500 - 29);
    expect(again.filter((index) => index >= 495 && index <= 505)).toEqual([]);
    // All of the window is here at once.
    const asked = film.asked.length;
    for (let index = 500; index > 490; index--) expect((await stock.get(index))?.index).toBe(index);
    expect(film.asked.slice(asked).every(({ end }) => end <= 480)).toBe(true);
  });

  it('keeps no more than so many frames, however small', async () => {
    const film = runsOf();
    const stock = createFrameStock(film, upTo(1e9, 40));
    stock.reset(1000);
    await stock.get(500);
    await quiet();
    const decoded = all(film.asked);
    expect([Math.min(...decoded), Math.max(...decoded)]).toEqual([490, 529]);
  });

  it('decodes what is asked for before what lies ahead of it, and drops what nobody waits for', async () => {
    const film = runsOf();
    const stock = createFrameStock(film, upTo(100 * 400));
    stock.reset(1000);
    const first = stock.get(0);
    const second = stock.get(600);
    const third = stock.get(900);
    expect((await third)?.index).toBe(900);
    expect((await second) ?? null).toBeNull();
    // A run that was under way is given up at its next batch.
    expect(((await first) ?? flat(0, 0)).index).toBe(0);
    await quiet();
    expect(film.asked.length).toBeGreaterThan(2);
    expect(film.asked[1]?.start).toBe(900);
  });

  it('shows the frames around one that cannot be decoded, and says so of that one alone', async () => {
    const film = runsOf(async (i) => {
      if (i === 6) throw new Error('broken');
      return flat(i, i);
    });
    const stock = createFrameStock(film, upTo(100 * 100));
    stock.reset(20);
    expect((await stock.get(3))?.index).toBe(3);
    await quiet();
    await expect(stock.get(6)).rejects.toThrow('broken');
    for (const index of [4, 5, 7, 19]) expect((await stock.get(index))?.index).toBe(index);
  });

  it('asks again where a run cannot begin, as while another film is being opened', async () => {
    const film = runsOf();
    let refused = 0;
    const stock = createFrameStock(
      {
        ...film,
        startRun: async (range) => {
          if (refused < 1) {
            refused += 1;
            throw new Error('no film');
          }
          return film.startRun(range);
        },
      },
      upTo(100 * 300),
    );
    stock.reset(20);
    // A rejection that nobody meets fails the test run.
    expect((await stock.get(6))?.index).toBe(6);
    await quiet();
    expect(refused).toBe(1);
    expect(film.open.size).toBe(0);
  });

  it('says so where the film ends early, and does not ask for ever', async () => {
    const film = runsOf();
    const stock = createFrameStock({ ...film, next: async () => [] }, upTo(1000));
    stock.reset(20);
    await expect(stock.get(3)).rejects.toThrow('no frame 3');
    await quiet();
    expect(film.asked.length).toBeLessThan(10);
  });

  it('keeps nothing of the film before', async () => {
    let release: () => void = () => {};
    const film = runsOf(
      (i) =>
        new Promise((resolve) => {
          release = () => resolve(flat(i, 1));
        }),
    );
    const stock = createFrameStock(film, upTo(1000));
    stock.reset(1);
    const old = stock.get(0);
    await quiet();
    const late = release;
    stock.reset(1);
    expect(await old).toBeNull();
    const anew = stock.get(0);
    late();
    await quiet();
    release();
    expect((await anew)?.index).toBe(0);
    expect(film.asked).toHaveLength(2);
  });
});
