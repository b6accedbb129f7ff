import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { firstOpening, leadingEdge, lossSince, templateOf } from '../../../src/seal/opening';
import type { SealObservation, SealPicture } from '../../../src/seal/types';

const COLUMNS = 40;
const ROWS = 30;
const NOISE = 2;

/** A film of 60 grey values over rows 5 to 24 from the plane to `height` cells, but for a gap; noise from the seed. */
function picture(
  height: number,
  seed: number,
  gap: readonly [number, number] = [0, 0],
): SealPicture {
  const random = seededRandom(seed);
  const change = Float32Array.from({ length: COLUMNS * ROWS }, (_, at) => {
    const row = Math.floor(at / COLUMNS);
    const film = row >= 5 && row < 25 && !(row >= gap[0] && row < gap[1]) && at % COLUMNS < height;
    return (film ? 60 : 0) + NOISE * random.normal();
  });
  return { columns: COLUMNS, rows: ROWS, cell: 1, change, noise: NOISE, least: 3.8 };
}
const seen = (frame: number, of: SealPicture): SealObservation => ({
  frame,
  front: 0,
  frontU: 0.3,
  reach: 0,
  roughness: 0,
  opening: 0,
  pieces: 0,
  changedArea: 0,
  picture: of,
});
const template = (of: SealPicture) => {
  const found = templateOf(of);
  if (found === null) throw new Error('no template');
  return found;
};

describe('film lost', () => {
  it('is the share that is gone from where it was, with the scatter it states', () => {
    const errors = Array.from({ length: 60 }, (_, i) => {
      // Rows 10 to 14 of 20 are gone.
      const { share, u } = lossSince(
        template(picture(10, 2 * i)),
        picture(10, 2 * i + 1, [10, 15]),
      );
      return { error: share - 0.25, u };
    });
    const rms = Math.sqrt(
      errors.reduce((sum, { error }) => sum + error * error, 0) / errors.length,
    );
    // The smoothed template gives the gap's rows as many cells as any: what is left is noise and a cell at the rim.
    expect(rms).toBeLessThan(0.03);
    expect(errors.every(({ u }) => u > 0 && u < 0.01)).toBe(true);
  });

  it('is nothing where the film goes on growing', () => {
    const { share, u } = lossSince(template(picture(8, 1)), picture(13, 2));
    expect(Math.abs(share)).toBeLessThan(4 * u + 0.02);
  });

  it('needs a film that stands out and stands on the plane', () => {
    expect(templateOf(picture(0, 3))).toBeNull();
    const free = picture(0, 4);
    for (let row = 5; row < 25; row++) {
      for (let column = 15; column < 25; column++) free.change[row * COLUMNS + column] = 60;
    }
    expect(templateOf(free)).toBeNull();
    // Coding leaves patches of a grey value or two: no film, however small the noise.
    const coded = { ...picture(8, 5), noise: 0.01 };
    expect(templateOf({ ...coded, change: coded.change.map((c) => c / 40) })).toBeNull();
  });
});

describe('firstOpening', () => {
  it('finds the frame that lost film, in noise of the seed', () => {
    const film = [0, 0, 3, 5, 8].map((height, i) => seen(i, picture(height, 10 + i)));
    expect(firstOpening(film)).toBeNull();
    expect(firstOpening([...film, seen(5, picture(10, 20, [8, 16]))])).toEqual({
      open: 5,
      surely: 5,
    });
    expect(firstOpening([])).toBeNull();
  });

  it('finds a film that is lost a little from frame to frame', () => {
    const whole = [8, 8, 8].map((height, i) => seen(i, picture(height, 40 + i)));
    // A row of 20 is lost in each frame: less than tells a loss from one frame to the next.
    const torn = [1, 2, 3, 4].map((rows, i) => seen(3 + i, picture(8, 50 + i, [5, 5 + rows])));
    const found = firstOpening([...whole, ...torn]);
    expect(found?.open).toBeLessThan(found?.surely ?? 0);
    expect(found?.open).toBe(3);
  });
});

describe('leadingEdge', () => {
  it('lies where the film ends, 0 where there is none', () => {
    expect(leadingEdge(picture(12, 30), 20)).toBeCloseTo(12, 0);
    expect(leadingEdge(picture(0, 31), 20)).toBe(0);
  });
});
