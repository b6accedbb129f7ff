import { describe, expect, it } from 'vitest';
import { ballSpan, firstClear, passageOf } from '../../../src/app/passage';

const at = (frame: number, used = true) => ({ frame, used });

describe('the passage of the ball', () => {
  it('runs from the first to the last centre that counts, with a little around it within the film', () => {
    const positions = [at(1, false), at(2), at(9), at(12, false)];
    expect(ballSpan(positions)).toEqual({ first: 2, last: 9 });
    expect(passageOf(positions, 100)).toEqual({ first: 0, last: 13 });
    expect(passageOf(positions, 11)).toEqual({ first: 0, last: 10 });
  });

  it('begins in full view with the first used centre a diameter past the muzzle', () => {
    const placed = (frame: number, s: number | null, used = true) => ({ frame, s, used });
    const positions = [placed(4, null, false), placed(5, 0.01), placed(6, 0.04, false)];
    expect(firstClear([...positions, placed(7, 0.05), placed(8, 0.09)], 0.03)).toBe(7);
    expect(firstClear(positions, 0.03)).toBeNull();
  });

  it('is not known where no centre counts', () => {
    expect(ballSpan([])).toBeNull();
    expect(passageOf([at(3, false)], 9)).toBeNull();
  });
});
