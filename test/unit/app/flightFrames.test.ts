import { describe, expect, it } from 'vitest';
import { flightFrames } from '../../../src/app/flightFrames';

/** Centres 10 px apart; the third was not used. */
const positions = Array.from({ length: 12 }, (_, i) => ({
  frame: 50 + i,
  x: 100 + 10 * i,
  y: 40,
  used: i !== 2,
}));

describe('frames of the flight in one picture', () => {
  it('are those whose balls stand side by side', () => {
    const frames = flightFrames(positions, 15, 200, { frames: 'apart', what: 'ball' });
    // 2 radii of 15 px and a little more: every fourth.
    expect(frames.map(({ frame }) => frame)).toEqual([50, 54, 58]);
    expect(frames[1]?.disc).toMatchObject({ x: 140, y: 40 });
    expect(frames[1]?.disc?.radius).toBeGreaterThan(15);
  });

  it('are all used ones where asked, with everything that moves', () => {
    const frames = flightFrames(positions, 15, 200, { frames: 'all', what: 'moving' });
    expect(frames).toHaveLength(11);
    expect(frames.every(({ disc }) => disc === null)).toBe(true);
  });

  it('are spread over the film where no ball is known', () => {
    const some = flightFrames([], 15, 200, { frames: 'apart', what: 'ball' });
    expect(some).toHaveLength(40);
    expect(some[1]).toEqual({ frame: 5, disc: null });
    expect(flightFrames(positions, null, 30, { frames: 'all', what: 'ball' })).toHaveLength(30);
  });
});
