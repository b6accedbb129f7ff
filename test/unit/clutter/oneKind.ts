import { expect } from 'vitest';
import { type ClutteredFilm, renderFilm } from '../../validate/clutter/film';
import type { Kind } from '../../validate/clutter/kinds';
import { type Score, scoreFilm } from '../../validate/clutter/score';

/** A small, fast ball: a short film, quickly measured. */
const BRISK = { radius: 11, speed: 12 } as const;

interface Case {
  readonly kind: Kind;
  readonly seed: number;
  /** Largest error a position may have, px. */
  readonly most: number;
  /** How near the ball the clutter must come, radii. */
  readonly near?: number;
}

/**
 * Renders a film with one kind of clutter, reduces it as the program would and compares every accepted
 * position with the truth. The clutter must have come near the ball in some frames.
 */
export async function expectGoodPositions({ kind, seed, most, near = 2 }: Case): Promise<Score> {
  const [film, plain] = await Promise.all([
    renderFilm(seed, [kind], BRISK),
    renderFilm(seed, [], BRISK),
  ]);
  expect(framesReached(film, plain, near)).toBeGreaterThanOrEqual(4);
  const score = await scoreFilm(film);
  expect(score.wrong).toEqual([]);
  expect(score.afterBreak).toEqual([]);
  expect(score.worst).toBeLessThan(most);
  expect(score.due).toBeGreaterThan(8);
  expect(score.accepted / score.due, JSON.stringify(score.missed)).toBeGreaterThanOrEqual(0.9);
  return score;
}

/** Frames in which pixels within `near` radii of the ball differ clearly from those of the film without clutter. */
function framesReached(film: ClutteredFilm, plain: ClutteredFilm, near: number): number {
  const { width, height, radius } = film;
  return film.frames.filter((grey, frame) => {
    const [x, y] = plain.truth[frame]?.at ?? [0, 0];
    let differ = 0;
    for (let p = 0; p < width * height; p++) {
      if (Math.hypot((p % width) - x, Math.floor(p / width) - y) > near * radius) continue;
      const before = plain.frames[frame]?.[p] ?? 0;
      if (Math.abs((grey[p] as number) - before) > 8) differ++;
    }
    return differ >= 4;
  }).length;
}
