import { describe, expect, it } from 'vitest';
import { ballSpan, passageOf } from '../../../src/app/passage';

const at = (frame: number, used = true) => ({ frame, used });

describe('the passage of the ball', () => {
  it('runs from the first to the last centre that counts, with a little around it within the film', () => {
    const positions = [at(1, false), at(2), at(9), at(12, false)];
    expect(ballSpan(positions)).toEqual({ first: 2, last: 9 });
    expect(passageOf(positions, 100)).toEqual({ first: 0, last: 13 });
    expect(passageOf(positions, 11)).toEqual({ first: 0, last: 10 });
  });

  it('is not known where no centre counts', () => {
    expect(ballSpan([])).toBeNull();
    expect(passageOf([at(3, false)], 9)).toBeNull();
  });
});
