import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { hardClips } from '../../validate/clutter/clips';
import { type ClutteredFilm, renderFilm } from '../../validate/clutter/film';
import { ALL_KINDS } from '../../validate/clutter/kinds';
import { setStage } from '../../validate/clutter/stage';

const bytesOf = (film: ClutteredFilm | undefined): string =>
  createHash('sha256')
    .update(Buffer.concat(film?.frames ?? []))
    .digest('hex');

const BRISK = { radius: 11, speed: 12 } as const;

describe('renderFilm', () => {
  it('draws the same film again from the same seed, another from another', async () => {
    const [one, again, other] = await Promise.all(
      [4, 4, 5].map((seed) => renderFilm(seed, ['haze'], BRISK)),
    );
    expect(bytesOf(again)).toEqual(bytesOf(one));
    expect(again?.truth).toEqual(one?.truth);
    expect(bytesOf(other)).not.toEqual(bytesOf(one));
  });

  it('has a wall that moves by parts of a pixel, its scale bar too, or a trembling camera could not be told', () => {
    const { wall, width, height } = setStage(3, BRISK);
    const PART = 0.05;
    let steepest = 0;
    for (let y = height - 24; y < height; y++) {
      for (let x = 0; x < width; x++) {
        for (const [dx, dy] of [
          [PART / 2, 0],
          [0, PART / 2],
        ] as const) {
          const step = wall(x + dx, y + dy) - wall(x - dx, y - dy);
          steepest = Math.max(steepest, Math.abs(step));
        }
      }
    }
    // A mark takes 0.3 of the light; over a soft edge that is 0.17 a pixel at most.
    expect(steepest).toBeGreaterThan(0.003);
    expect(steepest).toBeLessThan(0.3 * 0.56 * PART * 1.5);
  });

  it('draws the ball where its truth has it', async () => {
    const film = await renderFilm(6, [], BRISK);
    const { width, height, frames, truth, radius } = film;
    const empty = frames[0] as Uint8Array;
    const open = truth.flatMap(({ at, visible }, frame) =>
      visible === 1 && at[0] > 2 * radius && at[0] < width - 2 * radius ? [{ at, frame }] : [],
    );
    expect(open.length).toBeGreaterThan(10);
    for (const { at, frame } of open) {
      let area = 0;
      let sumX = 0;
      let sumY = 0;
      for (let p = 0; p < width * height; p++) {
        const x = p % width;
        const y = Math.floor(p / width);
        const difference = Math.abs((frames[frame]?.[p] as number) - (empty[p] as number));
        if (Math.hypot(x - at[0], y - at[1]) > 1.5 * radius || difference < 16) continue;
        area++;
        sumX += x;
        sumY += y;
      }
      // Shading and noise pull the middle of what is brighter by some tenths of a pixel.
      expect(Math.abs(sumX / area - at[0])).toBeLessThan(0.7);
      expect(Math.abs(sumY / area - at[1])).toBeLessThan(0.7);
    }
  });

  it('counts as visible what neither launcher nor picture edge hides', async () => {
    const { truth, muzzle, radius, width } = await renderFilm(6, [], BRISK);
    const way = (frame: number) => Math.abs((truth[frame]?.at[0] ?? 0) - muzzle[0]);
    const behind = truth.filter(({ visible }) => visible === 0);
    expect(behind.length).toBeGreaterThan(2);
    truth.forEach(({ at, visible }, frame) => {
      const edge = Math.min(at[0] + 0.5, width - 0.5 - at[0]);
      if (visible === 1) expect(edge).toBeGreaterThan(0.8 * radius);
      if (visible === 1) expect(way(frame)).toBeGreaterThan(0.8 * radius);
      // A disc whose middle is on a straight edge shows half of itself.
      if (visible > 0 && visible < 0.5) {
        expect(Math.min(way(frame), Math.abs(edge))).toBeLessThan(radius);
      }
    });
  });

  it('moves the picture of the ball with a shaken camera', async () => {
    const shake = 0.8;
    const [still, shaken] = await Promise.all([
      renderFilm(7, [], BRISK),
      renderFilm(7, ['shake'], { ...BRISK, shake }),
    ]);
    const moved = still.truth.map(({ at }, frame) => {
      const [x, y] = shaken.truth[frame]?.at ?? at;
      return Math.hypot(x - at[0], y - at[1]);
    });
    expect(Math.max(...moved)).toBeGreaterThan(0.2 * shake);
    expect(Math.max(...moved)).toBeLessThan(Math.SQRT2 * shake);
  });

  it('tells the frame from which the ball is broken', async () => {
    const { truth, brokenFrom } = await renderFilm(3, ['breakUp'], BRISK);
    expect(truth.findIndex(({ whole }) => !whole)).toBe(brokenFrom);
    expect(brokenFrom).toBeGreaterThan(5);
  });
});

describe('hardClips', () => {
  it('mixes two to four kinds a clip and has every kind several times', () => {
    const clips = hardClips(1, 40);
    expect(clips).toHaveLength(40);
    expect(hardClips(1, 40)).toEqual(clips);
    expect(hardClips(2, 40)).not.toEqual(clips);
    for (const { kinds } of clips) {
      expect(new Set(kinds).size).toBe(kinds.length);
      expect(kinds.length).toBeGreaterThanOrEqual(2);
      expect(kinds.length).toBeLessThanOrEqual(4);
    }
    for (const kind of ALL_KINDS) {
      expect(clips.filter(({ kinds }) => kinds.includes(kind)).length).toBeGreaterThan(2);
    }
  });
});
